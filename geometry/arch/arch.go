// Package arch describes the arch of a web and fits it to a traced border.
//
// One family, opening distally. Each finger border is a straight line at the
// angle phi (flare) to the arch's axis. Tangent to it an arc of radius r turns
// from phi to psi; a flat of length f may join the two arcs at the crown:
//
//	half span  a = f/2 + r (cos phi - cos psi)
//	rise         = r (sin psi - sin phi)
//	crown angle  = 2 psi
//
//	V       r = 0, f = 0, psi = phi    two straight borders meet in a corner
//	round   f = 0, psi = 90 degrees    one arc
//	gothic  f = 0, psi < 90 degrees    two arcs meet in a point
//	U       f > 0, psi = 90 degrees    two arcs joined by a flat
//
// With phi = 0, psi = 60 degrees is the equilateral pointed arch (r = span,
// rise = 0.866 span) and psi = 90 degrees the semicircle (rise = 0.5 span).
//
//	fit, err := arch.Fit(border, arch.Noise{})  // border: positions in mm, in order
//	fit.Best().Arch.Span()                      // mm
package arch

import (
	"math"

	"ogive/geometry/plane"
)

// Arch is one arch in its place on the plane of the reference.
type Arch struct {
	Shape Shape
	// Crown is the most proximal point: the corner or the middle of the flat.
	Crown plane.Position
	// Axis points distally and is one long.
	Axis plane.Vector[plane.Millimetre]
	// Flare is phi, Turn is psi.
	Flare, Turn plane.Angle
	Radius      plane.Millimetre
	Flat        plane.Millimetre
}

// Span is the distance between the springings.
func (a Arch) Span() plane.Millimetre {
	return a.Flat + 2*a.Radius*plane.Millimetre(a.Flare.Cos()-a.Turn.Cos())
}

// Rise is the distance from the crown to the line between the springings.
func (a Arch) Rise() plane.Millimetre {
	return a.Radius * plane.Millimetre(a.Turn.Sin()-a.Flare.Sin())
}

// CrownAngle is the angle in which the two sides meet at the crown: 180 degrees
// for a round or flat one.
func (a Arch) CrownAngle() plane.Angle { return 2 * a.Turn }

// Springings are where the arch leaves the two straight borders: first the one
// to the left of the axis, then the one to its right, looking distally on a
// picture whose y points down.
func (a Arch) Springings() [2]plane.Position {
	half, rise := a.Span()/2, a.Rise()
	return [2]plane.Position{a.at(-half, rise), a.at(half, rise)}
}

// Borders are the unit directions, distal, of the two straight borders, in the
// order of Springings.
func (a Arch) Borders() [2]plane.Vector[plane.Millimetre] {
	return [2]plane.Vector[plane.Millimetre]{a.Axis.Turned(-a.Flare), a.Axis.Turned(a.Flare)}
}

// Departures are the unit directions in which the two sides leave the crown.
func (a Arch) Departures() [2]plane.Vector[plane.Millimetre] {
	return [2]plane.Vector[plane.Millimetre]{a.Axis.Turned(-a.Turn), a.Axis.Turned(a.Turn)}
}

// Widened is the arch whose every side lies d further out, as the curve
// parallel to a at that distance.
func (a Arch) Widened(d plane.Millimetre) Arch {
	w := a
	switch a.Shape {
	case V:
		s := math.Max(a.Flare.Sin(), minimumCornerSine)
		w.Crown = a.Crown.Add(a.Axis.Scale(-float64(d) / s))
	case Gothic:
		w.Radius = max(a.Radius+d, 0)
		foot := float64(a.Radius) * a.Turn.Cos()
		height := math.Sqrt(math.Max(float64(w.Radius*w.Radius)-foot*foot, 0))
		w.Crown = a.Crown.Add(a.Axis.Scale(float64(a.Radius)*a.Turn.Sin() - height))
		w.Turn = max(plane.Radians(math.Atan2(height, foot)), a.Flare)
	default:
		w.Radius = max(a.Radius+d, 0)
		w.Crown = a.Crown.Add(a.Axis.Scale(-float64(d)))
	}
	return w
}

// minimumCornerSine keeps the corner of two nearly parallel borders from
// running away when they are moved apart.
const minimumCornerSine = 0.05

// Polyline is the arch as points in order from the left border to the right
// one, each border drawn for the length reach beyond its springing. Points on
// the arcs are no further apart than step.
func (a Arch) Polyline(reach, step plane.Millimetre) []plane.Position {
	right := a.side(step)
	end := right[len(right)-1]
	right = append(right, end.Add(plane.Vec(
		reach*plane.Millimetre(a.Flare.Sin()), reach*plane.Millimetre(a.Flare.Cos()))))
	line := make([]plane.Position, 0, 2*len(right))
	for i := len(right) - 1; i >= 0; i-- {
		line = append(line, a.at(-right[i].X, right[i].Y))
	}
	for i, p := range right {
		if i == 0 && p.X == 0 {
			continue
		}
		line = append(line, a.at(p.X, p.Y))
	}
	return line
}

// side is the right half from the crown to the springing, in the arch's frame.
func (a Arch) side(step plane.Millimetre) []plane.Position {
	line := []plane.Position{{X: a.Flat / 2}}
	turn := float64(a.Turn - a.Flare)
	n := int(math.Ceil(float64(a.Radius) * turn / float64(step)))
	n = min(n, 10_000)
	for i := 1; i <= n; i++ {
		alpha := a.Turn - plane.Radians(turn*float64(i)/float64(n))
		line = append(line, plane.Pt(
			a.Flat/2+a.Radius*plane.Millimetre(alpha.Cos()-a.Turn.Cos()),
			a.Radius*plane.Millimetre(a.Turn.Sin()-alpha.Sin()),
		))
	}
	return line
}

// at is the position x to the right of the axis and y distal to the crown.
func (a Arch) at(x, y plane.Millimetre) plane.Position {
	return a.Crown.Add(a.right().Scale(float64(x))).Add(a.Axis.Scale(float64(y)))
}

// local is the inverse of at.
func (a Arch) local(p plane.Position) (x, y float64) {
	v := p.Sub(a.Crown)
	return float64(v.Dot(a.right())), float64(v.Dot(a.Axis))
}

// right is the unit vector to the right of the axis.
func (a Arch) right() plane.Vector[plane.Millimetre] { return a.Axis.Turned(plane.RightAngle) }
