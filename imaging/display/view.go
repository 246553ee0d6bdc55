package display

import (
	"image"
	"math"

	"ogive/geometry/plane"
)

// Place is a position in a frame, in screen pixels from its upper left corner.
type Place struct{ X, Y float64 }

// MostZoom is the largest zoom, in screen pixels for a pixel of the photograph.
const MostZoom = 8

// View says which part of a photograph is seen, and at what size. It is a
// value: what changes it returns another. The zero View shows nothing.
type View struct {
	Photograph image.Point      // size of the upright photograph
	Window     image.Point      // size of the frame in screen pixels
	Zoom       float64          // screen pixels for a pixel of the photograph
	Corner     plane.PixelPoint // the place at the frame's upper left corner
}

// Fit is the whole photograph in the middle of the frame.
func Fit(photograph, window image.Point) View {
	v := View{Photograph: photograph, Window: window}
	v.Zoom = v.fit()
	return v.settled()
}

// Empty reports whether there is nothing to be seen.
func (v View) Empty() bool {
	return v.Photograph.X <= 0 || v.Photograph.Y <= 0 || v.Window.X <= 0 || v.Window.Y <= 0 || v.Zoom <= 0
}

// Fitted reports whether the view shows the whole photograph, as Fit does.
func (v View) Fitted() bool { return v == Fit(v.Photograph, v.Window) }

// Screen is where a place on the photograph lies in the frame.
func (v View) Screen(p plane.PixelPoint) Place {
	return Place{float64(p.X-v.Corner.X) * v.Zoom, float64(p.Y-v.Corner.Y) * v.Zoom}
}

// On is the place on the photograph that is seen at q, which may be beyond its
// edge.
func (v View) On(q Place) plane.PixelPoint {
	return v.Corner.Add(plane.Vec(plane.Pixel(q.X/v.Zoom), plane.Pixel(q.Y/v.Zoom)))
}

// Holds reports whether p lies on the photograph.
func (v View) Holds(p plane.PixelPoint) bool {
	return p.X >= 0 && p.Y >= 0 && p.X <= plane.Pixel(v.Photograph.X) && p.Y <= plane.Pixel(v.Photograph.Y)
}

// ZoomedTo is the view with the given zoom, as far as it is allowed, that shows
// at q what was seen there before.
func (v View) ZoomedTo(zoom float64, q Place) View {
	if v.Empty() {
		return v
	}
	keep := v.On(q)
	v.Zoom = min(max(zoom, min(v.fit(), 1)), MostZoom)
	v.Corner = keep.Add(plane.Vec(plane.Pixel(-q.X/v.Zoom), plane.Pixel(-q.Y/v.Zoom)))
	return v.settled()
}

// ZoomedBy is ZoomedTo with a multiple of the present zoom. It stops where the
// whole photograph is seen.
func (v View) ZoomedBy(factor float64, q Place) View {
	if v.Empty() || factor <= 0 {
		return v
	}
	zoom := v.Zoom * factor
	if fit := v.fit(); factor < 1 && v.Zoom >= fit {
		zoom = max(zoom, fit)
	}
	return v.ZoomedTo(zoom, q)
}

// Panned is the view with the photograph moved by so many screen pixels.
func (v View) Panned(dx, dy float64) View {
	if v.Empty() {
		return v
	}
	v.Corner = v.Corner.Add(plane.Vec(plane.Pixel(-dx/v.Zoom), plane.Pixel(-dy/v.Zoom)))
	return v.settled()
}

// Resized is the view in a frame of another size: what was in its middle stays
// there, and a photograph seen whole is seen whole.
func (v View) Resized(window image.Point) View {
	if v.Empty() || v.Fitted() {
		return Fit(v.Photograph, window)
	}
	middle := v.On(v.middle())
	v.Window = window
	return v.centred(middle)
}

// Reveal is the view moved so that p is well inside the frame, unless it is
// already.
func (v View) Reveal(p plane.PixelPoint) View {
	if v.Empty() {
		return v
	}
	const rim = 0.12
	w, h := float64(v.Window.X), float64(v.Window.Y)
	if q := v.Screen(p); q.X >= rim*w && q.X <= (1-rim)*w && q.Y >= rim*h && q.Y <= (1-rim)*h {
		return v
	}
	return v.centred(p)
}

// centred is the view with p in the middle of the frame, as far as that is
// allowed.
func (v View) centred(p plane.PixelPoint) View {
	m := v.middle()
	v.Zoom = min(max(v.Zoom, min(v.fit(), 1)), MostZoom)
	v.Corner = p.Add(plane.Vec(plane.Pixel(-m.X/v.Zoom), plane.Pixel(-m.Y/v.Zoom)))
	return v.settled()
}

func (v View) middle() Place { return Place{float64(v.Window.X) / 2, float64(v.Window.Y) / 2} }

// fit is the zoom at which the whole photograph just fills the frame.
func (v View) fit() float64 {
	if v.Photograph.X <= 0 || v.Photograph.Y <= 0 {
		return 0
	}
	return min(float64(v.Window.X)/float64(v.Photograph.X), float64(v.Window.Y)/float64(v.Photograph.Y), MostZoom)
}

// settled keeps the photograph from being lost: the middle of the frame stays
// on it, and the closer the view comes to showing it whole, the closer the two
// middles have to be. Zooming in about a place on the photograph never runs
// against this. At one pixel for one, pixels meet pixels.
func (v View) settled() View {
	if v.Empty() {
		return v
	}
	slack := min(1, max(0, 2*(1-v.fit()/v.Zoom)))
	v.Corner.X = settledAxis(v.Corner.X, v.Photograph.X, v.Window.X, v.Zoom, slack)
	v.Corner.Y = settledAxis(v.Corner.Y, v.Photograph.Y, v.Window.Y, v.Zoom, slack)
	return v
}

func settledAxis(corner plane.Pixel, photograph, window int, zoom, slack float64) plane.Pixel {
	half, seen := plane.Pixel(photograph)/2, plane.Pixel(float64(window)/zoom)
	reach := half * plane.Pixel(slack)
	corner = min(max(corner, half-reach-seen/2), half+reach-seen/2)
	if zoom == 1 {
		corner = plane.Pixel(math.Round(float64(corner)))
	}
	return corner
}
