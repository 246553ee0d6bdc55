package phantom

import (
	"math"

	"ogive/geometry/arch"
	"ogive/geometry/plane"
)

type (
	point  = plane.Position
	vector = plane.Vector[plane.Millimetre]
)

// Hand coordinates: millimetres, x towards the ulnar side, y distal.

// webArch is one web in hand coordinates. The formulas are those of the family
// of arches, written out here a second time on purpose: a phantom must not
// depend on the code that is proven with it.
type webArch struct {
	shape        arch.Shape
	crown        point
	axis         vector
	flare, turn  plane.Angle
	radius, flat plane.Millimetre
}

// shaped is the arch of that shape, span and flare, in no place yet.
func shaped(s WebShape, flare plane.Angle) webArch {
	w := webArch{shape: s.Shape, flare: flare}
	switch s.Shape {
	case arch.V:
		w.turn = flare
	case arch.Round:
		w.turn = plane.RightAngle
		w.radius = s.Span / plane.Millimetre(2*flare.Cos())
	case arch.Gothic:
		w.turn = s.Turn
		w.radius = s.Span / plane.Millimetre(2*(flare.Cos()-s.Turn.Cos()))
	case arch.U:
		w.turn = plane.RightAngle
		w.flat = s.Span * plane.Millimetre(s.Flat)
		w.radius = (s.Span - w.flat) / plane.Millimetre(2*flare.Cos())
	}
	return w
}

func (w webArch) halfSpan() plane.Millimetre {
	return w.flat/2 + w.radius*plane.Millimetre(w.flare.Cos()-w.turn.Cos())
}

func (w webArch) rise() plane.Millimetre {
	return w.radius * plane.Millimetre(w.turn.Sin()-w.flare.Sin())
}

// area is what the arch and the line between its springings enclose.
func (w webArch) area() plane.SquareMillimetre {
	phi, psi, r := float64(w.flare), float64(w.turn), float64(w.radius)
	half := float64(w.flat)/2*float64(w.rise()) + r*r*((psi-phi)/2+
		(math.Sin(2*psi)-math.Sin(2*phi))/4-math.Cos(psi)*(math.Sin(psi)-math.Sin(phi)))
	return plane.SquareMillimetre(2 * half)
}

// width is the distance between the two sides at the distance distal from the
// crown, square to the axis, the borders being straight beyond the springings.
func (w webArch) width(distal plane.Millimetre) plane.Millimetre {
	if rise := w.rise(); distal >= rise {
		return 2 * (w.halfSpan() + (distal-rise)*plane.Millimetre(w.flare.Tan()))
	}
	sin := w.turn.Sin() - float64(distal/w.radius)
	alpha := plane.Radians(math.Asin(sin))
	return 2 * (w.flat/2 + w.radius*plane.Millimetre(alpha.Cos()-w.turn.Cos()))
}

// at is the position x to the ulnar side of the axis and y distal to the crown.
func (w webArch) at(x, y plane.Millimetre) point {
	return w.crown.Add(towards(w.axis, ulnar).Scale(float64(x))).Add(w.axis.Scale(float64(y)))
}

// springing is the end of the arch on that side.
func (w webArch) springing(s flank) point {
	return w.at(plane.Millimetre(s)*w.halfSpan(), w.rise())
}

// border is the distal direction of the straight border on that side.
func (w webArch) border(s flank) vector { return w.axis.Turned(-plane.Angle(s) * w.flare) }

// side lists the arch from the crown to the springing on that side.
func (w webArch) side(s flank, step plane.Millimetre) []point {
	sign := plane.Millimetre(s)
	line := []point{w.at(0, 0)}
	for i, n := 1, divisions(w.flat/2, step); w.flat > 0 && i <= n; i++ {
		line = append(line, w.at(sign*w.flat/2*plane.Millimetre(i)/plane.Millimetre(n), 0))
	}
	if w.radius == 0 {
		return line
	}
	sweep := w.turn - w.flare
	n := divisions(w.radius*plane.Millimetre(sweep), step)
	for i := 1; i <= n; i++ {
		alpha := w.turn - sweep*plane.Angle(i)/plane.Angle(n)
		line = append(line, w.at(
			sign*(w.flat/2+w.radius*plane.Millimetre(alpha.Cos()-w.turn.Cos())),
			w.radius*plane.Millimetre(w.turn.Sin()-alpha.Sin())))
	}
	return line
}

// divisions is how many steps a length takes; a rounding error above a whole
// number must not add one, or pictures would differ between machines.
func divisions(length, step plane.Millimetre) int {
	return max(1, int(math.Ceil(float64(length/step)-1e-6)))
}

// flank is a side of a digit or a web: +1 ulnar, -1 radial.
type flank int

const (
	radial flank = -1
	ulnar  flank = 1
)

// towards is the unit vector square to the distal direction u, on that side.
func towards(u vector, s flank) vector { return u.Turned(-plane.Angle(s) * plane.RightAngle) }
