package arch

import (
	"math"

	"ogive/geometry/leastsquares"
	"ogive/geometry/plane"
)

// Circle is a circle with the standard deviation of its radius, in millimetres.
type Circle struct {
	Centre   plane.Position
	Radius   plane.Millimetre
	RadiusSD float64
}

// FitCircle is the circle with the least sum of squared orthogonal distances
// from ps (Gander W, Golub GH, Strebel R. BIT 1994;34:558-78).
func FitCircle(ps []plane.Position) (Circle, error) {
	start, ok := algebraicCircle(ps)
	if !ok {
		return Circle{}, leastsquares.ErrDegenerate
	}
	distances := func(p, r, jac []float64) {
		for i, q := range ps {
			dx, dy := float64(q.X)-p[0], float64(q.Y)-p[1]
			rho := math.Hypot(dx, dy)
			r[i] = rho - p[2]
			if jac != nil {
				rho = math.Max(rho, 1e-12)
				jac[3*i], jac[3*i+1], jac[3*i+2] = -dx/rho, -dy/rho, -1
			}
		}
	}
	fit, err := leastsquares.Fit(distances, len(ps), start, leastsquares.Options{Steps: 50, Tolerance: 1e-12})
	if err != nil {
		return Circle{}, err
	}
	cov, err := fit.Covariance()
	if err != nil {
		return Circle{}, err
	}
	free := math.Max(float64(len(ps)-3), 1)
	return Circle{
		Centre:   plane.Pt(plane.Millimetre(fit.Params[0]), plane.Millimetre(fit.Params[1])),
		Radius:   plane.Millimetre(fit.Params[2]),
		RadiusSD: math.Sqrt(fit.Loss / free * cov.At(2, 2)),
	}, nil
}

// algebraicCircle is the circle of least squared algebraic distance, where the
// geometric fit starts: x² + y² = 2 u x + 2 v y + w about the centroid.
func algebraicCircle(ps []plane.Position) ([]float64, bool) {
	if len(ps) < 3 {
		return nil, false
	}
	c := centroid(ps)
	var xx, xy, yy, xz, yz, z float64
	for _, p := range ps {
		x, y := float64(p.X-c.X), float64(p.Y-c.Y)
		s := x*x + y*y
		xx, xy, yy = xx+x*x, xy+x*y, yy+y*y
		xz, yz, z = xz+x*s, yz+y*s, z+s
	}
	det := xx*yy - xy*xy
	if det <= 1e-12*(xx+yy)*(xx+yy) {
		return nil, false
	}
	u, v := (xz*yy-yz*xy)/(2*det), (yz*xx-xz*xy)/(2*det)
	r := math.Sqrt(u*u + v*v + z/float64(len(ps)))
	return []float64{float64(c.X) + u, float64(c.Y) + v, r}, true
}
