package plan

import (
	"ogive/geometry/arch"
	"ogive/geometry/plane"
)

// Handle is a part of a planned arch that can be dragged.
type Handle int

// The handles. Left and right are as one looks along the axis on a picture whose
// y points down.
const (
	// Crown moves the whole arch.
	Crown Handle = iota + 1
	// Axis turns the arch about its crown.
	Axis
	// SpanLeft and SpanRight are the springings: they widen the arch on both
	// sides, its shape kept.
	SpanLeft
	SpanRight
	// Point lies between the springings: distal makes the arch more pointed,
	// proximal rounder, then flat; span and flare are kept.
	Point
	// FlareLeft and FlareRight lie on the borders: they spread both.
	FlareLeft
	FlareRight
)

// Handles lists all handles, in the order in which they are best drawn.
var Handles = []Handle{Axis, FlareLeft, FlareRight, SpanLeft, SpanRight, Point, Crown}

// String is what the handle changes.
func (h Handle) String() string {
	switch h {
	case Crown:
		return "crown"
	case Axis:
		return "axis"
	case SpanLeft, SpanRight:
		return "span"
	case Point:
		return "pointedness"
	case FlareLeft, FlareRight:
		return "flare"
	}
	return "unknown handle"
}

// Grip is a handle in its place.
type Grip struct {
	Handle Handle
	At     plane.Position
}

// Grips are the handles that a has, each in its place: a V has neither span nor
// pointedness to drag.
func Grips(a arch.Arch) []Grip {
	var out []Grip
	for _, h := range Handles {
		if p, ok := GripOf(a, h); ok {
			out = append(out, Grip{h, p})
		}
	}
	return out
}

// Handles stand off the arch by these parts of its size.
const (
	flareOut = 0.5 // beyond the springings
	axisOut  = 1.4 // beyond the line of the springings
)

// GripOf is where the handle h of a lies, if a has it.
func GripOf(a arch.Arch, h Handle) (plane.Position, bool) {
	f := frame{a}
	half, rise, size := a.Span()/2, a.Rise(), sizeOf(a)
	pointed := a.Shape != arch.V
	switch h {
	case Crown:
		return a.Crown, true
	case Axis:
		return f.at(0, rise+axisOut*size), true
	case SpanLeft:
		return f.at(-half, rise), pointed
	case SpanRight:
		return f.at(half, rise), pointed
	case Point:
		return f.at(0, rise), pointed
	case FlareLeft, FlareRight:
		out := flareOut * size
		x, y := half+out*plane.Millimetre(a.Flare.Sin()), rise+out*plane.Millimetre(a.Flare.Cos())
		if h == FlareLeft {
			x = -x
		}
		return f.at(x, y), true
	}
	return plane.Position{}, false
}

// sizeOf is a length by which handles are spaced: the span, or for a V that has
// none the usual one of a child.
func sizeOf(a arch.Arch) plane.Millimetre { return max(a.Span(), 6) }

// frame is the arch's own frame: x to the right of its axis, y distal to its
// crown.
type frame struct{ arch.Arch }

func (f frame) right() plane.Vector[plane.Millimetre] { return f.Axis.Turned(plane.RightAngle) }

func (f frame) at(x, y plane.Millimetre) plane.Position {
	return f.Crown.Add(f.right().Scale(float64(x))).Add(f.Axis.Scale(float64(y)))
}

func (f frame) local(p plane.Position) (x, y plane.Millimetre) {
	v := p.Sub(f.Crown)
	return v.Dot(f.right()), v.Dot(f.Axis)
}
