package plan

import (
	"math"

	"ogive/geometry/arch"
	"ogive/geometry/plane"
)

// Dragged is a with its handle h dragged to a place, or as near to it as the
// family of arches and the limits of a web allow. A handle that a does not have
// leaves it as it is.
func Dragged(a arch.Arch, h Handle, to plane.Position) arch.Arch {
	if _, ok := GripOf(a, h); !ok || !to.Finite() {
		return a
	}
	f := FormOf(a)
	x, y := frame{a}.local(to)
	switch h {
	case Crown:
		a.Crown = to
		return a
	case Axis:
		if to.Distance(a.Crown) < leastAxis {
			return a
		}
		a.Axis = to.Sub(a.Crown).Direction()
		return a
	case SpanLeft, SpanRight:
		if h == SpanLeft {
			x = -x
		}
		f.Span = spanThrough(a, x, y)
	case Point:
		f = f.risen(y)
	case FlareLeft, FlareRight:
		if h == FlareLeft {
			x = -x
		}
		f = f.spread(x, y)
	}
	return f.Placed(a.Crown, a.Axis)
}

// leastAxis is how near to the crown the handle of the axis turns it no more.
const leastAxis plane.Millimetre = 0.2

// spanThrough is the span whose right springing lies nearest to (x, y): the
// springing moves on a straight line from the crown while the shape is kept.
func spanThrough(a arch.Arch, x, y plane.Millimetre) plane.Millimetre {
	k := a.Rise() / (a.Span() / 2)
	return 2 * (x + k*y) / (1 + k*k)
}

// risen is f with the rise y, its span and flare kept. In the family
//
//	rise / half span = cot((psi + phi) / 2),
//
// with half the flat taken from the half span of a U: sin psi - sin phi and
// cos phi - cos psi written as products.
func (f Form) risen(y plane.Millimetre) Form {
	half := float64(f.Span) / 2
	y = max(y, 0)
	turn := 2*plane.Radians(math.Atan2(half, float64(y))) - f.Flare
	switch {
	case turn < mostTurn:
		f.Shape, f.Turn = arch.Gothic, turn
		return f.Bounded()
	case turn < 2*plane.RightAngle-mostTurn:
		f.Shape = arch.Round
		return f.Bounded()
	}
	f.Shape = arch.U
	f.Flat = plane.Ratio(1 - float64(y)/half*((plane.RightAngle+f.Flare)/2).Tan())
	return f.Bounded()
}

// spread is f with the flare at which the right border passes through (x, y).
// The springing, about which the border turns, moves with the flare.
func (f Form) spread(x, y plane.Millimetre) Form {
	f = f.Bounded()
	for range 20 {
		a := f.Placed(plane.Position{}, plane.Vec[plane.Millimetre](0, -1))
		out, up := float64(x-a.Span()/2), float64(y-a.Rise())
		if math.Hypot(out, up) < float64(leastAxis) {
			break
		}
		f.Flare = (f.Flare + plane.Radians(math.Atan2(out, up))) / 2
		f = f.Bounded()
	}
	return f
}
