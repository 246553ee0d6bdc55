package board

import (
	"math"

	"fyne.io/fyne/v2"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/imaging/display"
	"ogive/ui/marking"
)

// How close a press has to come, in units of Fyne's. While a point is wanted, a
// click has to come closer to a mark to mean the mark: the next point may belong
// right beside it. A drag never means a new point.
const (
	reachOfMark   = 12
	closeToMark   = 6
	reachOfBorder = 8
)

// grasp finds what a press at p takes hold of.
func (b *Board) grasp(p fyne.Position) {
	press := b.view.On(b.place(p))
	b.pointer.hold = hold{press: press, from: press, now: press}
	h := &b.pointer.hold
	if b.shown == nil {
		return
	}
	if g, ok := b.handleAt(p); ok {
		h.what, h.handle, h.from, h.now = handle, g.ID, g.At, g.At
		return
	}
	if m, ok := b.markAt(p); ok {
		h.what, h.spot, h.from, h.now = mark, m.Spot, m.At, m.At
		return
	}
	if web, at, ok := b.borderAt(p); ok {
		h.what, h.web, h.from, h.now = border, web, at, at
	}
}

// takes reports whether a press at p, close to a mark, means the mark.
func (b *Board) takes(p fyne.Position, spot marking.Spot) bool {
	if b.scene.Wanted == nil {
		return true
	}
	for _, m := range b.scene.Placed {
		if m.Spot == spot {
			return b.away(p, m.At) <= closeToMark
		}
	}
	return false
}

// markAt is the mark nearest to p within reach.
func (b *Board) markAt(p fyne.Position) (marking.Placed, bool) {
	nearest, least := marking.Placed{}, math.Inf(1)
	for _, m := range b.scene.Placed {
		if d := b.away(p, m.At); d < least {
			nearest, least = m, d
		}
	}
	return nearest, least <= reachOfMark
}

// handleAt is the handle nearest to p within reach.
func (b *Board) handleAt(p fyne.Position) (Handle, bool) {
	nearest, least := Handle{}, math.Inf(1)
	for _, h := range b.scene.Handles {
		if d := b.away(p, h.At); d < least {
			nearest, least = h, d
		}
	}
	return nearest, least <= reachOfMark
}

// handleTakes reports whether a click at p means a handle.
func (b *Board) handleTakes(p fyne.Position) bool {
	h, ok := b.handleAt(p)
	return ok && (b.scene.Wanted == nil || b.away(p, h.At) <= closeToMark)
}

// borderAt is the place on a traced border nearest to p, within reach.
func (b *Board) borderAt(p fyne.Position) (hand.Web, plane.PixelPoint, bool) {
	q := b.place(p)
	var web hand.Web
	var at plane.PixelPoint
	least := math.Inf(1)
	for _, w := range hand.Webs {
		edge := b.scene.Reading.Edges[w]
		for i := 1; i < len(edge); i++ {
			t, d := alongSegment(q, b.view.Screen(edge[i-1]), b.view.Screen(edge[i]))
			if d < least {
				web, at, least = w, edge[i-1].Towards(edge[i], t), d
			}
		}
	}
	return web, at, least <= reachOfBorder*b.scale
}

// alongSegment is how far along from a to c the place nearest to q lies, and its
// distance from q.
func alongSegment(q, a, c display.Place) (t, distance float64) {
	dx, dy := c.X-a.X, c.Y-a.Y
	if n := dx*dx + dy*dy; n > 0 {
		t = min(max(((q.X-a.X)*dx+(q.Y-a.Y)*dy)/n, 0), 1)
	}
	return t, math.Hypot(q.X-a.X-t*dx, q.Y-a.Y-t*dy)
}

// away is the distance of a place on the photograph from p.
func (b *Board) away(p fyne.Position, at plane.PixelPoint) float64 {
	q := b.view.Screen(at)
	r := b.place(p)
	return math.Hypot(q.X-r.X, q.Y-r.Y) / b.scale
}
