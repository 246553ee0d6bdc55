package arch

import (
	"cmp"
	"errors"
	"math"
	"slices"

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
// the crown to the other, and weighs the shapes against each other. Pixel is the
// size of a pixel there: no picture shows a border more finely than a part of
// it, and where the two borders come within a few of them, in the corner of a V,
// blur has rounded the border and the trace says nothing of the arch.
//
// Distances are orthogonal; stray points lose their weight (Tukey's biweight).
// Neighbouring points of a trace err together, so that BIC and covariance count
// the independent ones only: n (1 + 2 sum of autocorrelations)^-1.
func Fit(border []plane.Position, pixel plane.Millimetre) (Fitted, error) {
	points := resample(border)
	if len(points) < minimumPoints {
		return Fitted{}, ErrBorder
	}
	start, err := firstGuess(points)
	if err != nil {
		return Fitted{}, err
	}
	floor := finest * float64(pixel)
	fits := fitAll(points, start, floor)
	if len(fits) == 0 {
		return Fitted{}, ErrBorder
	}
	gap := Unresolved * float64(pixel)
	clear := resolved(points, fits, gap)
	if len(clear) < minimumPoints {
		return Fitted{}, ErrBorder
	}
	fits = refine(clear, fits, floor)
	if len(fits) == 0 {
		return Fitted{}, ErrBorder
	}
	fits = distinct(touching(fits, deepest(points, start.axis), gap), gap)
	return weigh(fits, clear, floor), nil
}

// Unresolved is the opening in pixels below which a lens of ordinary sharpness
// does not show two borders apart (common practice, no source: two to three
// times the width of its blur).
const Unresolved = 4.0

// finest is the smallest deviation of a traced border, in pixels, that could be
// real.
const finest = 0.05

// shapeFit is one shape fitted, before the shapes are weighed.
type shapeFit struct {
	form form
	leastsquares.Result
	scale float64
}

// fitAll fits each shape from each of its starts, so wide that no part of the
// border is thrown out before the shape is known.
func fitAll(points []plane.Position, start guess, floor float64) []shapeFit {
	var fits []shapeFit
	for _, shape := range Shapes {
		fm := form{shape}
		if best, ok := fm.fitFrom(points, start.starts(shape), start.deviation(points, floor), 1e-3); ok {
			fits = append(fits, best)
		}
	}
	return fits
}

// resolved leaves out the points in the part of the opening that is narrower
// than gap, as seen from the axis of the closest fit.
func resolved(points []plane.Position, fits []shapeFit, gap float64) []plane.Position {
	closest := slices.MinFunc(fits, func(a, b shapeFit) int { return cmp.Compare(a.Loss, b.Loss) })
	c := newCurve(closest.form.arch(closest.Params))
	var out []plane.Position
	for _, p := range points {
		if x, _ := c.local(p); math.Abs(x) >= gap/2 {
			out = append(out, p)
		}
	}
	return out
}

// refine fits each shape again, robustly, with the deviation that the best of
// them leaves.
func refine(points []plane.Position, fits []shapeFit, floor float64) []shapeFit {
	scale := math.Inf(1)
	for _, f := range fits {
		f.form.residuals(points)(f.Params, f.Residuals[:len(points)], nil)
		scale = min(scale, max(deviation(f.Residuals[:len(points)]), floor))
	}
	var out []shapeFit
	for _, f := range fits {
		if again, ok := f.form.fitFrom(points, [][]float64{f.Params}, scale, 1e-6); ok {
			again.scale = scale
			out = append(out, again)
		}
	}
	return out
}

// touching leaves out arches that pass further from the deepest part of the
// trace than blur can have lifted it: a robust fit may take the floor of a
// narrow web for a stray stretch and run its borders on far past it.
func touching(fits []shapeFit, floor plane.Position, gap float64) []shapeFit {
	out := slices.DeleteFunc(slices.Clone(fits), func(f shapeFit) bool {
		return math.Abs(float64(f.form.arch(f.Params).Distance(floor))) > 0.6*gap
	})
	if len(out) == 0 {
		return fits
	}
	return out
}

// deepest is the middle of the most proximal part of the trace.
func deepest(points []plane.Position, axis plane.Vector[plane.Millimetre]) plane.Position {
	low, least := 1, math.Inf(1)
	for i := 1; i+1 < len(points); i++ {
		h := 0.0
		for _, p := range points[i-1 : i+2] {
			h += float64(p.Sub(points[0]).Dot(axis))
		}
		if h < least {
			low, least = i, h
		}
	}
	return centroid(points[low-1 : low+2])
}

// distinct leaves out arches that spring where the borders are not resolved:
// nothing tells them from a V.
func distinct(fits []shapeFit, gap float64) []shapeFit {
	out := slices.DeleteFunc(slices.Clone(fits), func(f shapeFit) bool {
		return f.form.shape != V && float64(f.form.arch(f.Params).Span()) < gap
	})
	if len(out) == 0 {
		return fits
	}
	return out
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
