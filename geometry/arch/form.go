package arch

import (
	"math"

	"ogive/geometry/leastsquares"
	"ogive/geometry/plane"
)

// form writes an arch of one shape as the numbers a fit can turn:
//
//	crown x, crown y, direction of the axis, flare,
//	then radius (round), radius and turn (gothic), radius and flat (U).
type form struct{ shape Shape }

const (
	crownX = iota
	crownY
	axis
	flare
	radius
	extra // turn of a gothic arch, flat of a U
)

func (fm form) size() int {
	switch fm.shape {
	case V:
		return radius
	case Round:
		return extra
	}
	return extra + 1
}

// arch is the arch that the numbers p stand for.
func (fm form) arch(p []float64) Arch {
	s, c := math.Sincos(p[axis])
	a := Arch{
		Shape: fm.shape,
		Crown: plane.Pt(plane.Millimetre(p[crownX]), plane.Millimetre(p[crownY])),
		Axis:  plane.Vec(plane.Millimetre(c), plane.Millimetre(s)),
		Flare: plane.Radians(p[flare]), Turn: plane.RightAngle,
	}
	switch fm.shape {
	case V:
		a.Turn = a.Flare
		return a
	case Gothic:
		a.Turn = plane.Radians(p[extra])
	case U:
		a.Flat = plane.Millimetre(p[extra])
	}
	a.Radius = plane.Millimetre(p[radius])
	return a
}

// numbers is the inverse of arch.
func (fm form) numbers(a Arch) []float64 {
	p := []float64{
		float64(a.Crown.X), float64(a.Crown.Y),
		math.Atan2(float64(a.Axis.Y), float64(a.Axis.X)), float64(a.Flare),
	}
	switch fm.shape {
	case Round:
		p = append(p, float64(a.Radius))
	case Gothic:
		p = append(p, float64(a.Radius), float64(a.Turn))
	case U:
		p = append(p, float64(a.Radius), float64(a.Flat))
	}
	return p
}

// Limits of the family: borders that diverge by more than 2 x 65 degrees, or
// converge by more than 2 x 25, are not those of two neighbouring fingers; a
// gothic arch turns at least 3 degrees and meets in a point.
const (
	leastFlare  = -25 * math.Pi / 180
	mostFlare   = 65 * math.Pi / 180
	leastTurn   = 3 * math.Pi / 180
	mostTurn    = 89.9 * math.Pi / 180
	leastLength = 1e-4 // mm
)

// bound keeps the numbers within the family.
func (fm form) bound(p []float64) {
	p[flare] = clamp(p[flare], leastFlare, mostFlare)
	if fm.shape == V {
		p[flare] = math.Max(p[flare], leastTurn)
		return
	}
	p[radius] = math.Max(p[radius], leastLength)
	switch fm.shape {
	case Gothic:
		p[extra] = clamp(p[extra], p[flare]+leastTurn, mostTurn)
	case U:
		p[extra] = math.Max(p[extra], leastLength)
	}
}

func clamp(x, low, high float64) float64 { return math.Min(math.Max(x, low), high) }

// residuals are the orthogonal distances from the points to the arch.
func (fm form) residuals(points []plane.Position) leastsquares.Residuals {
	k := fm.size()
	return func(p, r, jac []float64) {
		a := fm.arch(p)
		right := a.right()
		for i, q := range points {
			x, y := a.local(q)
			side := math.Copysign(1, x)
			ft := a.foot(math.Abs(x), y)
			r[i] = ft.distance
			if jac == nil {
				continue
			}
			row := jac[i*k : (i+1)*k]
			gx := side * ft.gradX
			row[crownX] = -(gx*float64(right.X) + ft.gradY*float64(a.Axis.X))
			row[crownY] = -(gx*float64(right.Y) + ft.gradY*float64(a.Axis.Y))
			row[axis] = -gx*y + ft.gradY*x
			row[flare] = ft.byFlare
			switch fm.shape {
			case V:
				// The corner turns with the borders: r is zero, so is byTurn.
			case Round:
				row[radius] = ft.byR
			case Gothic:
				row[radius], row[extra] = ft.byR, ft.byTurn
			case U:
				row[radius], row[extra] = ft.byR, ft.byFl
			}
		}
	}
}
