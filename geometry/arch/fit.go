package arch

import (
	"errors"
	"math"

	"gonum.org/v1/gonum/mat"

	"ogive/geometry/leastsquares"
	"ogive/geometry/plane"
)

// Candidate is the best arch of one shape for a traced border.
type Candidate struct {
	Arch Arch
	// Weight is the probability of the shape among the candidates, from BIC.
	Weight float64
	// RMS is the robust root mean square distance from the border to the arch.
	RMS plane.Millimetre
	// spread is a square root of the parameters' covariance.
	spread *mat.TriDense
	bic    float64
}

// Fitted is what a traced border says of its arch.
type Fitted struct {
	// Candidates has one arch for each shape that could be fitted, the most
	// probable first.
	Candidates []Candidate
	// Sure is true if the first shape explains the border clearly better than
	// any other: a difference in BIC of 2 or more. Less is "not worth more than
	// a bare mention" in Kass RE, Raftery AE. J Am Stat Assoc 1995;90:773-95.
	Sure bool
}

// Best is the most probable candidate.
func (f Fitted) Best() Candidate { return f.Candidates[0] }

// sureBIC is the difference in BIC from which one shape is called sure.
const sureBIC = 2

// ErrBorder says that a border can't carry an arch.
var ErrBorder = errors.New("the traced border is too short to fit an arch; trace it from one finger past the crown to the other finger")

// Fit fits every shape to the border, positions in order from one finger past
// the crown to the other, and weighs the shapes against each other. Floor is
// the smallest deviation of the border that could be real, in millimetres, such
// as a tenth of a pixel: a border that is drawn by a formula is not trusted
// further than that.
//
// Distances are orthogonal; stray points lose their weight (Tukey's biweight).
// Neighbouring points of a trace err together, so that BIC and covariance count
// the independent ones only: n (1 + 2 sum of autocorrelations)^-1.
func Fit(border []plane.Position, floor plane.Millimetre) (Fitted, error) {
	points := resample(border)
	if len(points) < minimumPoints {
		return Fitted{}, ErrBorder
	}
	start, err := firstGuess(points)
	if err != nil {
		return Fitted{}, err
	}
	fits := fitAll(points, start, float64(floor))
	if len(fits) == 0 {
		return Fitted{}, ErrBorder
	}
	return weigh(fits, points, float64(floor)), nil
}

// shapeFit is one shape fitted, before the shapes are weighed.
type shapeFit struct {
	form form
	leastsquares.Result
	scale float64
}

// fitAll fits each shape from each of its starts, first plainly enough to find
// the valley, then robustly with the deviation that the best shape leaves.
func fitAll(points []plane.Position, start guess, floor float64) []shapeFit {
	var fits []shapeFit
	for _, shape := range Shapes {
		fm := form{shape}
		if best, ok := fm.fitFrom(points, start.starts(shape), start.deviation(points, floor), 1e-3); ok {
			fits = append(fits, best)
		}
	}
	scale := math.Inf(1)
	for _, f := range fits {
		scale = min(scale, max(deviation(f.Residuals), floor))
	}
	refined := fits[:0]
	for _, f := range fits {
		if again, ok := f.form.fitFrom(points, [][]float64{f.Params}, scale, 1e-6); ok {
			again.scale = scale
			refined = append(refined, again)
		}
	}
	return refined
}

// fitFrom is the best robust fit of the shape from the given starts.
func (fm form) fitFrom(points []plane.Position, starts [][]float64, scale, tolerance float64) (shapeFit, bool) {
	best := shapeFit{form: fm}
	found := false
	opt := leastsquares.Options{Bound: fm.bound, Scale: scale, Steps: 25, Tolerance: tolerance}
	for _, s := range starts {
		r, err := leastsquares.Fit(fm.residuals(points), len(points), s, opt)
		if err != nil || (found && r.Loss >= best.Loss) {
			continue
		}
		best.Result, found = r, true
	}
	return best, found
}

// deviation is a robust standard deviation: 1.4826 times the median absolute
// residual.
func deviation(residuals []float64) float64 {
	abs := make([]float64, len(residuals))
	for i, r := range residuals {
		abs[i] = math.Abs(r)
	}
	return 1.4826 * median(abs)
}
