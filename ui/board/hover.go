package board

import (
	"fyne.io/fyne/v2/driver/desktop"

	"ogive/ui/marking"
)

// hover names the mark under the pointer and says where on the photograph the
// pointer is.
func (b *Board) hover() {
	var over *marking.Spot
	if m, ok := b.markAt(b.pointer.at); ok && b.pointer.inside {
		over = &m.Spot
	}
	if was := b.pointer.over; (was == nil) != (over == nil) || (was != nil && *was != *over) {
		b.pointer.over = over
		b.remark()
	}
	if b.OnHover == nil || b.shown == nil {
		return
	}
	at := b.view.On(b.place(b.pointer.at))
	b.OnHover(at, b.pointer.inside && b.view.Holds(at))
}

// Cursor is a crosshair where a point is wanted.
func (b *Board) Cursor() desktop.Cursor {
	h := b.pointer.hold
	switch {
	case b.shown == nil:
		return desktop.DefaultCursor
	case h.what != ground:
		return desktop.PointerCursor
	case b.handleTakes(b.pointer.at):
		return desktop.PointerCursor
	case b.scene.Wanted != nil:
		return desktop.CrosshairCursor
	}
	if _, ok := b.markAt(b.pointer.at); ok {
		return desktop.PointerCursor
	}
	return desktop.DefaultCursor
}
