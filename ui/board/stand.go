package board

import (
	"math"

	"fyne.io/fyne/v2"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/imaging/display"
	"ogive/ui/marking"
)

// sides are the directions from the pointer in which the loupe may stand, in
// order of liking: a hand holding a pen or a mouse comes from below.
var sides = []spot{xy(1, -1), xy(-1, -1), xy(0, -1), xy(1, 0), xy(-1, 0), xy(1, 1), xy(-1, 1), xy(0, 1)}

// What speaks against a side. The loupe leaves the side where it stands only for
// one that is better by more than costOfJump, and then not for every small move.
const (
	costOfLeaving = 1.0 // for each unit of Fyne's by which it would leave the board
	costOfLiking  = 0.1
	costOfJump    = 2.5
	settled       = 60 // how far the pointer moves before the loupe jumps again
)

// precious is a place on the board that the loupe had better not hide.
type precious struct {
	at     fyne.Position
	weight float64
}

// stand finds the loupe a place beside the pointer where it covers neither the
// pointer nor the spot at, stays inside the board, and hides few marks.
func (l *lens) stand(pointer, at fyne.Position) {
	places, shown := l.board.precious(), l.picture.Visible()
	least, best := math.Inf(1), 0
	for i, side := range sides {
		cost := l.cost(standAt(side, pointer, at), places) + costOfLiking*float64(i)
		if i == l.side && shown {
			cost -= costOfJump
		}
		if cost < least {
			least, best = cost, i
		}
	}
	if shown && best != l.side && l.mayStay(pointer, at) {
		best = l.side
	}
	if best != l.side {
		l.side, l.jumped = best, pointer
	}
	l.picture.Move(standAt(sides[best], pointer, at))
}

// mayStay reports whether the loupe has jumped so lately that it must not jump
// again, unless it has to.
func (l *lens) mayStay(pointer, at fyne.Position) bool {
	moved := pointer.Subtract(l.jumped)
	return l.leaving(standAt(sides[l.side], pointer, at)) == 0 && math.Hypot(float64(moved.X), float64(moved.Y)) < settled
}

// cost is what speaks against the loupe with its upper left corner at p.
func (l *lens) cost(p fyne.Position, places []precious) float64 {
	cost := costOfLeaving * l.leaving(p)
	for _, place := range places {
		d := place.at.Subtract(p.AddXY(lensSize/2, lensSize/2))
		if math.Hypot(float64(d.X), float64(d.Y)) < lensSize/2+6 {
			cost += place.weight
		}
	}
	return cost
}

// leaving is by how much a loupe at p leaves the board.
func (l *lens) leaving(p fyne.Position) float64 {
	size := l.board.Size()
	return float64(-min(p.X, p.Y, size.Width-lensSize-p.X, size.Height-lensSize-p.Y, 0))
}

// standAt is the upper left corner of a loupe in direction c from both places.
func standAt(c spot, a, b fyne.Position) fyne.Position {
	along := func(way float64, a, b float32) float32 {
		switch {
		case way > 0:
			return max(a, b) + lensGap
		case way < 0:
			return min(a, b) - lensGap - lensSize
		}
		return (a+b)/2 - lensSize/2
	}
	return fyne.NewPos(along(c.X, a.X, b.X), along(c.Y, a.Y, b.Y))
}

// precious are the places that are marked, traced, or will be wanted.
func (b *Board) precious() []precious {
	var out []precious
	add := func(at plane.PixelPoint, weight float64) {
		out = append(out, precious{b.position(b.view.Screen(at)), weight})
	}
	for _, m := range b.scene.Placed {
		if h := b.pointer.hold; h.what != mark || h.spot != m.Spot {
			add(m.At, 1)
		}
	}
	for _, h := range b.scene.Handles {
		if h.ID != b.pointer.hold.handle {
			add(h.At, 1)
		}
	}
	for _, web := range hand.Webs {
		addPath(b.scene.Reading.Edges[web], add)
	}
	for _, line := range b.scene.Lines {
		addPath(line.Points, add)
	}
	for n := range 5 {
		if name := b.nameOfSelected; name.Width() > 0 {
			at := display.Place{X: name.Left + float64(n)/4*name.Width(), Y: name.Centre().Y}
			out = append(out, precious{b.position(at), 0.5})
		}
	}
	for _, at := range b.expected() {
		add(at, 3)
	}
	return out
}

// addPath adds places along a path that weigh together as much as eight marks.
func addPath(path []plane.PixelPoint, add func(plane.PixelPoint, float64)) {
	const places = 24
	for i := range min(places, len(path)) {
		add(path[i*len(path)/min(places, len(path))], 8.0/places)
	}
}

// expected is about where the wanted point of a web belongs: between the four
// joints of its digits.
func (b *Board) expected() []plane.PixelPoint {
	w := b.scene.Wanted
	if w == nil || w.Kind != marking.SeedPoint {
		return nil
	}
	radial, ulnar := w.Web.Digits()
	var mids []plane.PixelPoint
	for _, j := range []hand.Joint{hand.MCP, hand.PIP} {
		a, ok := b.placed(marking.Spot{Kind: marking.JointPoint, Digit: radial, Joint: j})
		c, also := b.placed(marking.Spot{Kind: marking.JointPoint, Digit: ulnar, Joint: j})
		if !ok || !also {
			return nil
		}
		mids = append(mids, a.Mid(c))
	}
	return []plane.PixelPoint{mids[0].Mid(mids[1]), mids[1]}
}

// placed is where a point was placed, if it was.
func (b *Board) placed(s marking.Spot) (plane.PixelPoint, bool) {
	for _, m := range b.scene.Placed {
		if m.Spot == s {
			return m.At, true
		}
	}
	return plane.PixelPoint{}, false
}
