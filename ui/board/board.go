// Package board is the photograph on the screen: it shows it at any zoom with
// everything marked on it, and turns what the pointer does into gestures on the
// photograph. What a gesture comes to is decided by whoever owns the board.
//
//	b := board.New()
//	b.OnPlace = func(at plane.PixelPoint) { ... }
//	b.ShowPhotograph(work.Photograph)
//	b.Draw(board.Scene{View: state.View, Placed: state.Placed(), Wanted: &spot, Reading: r})
//
// The wheel zooms about the pointer, dragging the ground pans, a click places
// what is wanted, a mark or a traced border is dragged by pressing on it. While
// a point is wanted or dragged, a loupe beside the pointer shows the
// photograph's own pixels.
//
// All methods belong to Fyne's own goroutine, as those of every widget do.
package board

import (
	"image"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/imaging/display"
	"ogive/imaging/markshapes"
	"ogive/imaging/photo"
	"ogive/ui/marking"
)

// Board is the widget. Its functions may be nil.
type Board struct {
	widget.BaseWidget

	// OnPlace is a click on the photograph while a point is wanted.
	OnPlace func(at plane.PixelPoint)
	// OnSelect is a press on a mark.
	OnSelect func(marking.Spot)
	// OnDrag is a mark being dragged, OnDrop its end.
	OnDrag func(spot marking.Spot, to plane.PixelPoint)
	OnDrop func(marking.Spot)
	// OnDragEdge is a traced border being dragged: from is where it was taken
	// hold of and stays the same until OnDropEdge. So the border is always
	// pulled from what it was when the drag began.
	OnDragEdge func(web hand.Web, from, to plane.PixelPoint)
	OnDropEdge func(hand.Web)
	// OnDragHandle is a handle of the scene being dragged, OnDropHandle its end.
	OnDragHandle func(id string, to plane.PixelPoint)
	OnDropHandle func(id string)
	// OnHover tells where on the photograph the pointer is, and whether it is
	// over the photograph at all.
	OnHover func(at plane.PixelPoint, over bool)
	// OnView tells the zoom, in screen pixels for a pixel of the photograph.
	OnView func(zoom float64)

	shown   *display.Pyramid // nil while there is no photograph
	showing int              // counts photographs, so that a late one is known
	view    display.View
	scale   float64 // screen pixels for a unit of Fyne's
	scene   Scene

	picture *canvas.Raster
	frame   frame
	lens    *lens
	pointer pointer
	letters *lettering
	// nameOfSelected is where the selected mark's name was written last, in
	// screen pixels.
	nameOfSelected markshapes.Box
	apart          func(work func()) // does work that would hold up the window
	soon           func(work func()) // does it after the events at hand
	clock          func() time.Time
}

// Scene is what is drawn over the photograph.
type Scene struct {
	View     hand.View
	Placed   []marking.Placed
	Wanted   *marking.Spot
	Selected *marking.Spot
	Proposed map[hand.Web]bool
	Reading  marking.Reading
	// Lines and Handles of other rooms are drawn over the marks. Handles are
	// taken hold of before marks.
	Lines   []Line
	Handles []Handle
	// Blind leaves out what was computed from the marks: arches, crowns,
	// springings, levels. Traced borders stay, since they are marks too.
	Blind bool
	// Quiet draws marks small and without labels, for looking at lines.
	Quiet bool
}

// New is a board without a photograph.
func New() *Board {
	b := &Board{scale: 1, letters: newLettering(), apart: func(work func()) { go work() }, soon: fyne.Do, clock: time.Now}
	b.picture = canvas.NewRaster(b.paint)
	b.picture.ScaleMode = canvas.ImageScalePixels
	b.lens = newLens(b)
	b.ExtendBaseWidget(b)
	return b
}

// ShowPhotograph puts a photograph on the board, seen whole unless its preview was shown
// before. It returns at once; the photograph appears as soon as it can.
func (b *Board) ShowPhotograph(img *photo.Photograph) {
	b.showing++
	number := b.showing
	b.apart(func() {
		p := display.New(img)
		fyne.Do(func() { b.put(p, number) })
		p.Build()
		fyne.Do(func() { b.put(p, number) })
	})
}

// ShowPreview puts a small upright picture on the board in the place of the
// photograph of that size, which is still being read.
func (b *Board) ShowPreview(small image.Image, size image.Point) {
	if small.Bounds().Empty() || size.X <= 0 || size.Y <= 0 {
		return
	}
	b.showing++
	b.put(display.Preview(small, size), b.showing)
}

// put shows p, unless another photograph has come since.
func (b *Board) put(p *display.Pyramid, number int) {
	if number != b.showing {
		return
	}
	if b.shown == nil || b.shown.Size() != p.Size() {
		b.shown = p
		b.see(display.Fit(p.Size(), b.window()))
	}
	b.shown = p
	b.redraw()
}

// Draw shows the scene over the photograph.
func (b *Board) Draw(s Scene) {
	b.scene = s
	b.remark()
	b.lens.follow()
}

// Fit shows the whole photograph.
func (b *Board) Fit() { b.see(display.Fit(b.view.Photograph, b.window())) }

// PixelForPixel shows one pixel of the photograph as one of the screen.
func (b *Board) PixelForPixel() { b.see(b.view.ZoomedTo(1, b.focus())) }

// ZoomBy enlarges by a factor about the pointer, or the middle if the pointer
// is elsewhere.
func (b *Board) ZoomBy(factor float64) { b.see(b.view.ZoomedBy(factor, b.focus())) }

// Reveal moves the photograph so that p is seen.
func (b *Board) Reveal(p plane.PixelPoint) { b.see(b.view.Reveal(p)) }

// PositionOf is where a place on the photograph lies on the board, which may be
// outside it.
func (b *Board) PositionOf(p plane.PixelPoint) fyne.Position {
	return b.position(b.view.Screen(p))
}

// see changes the view.
func (b *Board) see(v display.View) {
	if v == b.view {
		return
	}
	zoomed := v.Zoom != b.view.Zoom
	b.view = v
	b.redraw()
	b.lens.follow()
	if zoomed && b.OnView != nil {
		b.OnView(v.Zoom)
	}
}

// window is the size of the board in screen pixels.
func (b *Board) window() image.Point {
	s := b.Size()
	return image.Pt(int(float64(s.Width)*b.scale+0.5), int(float64(s.Height)*b.scale+0.5))
}

// place is a position on the board in screen pixels.
func (b *Board) place(p fyne.Position) display.Place {
	return display.Place{X: float64(p.X) * b.scale, Y: float64(p.Y) * b.scale}
}

// position is the inverse of place.
func (b *Board) position(q display.Place) fyne.Position {
	return fyne.NewPos(float32(q.X/b.scale), float32(q.Y/b.scale))
}

// fitWindow takes over a new size of the board.
func (b *Board) fitWindow(window image.Point) {
	if b.shown == nil || b.view.Window == window {
		return
	}
	zoom := b.view.Zoom
	b.view = b.view.Resized(window)
	b.frame.stale = true
	if zoom != b.view.Zoom && b.OnView != nil {
		b.OnView(b.view.Zoom)
	}
}
