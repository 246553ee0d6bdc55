package markshapes

import (
	"math"

	"ogive/geometry/hand"
	"ogive/imaging/palette"
)

// Joint draws a joint's mark of half size r; the ink point in it is the marked
// place.
func (p *Pen) Joint(j hand.Joint, q Spot, r float64) {
	p.Solid(palette.Cores[palette.Joint], JointOutline(j, q, r))
	p.Point(q, r)
}

// Point is the marked place in the middle of a solid mark of half size r.
func (p *Pen) Point(q Spot, r float64) {
	p.Fill(palette.Ink, Disc(q, math.Max(0.17*r, 0.85)))
}

// Crown draws two darts along the web's axis that point at the crown from either
// side and leave the arch itself, and the crown, open to the eye. The darts reach
// r from it; distal is the direction in which the web opens, zero where unknown.
func (p *Pen) Crown(q, distal Spot, r float64) {
	if distal == (Spot{}) {
		distal = Spot{0, -1}
	}
	across := distal.Unit().Square().Times(0.28 * r)
	for _, way := range []Spot{distal.Unit(), distal.Unit().Times(-1)} {
		base := q.Add(way.Times(r))
		p.Solid(palette.Cores[palette.Crown], []Spot{q.Add(way.Times(0.39 * r)), base.Add(across), base.Sub(across)})
	}
}

// Springings draws a short bar across the border at each of the two springings,
// half of it on either side, and so wide.
func (p *Pen) Springings(a, b Spot, half, width float64) {
	v := b.Sub(a).Unit().Times(half)
	p.Lines(Stroke{Core: palette.Cores[palette.Crown], Width: width},
		[]Spot{a.Sub(v), a.Add(v)}, []Spot{b.Sub(v), b.Add(v)})
}
