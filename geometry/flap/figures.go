package flap

import (
	"math"

	"ogive/geometry/drawn"
	"ogive/geometry/plane"
	"ogive/geometry/scale"
)

// Figures are what a drawn flap measures.
type Figures struct {
	Length plane.Estimate[plane.Millimetre]
	// Base is the width that is not cut; Middle and Tip are the widths at half
	// and at nine tenths of the length.
	Base, Middle, Tip plane.Estimate[plane.Millimetre]
	Area              plane.Estimate[plane.SquareMillimetre]
	// LengthToBase is the length over the width of the base.
	LengthToBase plane.Estimate[plane.Ratio]
	// Notes say in sentences what to look at again.
	Notes []string
}

// tipWidthAt is where the width of the tip is taken: a rounded or a slanting end
// has none at its very end.
const tipWidthAt plane.Ratio = 0.9

// Of is the figures of a flap on a photograph of that scale.
func Of(f Flap, fit scale.Fit) Figures {
	e := drawn.Figures(fit, f.Outline, func(ps []plane.Position) []float64 {
		g := Flap{Outline: ps}
		length, base := float64(g.Length()), float64(g.Base())
		return []float64{length, base, float64(g.Width(0.5)), float64(g.Width(tipWidthAt)), float64(g.Area()), length / base}
	})
	length := func(i int) plane.Estimate[plane.Millimetre] {
		return plane.Estimate[plane.Millimetre]{Value: plane.Millimetre(e[i].Value), U95: plane.Millimetre(e[i].U95)}
	}
	return Figures{
		Length: length(0), Base: length(1), Middle: length(2), Tip: length(3),
		Area:         plane.Estimate[plane.SquareMillimetre]{Value: plane.SquareMillimetre(e[4].Value), U95: plane.SquareMillimetre(e[4].U95)},
		LengthToBase: plane.Estimate[plane.Ratio]{Value: plane.Ratio(e[5].Value), U95: plane.Ratio(e[5].U95)},
		Notes:        f.notes(),
	}
}

// Area is the area of the outline by the shoelace formula.
func (f Flap) Area() plane.SquareMillimetre {
	sum := 0.0
	for i, p := range f.Outline {
		q := f.Outline[(i+1)%len(f.Outline)]
		sum += float64(p.Sub(f.Outline[0]).Cross(q.Sub(f.Outline[0])))
	}
	return plane.SquareMillimetre(math.Abs(sum) / 2)
}

// Base is the width of the base, which is not cut.
func (f Flap) Base() plane.Millimetre {
	if len(f.Outline) < 2 {
		return 0
	}
	return f.Outline[0].Distance(f.Outline[len(f.Outline)-1])
}

// Length is how far the outline reaches from the line of its base, square to it.
func (f Flap) Length() plane.Millimetre {
	axis, far := f.Axis(), plane.Millimetre(0)
	for _, p := range f.Outline {
		far = max(far, p.Sub(f.Outline[0]).Dot(axis))
	}
	return far
}

// Axis is one long, square to the base, and points from it to the tip.
func (f Flap) Axis() plane.Vector[plane.Millimetre] {
	if len(f.Outline) < 3 {
		return plane.Vector[plane.Millimetre]{}
	}
	first := f.Outline[0]
	axis := f.Outline[len(f.Outline)-1].Sub(first).Left().Direction()
	side := plane.Millimetre(0)
	for _, p := range f.Outline {
		if d := p.Sub(first).Dot(axis); math.Abs(float64(d)) > math.Abs(float64(side)) {
			side = d
		}
	}
	if side < 0 {
		return axis.Scale(-1)
	}
	return axis
}

// Width is the width at a part of the length, from 0 at the base to 1 at the
// tip: between the outermost places where the outline crosses it.
func (f Flap) Width(at plane.Ratio) plane.Millimetre {
	if len(f.Outline) < 3 {
		return 0
	}
	axis, height := f.Axis(), plane.Millimetre(at)*f.Length()
	across, first := axis.Turned(plane.RightAngle), f.Outline[0]
	low, high := math.Inf(1), math.Inf(-1)
	for i, p := range f.Outline {
		q := f.Outline[(i+1)%len(f.Outline)]
		a, b := p.Sub(first).Dot(axis)-height, q.Sub(first).Dot(axis)-height
		if a > 0 == (b > 0) && a != 0 && b != 0 {
			continue
		}
		t := 0.0
		if a != b {
			t = float64(a / (a - b))
		}
		x := float64(p.Towards(q, t).Sub(first).Dot(across))
		low, high = math.Min(low, x), math.Max(high, x)
	}
	return plane.Millimetre(math.Max(high-low, 0))
}
