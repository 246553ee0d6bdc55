package arch

import (
	"math"

	"ogive/geometry/plane"
)

// Distance is the orthogonal distance from p to the arch: positive on the side
// of the skin, negative in the opening.
func (a Arch) Distance(p plane.Position) plane.Millimetre {
	c := newCurve(a)
	x, y := c.local(p)
	return plane.Millimetre(c.foot(math.Abs(x), y).distance)
}

// curve is an arch with its sines and cosines at hand, for the many distances
// that a fit asks for.
type curve struct {
	crownX, crownY float64
	axisX, axisY   float64 // the right-hand direction is (-axisY, axisX)
	sinPhi, cosPhi float64
	sinPsi, cosPsi float64
	r, f           float64
	centreX        float64 // of the right arc, in the arch's frame
	centreY        float64
}

func newCurve(a Arch) curve {
	c := curve{
		crownX: float64(a.Crown.X), crownY: float64(a.Crown.Y),
		axisX: float64(a.Axis.X), axisY: float64(a.Axis.Y),
		r: float64(a.Radius), f: float64(a.Flat),
	}
	c.sinPhi, c.cosPhi = math.Sincos(float64(a.Flare))
	c.sinPsi, c.cosPsi = math.Sincos(float64(a.Turn))
	c.centreX, c.centreY = c.f/2-c.r*c.cosPsi, c.r*c.sinPsi
	return c
}

// local is p as x to the right of the axis and y distal to the crown.
func (c *curve) local(p plane.Position) (x, y float64) {
	dx, dy := float64(p.X)-c.crownX, float64(p.Y)-c.crownY
	return dy*c.axisX - dx*c.axisY, dx*c.axisX + dy*c.axisY
}

// foot is what the fit needs to know of the point of the curve nearest to a
// given point: the signed distance, its gradient in the arch's frame (right
// half), and its derivatives by the four numbers that shape the arch.
type foot struct {
	distance                     float64
	gradX, gradY                 float64
	byFlare, byTurn, byR, byFlat float64
}

// foot finds the nearest point of the right half to (x, y), x >= 0.
//
// The derivative of an orthogonal distance by a parameter is minus the normal
// part of the movement of the curve at the foot point, which gives the short
// formulas below. A point of the right arc seen from its centre lies at an
// angle alpha between phi and psi, towards (cos alpha, -sin alpha).
func (c *curve) foot(x, y float64) foot {
	qx, qy := x-c.centreX, y-c.centreY
	beyondCrown := -(qy*c.cosPsi + qx*c.sinPsi) // positive where alpha > psi
	alongBorder := qy*c.cosPhi + qx*c.sinPhi    // positive where alpha < phi
	switch {
	case beyondCrown > 0 && c.f > 0:
		return foot{distance: -y, gradY: -1}
	case beyondCrown > 0:
		return corner(x, y)
	case alongBorder >= 0:
		cos := c.cosPsi*c.cosPhi + c.sinPsi*c.sinPhi
		sin := c.sinPsi*c.cosPhi - c.cosPsi*c.sinPhi
		return foot{
			distance: qx*c.cosPhi - qy*c.sinPhi - c.r, gradX: c.cosPhi, gradY: -c.sinPhi,
			byFlare: -alongBorder, byTurn: -c.r * sin, byR: cos - 1, byFlat: -c.cosPhi / 2,
		}
	}
	rho := math.Sqrt(qx*qx + qy*qy)
	if rho == 0 {
		return foot{distance: -c.r}
	}
	gx, gy := qx/rho, qy/rho
	return foot{
		distance: rho - c.r, gradX: gx, gradY: gy,
		byTurn: -c.r * (c.sinPsi*gx + c.cosPsi*gy), byR: c.cosPsi*gx - c.sinPsi*gy - 1, byFlat: -gx / 2,
	}
}

// corner is the distance to the point in which the two sides meet; it is the
// nearest only to points proximal to it.
func corner(x, y float64) foot {
	d := math.Sqrt(x*x + y*y)
	if d == 0 {
		return foot{gradY: -1}
	}
	return foot{distance: d, gradX: x / d, gradY: y / d}
}
