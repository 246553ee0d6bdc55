package board

import (
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/imaging/display"
	"ogive/ui/marking"
)

// pointer is where the pointer is and what it holds.
type pointer struct {
	inside  bool
	at      fyne.Position
	pressed bool
	hold    hold
	dragged bool
	told    bool // the press has selected a mark already
}

// hold is what a press took hold of: a mark, a border, or the ground.
type hold struct {
	what holding
	spot marking.Spot
	web  hand.Web
	// from is where the thing held was, press what was seen under the pointer
	// then; now is where the thing is by now.
	from, press, now plane.PixelPoint
	selected         bool
}

type holding int

const (
	ground holding = iota
	mark
	border
)

var (
	_ fyne.Tappable      = (*Board)(nil)
	_ fyne.Draggable     = (*Board)(nil)
	_ fyne.Scrollable    = (*Board)(nil)
	_ desktop.Mouseable  = (*Board)(nil)
	_ desktop.Hoverable  = (*Board)(nil)
	_ desktop.Cursorable = (*Board)(nil)
)

// MouseIn, MouseMoved and MouseOut follow the pointer.
func (b *Board) MouseIn(e *desktop.MouseEvent) { b.MouseMoved(e) }

// MouseMoved follows the pointer.
func (b *Board) MouseMoved(e *desktop.MouseEvent) {
	b.pointer.inside, b.pointer.at = true, e.Position
	b.lens.follow()
}

// MouseOut forgets the pointer.
func (b *Board) MouseOut() {
	b.pointer.inside = false
	b.lens.follow()
}

// MouseDown takes hold of what is under the pointer.
func (b *Board) MouseDown(e *desktop.MouseEvent) {
	b.pointer.inside, b.pointer.at = true, e.Position
	b.grasp(e.Position)
	if e.Button != desktop.MouseButtonPrimary {
		b.pointer.hold = hold{}
	}
	b.pointer.pressed, b.pointer.told = true, false
	if h := &b.pointer.hold; h.what == mark && b.takes(e.Position, h.spot) {
		b.choose(h)
		b.pointer.told = true
	}
	b.lens.follow()
}

// MouseUp lets go.
func (b *Board) MouseUp(*desktop.MouseEvent) {
	b.pointer.pressed = false
	if !b.pointer.dragged {
		b.pointer.hold = hold{}
	}
	b.lens.follow()
}

// Tapped places what is wanted, or selects the mark under the pointer.
func (b *Board) Tapped(e *fyne.PointEvent) {
	if b.shown == nil {
		return
	}
	if spot, ok := b.markAt(e.Position); ok && b.takes(e.Position, spot.Spot) {
		b.choose(&hold{what: mark, spot: spot.Spot, selected: b.pointer.told})
		b.pointer.told = false
		return
	}
	at := b.view.On(b.place(e.Position))
	if b.scene.Wanted != nil && b.view.Holds(at) && b.OnPlace != nil {
		b.OnPlace(at)
	}
}

// Dragged moves what is held.
func (b *Board) Dragged(e *fyne.DragEvent) {
	if b.shown == nil {
		return
	}
	if !b.pointer.pressed && !b.pointer.dragged {
		b.grasp(e.Position.SubtractXY(e.Dragged.DX, e.Dragged.DY))
	}
	b.pointer.dragged, b.pointer.inside, b.pointer.at = true, true, e.Position
	h := &b.pointer.hold
	if h.what == ground {
		b.see(b.view.Panned(float64(e.Dragged.DX)*b.scale, float64(e.Dragged.DY)*b.scale))
		return
	}
	h.now = b.within(h.from.Add(b.view.On(b.place(e.Position)).Sub(h.press)))
	switch h.what {
	case mark:
		b.choose(h)
		if b.OnDrag != nil {
			b.OnDrag(h.spot, h.now)
		}
	case border:
		if b.OnDragEdge != nil {
			b.OnDragEdge(h.web, h.from, h.now)
		}
	}
	b.lens.follow()
}

// DragEnd drops what was held.
func (b *Board) DragEnd() {
	h := b.pointer.hold
	b.pointer.hold, b.pointer.dragged, b.pointer.pressed = hold{}, false, false
	switch {
	case h.what == mark && b.OnDrop != nil:
		b.OnDrop(h.spot)
	case h.what == border && b.OnDropEdge != nil:
		b.OnDropEdge(h.web)
	}
	b.lens.follow()
}

// Scrolled zooms about the pointer; four notches of a wheel double.
func (b *Board) Scrolled(e *fyne.ScrollEvent) {
	const notch = 25 // what Fyne says of one on Linux and Windows
	b.pointer.at = e.Position
	b.see(b.view.ZoomedBy(math.Exp2(float64(e.Scrolled.DY)/notch/4), b.place(e.Position)))
}

// Cursor is a crosshair where a point is wanted.
func (b *Board) Cursor() desktop.Cursor {
	h := b.pointer.hold
	switch {
	case b.shown == nil:
		return desktop.DefaultCursor
	case h.what != ground:
		return desktop.PointerCursor
	case b.scene.Wanted != nil:
		return desktop.CrosshairCursor
	}
	if _, ok := b.markAt(b.pointer.at); ok {
		return desktop.PointerCursor
	}
	return desktop.DefaultCursor
}

// choose says once that a mark was selected.
func (b *Board) choose(h *hold) {
	if !h.selected && b.OnSelect != nil {
		b.OnSelect(h.spot)
	}
	h.selected = true
}

// focus is the place about which keys zoom.
func (b *Board) focus() display.Place {
	if b.pointer.inside {
		return b.place(b.pointer.at)
	}
	return display.Place{X: float64(b.view.Window.X) / 2, Y: float64(b.view.Window.Y) / 2}
}

// within is p moved onto the photograph.
func (b *Board) within(p plane.PixelPoint) plane.PixelPoint {
	return plane.Pt(
		min(max(p.X, 0), plane.Pixel(b.view.Photograph.X)),
		min(max(p.Y, 0), plane.Pixel(b.view.Photograph.Y)),
	)
}
