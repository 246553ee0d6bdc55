package board

import (
	"math"
	"time"

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
	over    *marking.Spot // the mark under the pointer, nil for none
	pressed bool
	hold    hold
	from    fyne.Position  // where the press was
	since   time.Time      // when
	moved   bool           // has moved while pressed, if only by a tremor
	dragged bool           // has moved farther than a click allows
	told    marking.Spot   // the mark the press has selected already, zero for none
	late    *fyne.Position // of a click that waits for where it really was
}

// hold is what a press took hold of: a mark, a border, or the ground.
type hold struct {
	what   holding
	spot   marking.Spot
	web    hand.Web
	handle string
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
	handle
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
	if b.pointer.late != nil {
		*b.pointer.late, b.pointer.late = e.Position, nil
	}
	b.hover()
	b.lens.follow()
}

// MouseOut forgets the pointer.
func (b *Board) MouseOut() {
	b.pointer.inside = false
	b.hover()
	b.lens.follow()
}

// MouseDown takes hold of what is under the pointer.
func (b *Board) MouseDown(e *desktop.MouseEvent) {
	b.pointer.inside, b.pointer.at = true, e.Position
	b.press(e.Position)
	if e.Button != desktop.MouseButtonPrimary {
		b.pointer.hold = hold{press: b.pointer.hold.press}
	}
	b.pointer.pressed, b.pointer.told = true, marking.Spot{}
	if h := &b.pointer.hold; h.what == mark && b.takes(e.Position, h.spot) {
		b.choose(h)
		b.pointer.told = h.spot
	}
	b.lens.follow()
	b.pointer.since = b.clock()
}

// MouseUp lets go.
func (b *Board) MouseUp(*desktop.MouseEvent) {
	b.pointer.pressed = false
	if !b.pointer.moved {
		b.pointer.hold = hold{}
	}
	b.lens.follow()
}

// press begins a gesture at p.
func (b *Board) press(p fyne.Position) {
	b.grasp(p)
	b.pointer.from, b.pointer.moved, b.pointer.dragged = p, false, false
}

// atOnce is a time in which no hand moves: what Fyne reports so soon after a
// press happened before it. Fyne reports moves once for each picture it shows,
// but presses at once, so that a press comes with the place of the picture before.
const atOnce = 6 * time.Millisecond

// tremor is how far the pointer may move during a click.
const tremor = 4

// Tapped is a click. If press and release came at once, where the pointer really
// was is reported just after this.
func (b *Board) Tapped(e *fyne.PointEvent) {
	at := e.Position
	if b.clock().Sub(b.pointer.since) > atOnce {
		b.click(at)
		return
	}
	b.pointer.late = &at
	b.soon(func() {
		b.pointer.late = nil
		b.click(at)
	})
}

// click places what is wanted, or selects the mark under the pointer.
func (b *Board) click(p fyne.Position) {
	if b.shown == nil {
		return
	}
	if b.handleTakes(p) {
		return
	}
	if spot, ok := b.markAt(p); ok && b.takes(p, spot.Spot) {
		b.choose(&hold{what: mark, spot: spot.Spot, selected: b.pointer.told == spot.Spot})
		b.pointer.told = marking.Spot{}
		return
	}
	at := b.view.On(b.place(p))
	if b.scene.Wanted != nil && b.view.Holds(at) && b.OnPlace != nil {
		b.OnPlace(at)
	}
}

// Dragged moves what is held, once the pointer has moved farther than the tremor
// of a click.
func (b *Board) Dragged(e *fyne.DragEvent) {
	if b.shown == nil {
		return
	}
	b.pointer.inside, b.pointer.at = true, e.Position
	switch {
	case !b.pointer.pressed && !b.pointer.moved: // no press was reported
		b.press(e.Position.SubtractXY(e.Dragged.DX, e.Dragged.DY))
	case !b.pointer.moved && b.clock().Sub(b.pointer.since) < atOnce && b.beyondTremor(e.Position):
		b.press(e.Position)
	}
	b.pointer.moved = true
	if b.pointer.dragged = b.pointer.dragged || b.beyondTremor(e.Position); b.pointer.dragged {
		b.move(e.Position)
	}
	b.lens.follow()
}

// beyondTremor reports whether p lies farther from the press than a hand trembles.
// Within it, what is reported late is more likely a tremor on a busy machine than
// the end of the way to a press.
func (b *Board) beyondTremor(p fyne.Position) bool {
	way := p.Subtract(b.pointer.from)
	return math.Hypot(float64(way.X), float64(way.Y)) > tremor
}

// move brings what is held to where the pointer is by now.
func (b *Board) move(p fyne.Position) {
	h := &b.pointer.hold
	if h.what == ground {
		was, now := b.view.Screen(h.press), b.place(p)
		b.see(b.view.Panned(now.X-was.X, now.Y-was.Y))
		return
	}
	h.now = b.within(h.from.Add(b.view.On(b.place(p)).Sub(h.press)))
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
	case handle:
		if b.OnDragHandle != nil {
			b.OnDragHandle(h.handle, h.now)
		}
	}
}

// DragEnd drops what was held; a tremor was a click, and means the place that was
// aimed at when the hand pressed.
func (b *Board) DragEnd() {
	h, dragged := b.pointer.hold, b.pointer.dragged
	b.pointer.hold, b.pointer.dragged, b.pointer.moved, b.pointer.pressed = hold{}, false, false, false
	switch {
	case !dragged:
		b.click(b.pointer.from)
	case h.what == mark && b.OnDrop != nil:
		b.OnDrop(h.spot)
	case h.what == border && b.OnDropEdge != nil:
		b.OnDropEdge(h.web)
	case h.what == handle && b.OnDropHandle != nil:
		b.OnDropHandle(h.handle)
	}
	b.lens.follow()
}

// Scrolled zooms about the pointer; four notches of a wheel double.
func (b *Board) Scrolled(e *fyne.ScrollEvent) {
	const notch = 25 // what Fyne says of one on Linux and Windows
	b.pointer.at = e.Position
	b.see(b.view.ZoomedBy(math.Exp2(float64(e.Scrolled.DY)/notch/4), b.place(e.Position)))
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
