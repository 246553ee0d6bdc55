package plan

import (
	"math"

	"ogive/geometry/arch"
	"ogive/geometry/plane"
)

// Form is the form of an arch apart from its place, in the numbers a surgeon
// turns.
type Form struct {
	Shape arch.Shape
	// Span is zero for a V.
	Span plane.Millimetre
	// Flare is phi, the angle of each border to the axis.
	Flare plane.Angle
	// Turn is psi, half the crown angle: the pointedness of a gothic arch.
	// Other shapes fix it.
	Turn plane.Angle
	// Flat is the part of the span that the flat of a U takes.
	Flat plane.Ratio
}

// Limits of what is drawn. Those of the angles are the limits within which
// package arch fits; those of the span hold any web of any hand.
const (
	leastSpan  plane.Millimetre = 0.5
	mostSpan   plane.Millimetre = 80
	leastFlare                  = plane.Angle(-25 * math.Pi / 180)
	mostFlare                   = plane.Angle(65 * math.Pi / 180)
	leastTurn                   = plane.Angle(3 * math.Pi / 180)
	mostTurn                    = plane.Angle(89 * math.Pi / 180)
	leastFlat  plane.Ratio      = 0.02
	mostFlat   plane.Ratio      = 0.98
)

// FormOf is the form of a.
func FormOf(a arch.Arch) Form {
	f := Form{Shape: a.Shape, Span: a.Span(), Flare: a.Flare, Turn: a.Turn}
	if f.Span > 0 {
		f.Flat = plane.Ratio(a.Flat / f.Span)
	}
	return f
}

// Bounded is the form nearest to f that an arch can have.
func (f Form) Bounded() Form {
	f.Flare = min(max(f.Flare, leastFlare), mostFlare)
	if f.Shape == arch.V {
		f.Flare = max(f.Flare, leastTurn)
		return Form{Shape: arch.V, Flare: f.Flare, Turn: f.Flare}
	}
	f.Span = min(max(f.Span, leastSpan), mostSpan)
	switch f.Shape {
	case arch.Gothic:
		// An arc that turns no further than the flare, either way, has no span.
		f.Turn, f.Flat = min(max(f.Turn, plane.Angle(math.Abs(float64(f.Flare)))+leastTurn), mostTurn), 0
	case arch.U:
		f.Turn, f.Flat = plane.RightAngle, min(max(f.Flat, leastFlat), mostFlat)
	default:
		f.Shape, f.Turn, f.Flat = arch.Round, plane.RightAngle, 0
	}
	return f
}

// Placed is the arch of that form, bounded, with its crown and its axis there.
// An axis without length points up the picture.
func (f Form) Placed(crown plane.Position, axis plane.Vector[plane.Millimetre]) arch.Arch {
	f = f.Bounded()
	if axis = axis.Direction(); axis == (plane.Vector[plane.Millimetre]{}) {
		axis = plane.Vec[plane.Millimetre](0, -1)
	}
	a := arch.Arch{Shape: f.Shape, Crown: crown, Axis: axis, Flare: f.Flare, Turn: f.Turn}
	a.Flat = f.Span * plane.Millimetre(f.Flat)
	if f.Shape != arch.V {
		a.Radius = (f.Span - a.Flat) / plane.Millimetre(2*(f.Flare.Cos()-f.Turn.Cos()))
	}
	return a
}

// Shaped is a as another shape, with crown, axis and flare kept, and the span
// where there is one. A V that becomes an arch gets the span that is given.
func Shaped(a arch.Arch, s arch.Shape, span plane.Millimetre) arch.Arch {
	f := FormOf(a)
	if f.Shape == arch.V {
		f.Span = span
	}
	if s == arch.Gothic && f.Shape != arch.Gothic {
		f.Turn = equilateral
	}
	if s == arch.U && f.Shape != arch.U {
		f.Flat = usualFlat
	}
	f.Shape = s
	return f.Placed(a.Crown, a.Axis)
}

const (
	// equilateral is the half crown angle of the equilateral pointed arch.
	equilateral = plane.Angle(60 * math.Pi / 180)
	// usualFlat is a flat of two fifths of the span (this project's own).
	usualFlat plane.Ratio = 0.4
)
