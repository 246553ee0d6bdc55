package arch

import (
	"math"

	"ogive/geometry/plane"
)

// Distance is the orthogonal distance from p to the arch: positive on the side
// of the skin, negative in the opening.
func (a Arch) Distance(p plane.Position) plane.Millimetre {
	x, y := a.local(p)
	foot := a.foot(math.Abs(x), y)
	return plane.Millimetre(foot.distance)
}

// foot is what the fit needs to know of the point of the curve nearest to a
// given point: the signed distance, its gradient in the arch's frame (right
// half), and its derivatives by the four numbers that shape the arch.
type foot struct {
	distance                   float64
	gradX, gradY               float64
	byFlare, byTurn, byR, byFl float64
}

// foot finds the nearest point of the right half to (x, y), x >= 0.
//
// The derivative of an orthogonal distance by a parameter is minus the normal
// part of the movement of the curve at the foot point, which gives the short
// formulas below.
func (a Arch) foot(x, y float64) foot {
	phi, psi := float64(a.Flare), float64(a.Turn)
	r, f := float64(a.Radius), float64(a.Flat)
	sinPsi, cosPsi := math.Sincos(psi)
	qx, qy := x-(f/2-r*cosPsi), y-r*sinPsi
	alpha := math.Atan2(-qy, qx)
	switch {
	case alpha > psi && f > 0:
		return foot{distance: -y, gradY: -1}
	case alpha > psi:
		return corner(x, y)
	case alpha >= phi:
		rho := math.Hypot(qx, qy)
		if rho == 0 {
			return foot{distance: -r}
		}
		s, c := math.Sincos(psi - alpha)
		return foot{
			distance: rho - r, gradX: qx / rho, gradY: qy / rho,
			byTurn: -r * s, byR: c - 1, byFl: -qx / rho / 2,
		}
	default:
		sinPhi, cosPhi := math.Sincos(phi)
		s, c := math.Sincos(psi - phi)
		return foot{
			distance: qx*cosPhi - qy*sinPhi - r, gradX: cosPhi, gradY: -sinPhi,
			byFlare: -(qx*sinPhi + qy*cosPhi),
			byTurn:  -r * s, byR: c - 1, byFl: -cosPhi / 2,
		}
	}
}

// corner is the distance to the point in which the two sides meet; it is the
// nearest only to points proximal to it.
func corner(x, y float64) foot {
	d := math.Hypot(x, y)
	if d == 0 {
		return foot{gradY: -1}
	}
	return foot{distance: d, gradX: x / d, gradY: y / d}
}
