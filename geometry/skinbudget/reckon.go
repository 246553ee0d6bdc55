package skinbudget

import (
	"math"

	"ogive/geometry/plane"
)

// Reckon is the budget for a join of that length, less what the flaps bring. It
// fails on a girth that no digit has, and names it. Uncertainties are propagated
// to first order (JCGM 100:2008, 5.1.2); the digits are taken as round and as
// thick along the whole join.
func Reckon(g Girths, join plane.Estimate[plane.Millimetre], flaps plane.Estimate[plane.SquareMillimetre]) (Budget, error) {
	if err := g.check(); err != nil {
		return Budget{}, err
	}
	if !(join.Value > 0) {
		return Budget{}, errJoin
	}
	b := Budget{Girths: g, Join: join, Flaps: flaps}
	b.Outline = g.propagated(Outline)
	b.PerMillimetre = g.propagated(func(r, u plane.Millimetre) plane.Millimetre { return r + u - Outline(r, u) })
	ratio := g.propagated(func(r, u plane.Millimetre) plane.Millimetre { return (r + u) / Outline(r, u) })
	b.Ratio = plane.Estimate[plane.Ratio]{Value: plane.Ratio(ratio.Value), U95: plane.Ratio(ratio.U95)}
	b.Radial = g.propagated(share)
	b.Ulnar = g.propagated(func(r, u plane.Millimetre) plane.Millimetre { return share(u, r) })
	b.Shortage = area(b.PerMillimetre, join)
	b.Graft = plane.Estimate[plane.SquareMillimetre]{
		Value: max(b.Shortage.Value-flaps.Value, 0),
		U95:   plane.SquareMillimetre(math.Hypot(float64(b.Shortage.U95), float64(flaps.U95))),
	}
	b.remark()
	return b, nil
}

func (b *Budget) remark() {
	b.Remarks = append(b.Remarks, "The digits are taken as round and as thick along the whole join; skin shrinks when it is cut, and a graft does more so.")
	if b.Flaps.Value > b.Shortage.Value {
		b.Remarks = append(b.Remarks, "By this reckoning the flaps bring more than is short. It says nothing of where the skin is missing.")
	}
}

// propagated is f of both girths. The derivatives are taken over a hundredth of
// a millimetre.
func (g Girths) propagated(f func(radial, ulnar plane.Millimetre) plane.Millimetre) plane.Estimate[plane.Millimetre] {
	const h plane.Millimetre = 0.01
	r, u := g.Radial, g.Ulnar
	byRadial := float64((f(r.Value+h, u.Value) - f(r.Value-h, u.Value)) / (2 * h))
	byUlnar := float64((f(r.Value, u.Value+h) - f(r.Value, u.Value-h)) / (2 * h))
	return plane.Estimate[plane.Millimetre]{
		Value: f(r.Value, u.Value),
		U95:   plane.Millimetre(math.Hypot(byRadial*float64(r.U95), byUlnar*float64(u.U95))),
	}
}

// area is a width times a length.
func area(width, length plane.Estimate[plane.Millimetre]) plane.Estimate[plane.SquareMillimetre] {
	return plane.Estimate[plane.SquareMillimetre]{
		Value: plane.SquareMillimetre(width.Value * length.Value),
		U95:   plane.SquareMillimetre(math.Hypot(float64(width.U95*length.Value), float64(width.Value*length.U95))),
	}
}
