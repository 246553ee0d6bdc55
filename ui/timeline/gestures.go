package timeline

import (
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
)

var (
	_ fyne.Tappable      = (*plot)(nil)
	_ fyne.Focusable     = (*plot)(nil)
	_ desktop.Hoverable  = (*plot)(nil)
	_ desktop.Cursorable = (*plot)(nil)
)

// near is how close the pointer must come to a point, in Fyne's units.
const near = 26

// at is the point nearest to a position, -1 if none is near.
func (p *plot) at(pos fyne.Position) int {
	best, least := -1, near*near
	for i, s := range p.spots {
		dx, dy := float64(pos.X-s.X), float64(pos.Y-s.Y)
		if d := int(math.Round(dx*dx + dy*dy)); d <= least {
			best, least = i, d
		}
	}
	return best
}

// MouseIn, MouseMoved and MouseOut follow the pointer. The sitting last pointed
// at stays, so that it can be read at leisure.
func (p *plot) MouseIn(e *desktop.MouseEvent) { p.MouseMoved(e) }

// MouseMoved follows the pointer.
func (p *plot) MouseMoved(e *desktop.MouseEvent) {
	if i := p.at(e.Position); i >= 0 && i != p.marked {
		p.room.point(i)
	}
}

// MouseOut does nothing.
func (p *plot) MouseOut() {}

// Cursor is called by Fyne.
func (p *plot) Cursor() desktop.Cursor { return desktop.DefaultCursor }

// Tapped opens the photograph of a point; beside all points it only takes the
// keys.
func (p *plot) Tapped(e *fyne.PointEvent) {
	if c := fyne.CurrentApp().Driver().CanvasForObject(p); c != nil {
		c.Focus(p)
	}
	if i := p.at(e.Position); i >= 0 {
		p.room.point(i)
		p.room.open()
	}
}

// FocusGained shows that keys go here.
func (p *plot) FocusGained() { p.focused = true; p.Refresh() }

// FocusLost is called by Fyne.
func (p *plot) FocusLost() { p.focused = false; p.Refresh() }

// TypedRune does nothing.
func (p *plot) TypedRune(rune) {}

// TypedKey goes from sitting to sitting, and opens one.
func (p *plot) TypedKey(e *fyne.KeyEvent) {
	if p.chart == nil {
		return
	}
	last := len(p.chart.Series.Points) - 1
	to := p.marked
	switch e.Name {
	case fyne.KeyLeft, fyne.KeyUp:
		to = max(p.marked-1, min(last, 0))
	case fyne.KeyRight, fyne.KeyDown:
		to = min(p.marked+1, last)
	case fyne.KeyHome:
		to = min(last, 0)
	case fyne.KeyEnd:
		to = last
	case fyne.KeyReturn, fyne.KeyEnter, fyne.KeySpace:
		p.room.open()
		return
	}
	if to != p.marked {
		p.room.point(to)
	}
}
