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
		c := newCurve(fm.arch(p))
		for i, q := range points {
			x, y := c.local(q)
			ft := c.foot(math.Abs(x), y)
			r[i] = ft.distance
			if jac != nil {
				fm.derivatives(jac[i*k:(i+1)*k], &c, ft, x, y)
			}
		}
	}
}

// derivatives fills the row of a residual whose foot is ft.
func (fm form) derivatives(row []float64, c *curve, ft foot, x, y float64) {
	gx := ft.gradX
	if x < 0 {
		gx = -gx
	}
	row[crownX] = gx*c.axisY - ft.gradY*c.axisX
	row[crownY] = -gx*c.axisX - ft.gradY*c.axisY
	row[axis] = ft.gradY*x - gx*y
	row[flare] = ft.byFlare
	switch fm.shape {
	case Round:
		row[radius] = ft.byR
	case Gothic:
		row[radius], row[extra] = ft.byR, ft.byTurn
	case U:
		row[radius], row[extra] = ft.byR, ft.byFlat
	}
}
