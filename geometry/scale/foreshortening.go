package scale

import (
	"math"
	"math/rand/v2"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/mat"

	"ogive/geometry/plane"
)

const (
	// enoughTicks is the number of ticks from which on their own scatter says
	// how well they are placed.
	enoughTicks = 6
	// leastTickSD is what no tick is placed better than, in pixels: its own
	// print, and the straightness of the ruler, are not (this project's own).
	leastTickSD = 0.05
)

// row is a row of equally spaced ticks as it appears on a line: the places of
// the first and the last, and its foreshortening. The millimetres t along the
// ruler and the pixels s along the line belong together as
//
//	t = (a s + b) / (shrink s + 1),
//
// s being counted from the point of the line nearest to the principal point.
type row struct{ first, last, shrink float64 }

// at is the place of the tick a fraction k of the way from the first to the
// last, and its derivatives by first, last and shrink.
func (r row) at(k float64) (s float64, by [3]float64) {
	there, back := (1-k)*r.first+k*r.last, (1-k)*r.last+k*r.first
	w := 1 + r.shrink*back
	s = (there + r.shrink*r.first*r.last) / w
	by[0] = (1 - k + r.shrink*(r.last-k*s)) / w
	by[1] = (k + r.shrink*(r.first-(1-k)*s)) / w
	by[2] = (r.first*r.last - back*s) / w
	return s, by
}

// residuals are how far the ticks lie beyond their places in r.
func (r row) residuals(along []float64) []float64 {
	out := make([]float64, len(along))
	for i, s := range along {
		at, _ := r.at(float64(i) / float64(len(along)-1))
		out[i] = s - at
	}
	return out
}

// fittedRow is the row of least squares, and how uncertain it is.
type fittedRow struct {
	row
	// factor is the lower Cholesky factor of the covariance of first, last and
	// shrink.
	factor [3][3]float64
	// freedom is the degrees of freedom of the ticks' standard deviation where
	// it was estimated from their scatter, else 0.
	freedom int
}

// likelyForeshortening is the standard deviation of the foreshortening along a
// line that a tilt rectangular within the allowed one gives rise to.
func (l lens) likelyForeshortening(allowed plane.Angle) float64 {
	return allowed.Tan() / math.Sqrt(3) / l.focal
}

// foreshortened fits the row to the ticks. What is known of the foreshortening
// beforehand, prior, is weighed in by its precision, so that a few rough ticks
// don't invent a tilt.
func foreshortened(along []float64, prior float64, sd plane.Pixel) (fittedRow, bool) {
	tickSD := math.Max(float64(sd), leastTickSD)
	r, factor, ok := leastSquares(along, prior, tickSD)
	freedom := 0
	if len(along) >= enoughTicks {
		freedom = len(along) - 3
		tickSD = math.Max(floats.Norm(r.residuals(along), 2)/math.Sqrt(float64(freedom)), leastTickSD)
		r, factor, ok = leastSquares(along, prior, tickSD)
	}
	return fittedRow{r, factor, freedom}, ok
}

// leastSquares settles the row by the steps of Gauss and Newton, from equal
// gaps on; few are needed, as the row is nearly linear in its parameters.
func leastSquares(along []float64, prior, tickSD float64) (row, [3][3]float64, bool) {
	r := row{first: along[0], last: along[len(along)-1]}
	normal, right := mat.NewSymDense(3, nil), mat.NewVecDense(3, nil)
	var chol mat.Cholesky
	for range 12 {
		r.linearise(normal, right, along, prior, tickSD)
		var step mat.VecDense
		if !chol.Factorize(normal) || chol.SolveVecTo(&step, right) != nil {
			break
		}
		r.first += step.AtVec(0)
		r.last += step.AtVec(1)
		r.shrink += step.AtVec(2) * prior
		if math.Abs(step.AtVec(0))+math.Abs(step.AtVec(1))+math.Abs(step.AtVec(2)) < 1e-9 {
			break
		}
	}
	factor, ok := covarianceFactor(&chol, prior)
	return r, factor, ok
}

// linearise fills the normal equations. Foreshortening counts in units of its
// prior, which keeps the numbers near to each other.
func (r row) linearise(normal *mat.SymDense, right *mat.VecDense, along []float64, prior, tickSD float64) {
	normal.Zero()
	right.Zero()
	for i, s := range along {
		at, by := r.at(float64(i) / float64(len(along)-1))
		by[2] *= prior
		for a := range 3 {
			right.SetVec(a, right.AtVec(a)+by[a]*(s-at)/tickSD/tickSD)
			for b := a; b < 3; b++ {
				normal.SetSym(a, b, normal.At(a, b)+by[a]*by[b]/tickSD/tickSD)
			}
		}
	}
	right.SetVec(2, right.AtVec(2)-r.shrink/prior)
	normal.SetSym(2, 2, normal.At(2, 2)+1)
}

func covarianceFactor(chol *mat.Cholesky, prior float64) (factor [3][3]float64, ok bool) {
	var covariance mat.SymDense
	var square mat.Cholesky
	if chol.InverseTo(&covariance) != nil || !square.Factorize(&covariance) {
		return factor, false
	}
	var lower mat.TriDense
	square.LTo(&lower)
	for a := range 3 {
		for b := 0; b <= a; b++ {
			factor[a][b] = lower.At(a, b)
		}
	}
	for b := range 3 {
		factor[2][b] *= prior
	}
	return factor, true
}

// drawn is a row that is as likely, given the ticks and the prior. A standard
// deviation that was itself estimated makes the draw one of Student's t
// (JCGM 101:2008, 6.4.9).
func (f fittedRow) drawn(rng *rand.Rand) row {
	widen := 1.0
	if f.freedom > 0 && f.freedom <= 40 {
		sum := 0.0
		for range f.freedom {
			z := rng.NormFloat64()
			sum += z * z
		}
		widen = math.Sqrt(float64(f.freedom) / sum)
	}
	var z, off [3]float64
	for a := range 3 {
		z[a] = widen * rng.NormFloat64()
		for b := 0; b <= a; b++ {
			off[a] += f.factor[a][b] * z[b]
		}
	}
	return row{f.first + off[0], f.last + off[1], f.shrink + off[2]}
}

// lengthSD is the standard deviation of the distance from the first to the last
// tick.
func (f fittedRow) lengthSD() float64 {
	return floats.Norm([]float64{f.factor[1][0] - f.factor[0][0], f.factor[1][1], 0}, 2)
}

// shrinkSD is the standard deviation of the foreshortening.
func (f fittedRow) shrinkSD() float64 { return floats.Norm(f.factor[2][:], 2) }
