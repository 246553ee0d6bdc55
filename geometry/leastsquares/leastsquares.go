// Package leastsquares fits the parameters of a model to data by the method of
// Levenberg and Marquardt, plainly or robustly.
//
//	fit, err := leastsquares.Fit(residuals, len(data), start, leastsquares.Options{})
//	fit.Params, fit.Covariance()
//
// The residual function fills one residual per datum and, where asked, one row
// of derivatives per datum. Robust fitting reweights every residual by its size
// relative to a scale (iteratively reweighted least squares), so that a stray
// datum does not move the fit.
//
// Sources: Marquardt DW. J Soc Ind Appl Math 1963;11:431-41; the damping is
// scaled by the diagonal as there, and raised and lowered tenfold.
package leastsquares

import (
	"errors"
	"math"

	"gonum.org/v1/gonum/mat"
)

// Residuals fills r with the residuals at params and, if jac is not nil, its
// rows (len(params) numbers each, one row per residual) with their derivatives.
type Residuals func(params, r, jac []float64)

// Options guide a fit; the zero value is a plain, unbounded fit.
type Options struct {
	// Bound, if set, brings params back into the region where they have a
	// meaning, after every step.
	Bound func(params []float64)
	// Scale, if positive, makes the fit robust: residuals far beyond it lose
	// their weight (Tukey's biweight, which is zero beyond 4.685 scales).
	Scale float64
	// Steps caps the number of steps; 0 stands for 100.
	Steps int
	// Tolerance is the relative fall of the sum of squares, and the relative
	// step, below which the fit has settled; 0 stands for 1e-14.
	Tolerance float64
}

// Result is a fit that has settled.
type Result struct {
	Params    []float64
	Residuals []float64
	// Loss is the weighted sum of squares, or the sum of the robust losses.
	Loss   float64
	normal *mat.SymDense
}

// ErrDegenerate says that the data do not determine the parameters.
var ErrDegenerate = errors.New("the points do not determine the curve; place more of them, further apart")

// Fit finds the params near start for which n residuals are least.
func Fit(f Residuals, n int, start []float64, opt Options) (Result, error) {
	k := len(start)
	if n < k {
		return Result{}, ErrDegenerate
	}
	s := newSearch(f, n, start, opt)
	steps := opt.Steps
	if steps == 0 {
		steps = 100
	}
	for i := 0; i < steps; i++ {
		settled, err := s.step()
		if err != nil {
			return Result{}, err
		}
		if settled {
			break
		}
	}
	s.linearise()
	return Result{Params: s.params, Residuals: s.r, Loss: s.loss, normal: mat.NewSymDense(k, append([]float64(nil), s.jtj.RawSymmetric().Data...))}, nil
}

// Covariance is the inverse of the normal matrix: times the variance of a
// residual it is the covariance of the parameters.
func (r Result) Covariance() (*mat.SymDense, error) {
	var chol mat.Cholesky
	if !chol.Factorize(r.normal) {
		return nil, ErrDegenerate
	}
	var inv mat.SymDense
	if err := chol.InverseTo(&inv); err != nil {
		return nil, ErrDegenerate
	}
	return &inv, nil
}

// search is the state of a fit between two steps.
type search struct {
	f      Residuals
	opt    Options
	n, k   int
	params []float64
	r, jac []float64
	trial  []float64
	rTrial []float64
	jtj    *mat.SymDense
	jtr    *mat.VecDense
	damped *mat.SymDense
	delta  *mat.VecDense
	chol   mat.Cholesky
	loss   float64
	lambda float64
	fresh  bool // jtj and jtr belong to params
}

func newSearch(f Residuals, n int, start []float64, opt Options) *search {
	k := len(start)
	s := &search{
		f: f, opt: opt, n: n, k: k,
		params: append([]float64(nil), start...),
		r:      make([]float64, n), jac: make([]float64, n*k),
		trial: make([]float64, k), rTrial: make([]float64, n),
		jtj: mat.NewSymDense(k, nil), jtr: mat.NewVecDense(k, nil),
		damped: mat.NewSymDense(k, nil), delta: mat.NewVecDense(k, nil),
		lambda: 1e-3,
	}
	if opt.Tolerance == 0 {
		s.opt.Tolerance = 1e-14
	}
	s.bound(s.params)
	f(s.params, s.r, nil)
	s.loss = s.lossOf(s.r)
	return s
}

func (s *search) bound(p []float64) {
	if s.opt.Bound != nil {
		s.opt.Bound(p)
	}
}

// step tries ever more cautious steps until one lowers the loss.
func (s *search) step() (settled bool, err error) {
	if !s.fresh {
		s.linearise()
	}
	for s.lambda < 1e12 {
		if !s.propose() {
			s.lambda *= 10
			continue
		}
		s.f(s.trial, s.rTrial, nil)
		loss := s.lossOf(s.rTrial)
		if math.IsNaN(loss) || loss > s.loss {
			s.lambda *= 10
			continue
		}
		settled = s.loss-loss <= s.opt.Tolerance*s.loss || s.small()
		s.params, s.trial = s.trial, s.params
		s.r, s.rTrial = s.rTrial, s.r
		s.loss = loss
		s.lambda = math.Max(s.lambda/10, 1e-12)
		s.fresh = false
		return settled, nil
	}
	if math.IsNaN(s.loss) || math.IsInf(s.loss, 0) {
		return false, ErrDegenerate
	}
	return true, nil
}

// propose solves the damped normal equations for the trial parameters.
func (s *search) propose() bool {
	s.damped.CopySym(s.jtj)
	for i := 0; i < s.k; i++ {
		d := s.jtj.At(i, i)
		s.damped.SetSym(i, i, d+s.lambda*d+1e-300)
	}
	if !s.chol.Factorize(s.damped) || s.chol.SolveVecTo(s.delta, s.jtr) != nil {
		return false
	}
	for i := range s.trial {
		s.trial[i] = s.params[i] - s.delta.AtVec(i)
	}
	s.bound(s.trial)
	return true
}

// small reports whether the trial hardly differs from the parameters.
func (s *search) small() bool {
	for i, p := range s.params {
		if math.Abs(s.trial[i]-p) > s.opt.Tolerance*(math.Abs(p)+s.opt.Tolerance) {
			return false
		}
	}
	return true
}

// linearise fills the normal equations at params.
func (s *search) linearise() {
	s.f(s.params, s.r, s.jac)
	normal := s.jtj.RawSymmetric()
	clear(normal.Data)
	right := s.jtr.RawVector().Data
	clear(right)
	for i := 0; i < s.n; i++ {
		w := s.weight(s.r[i])
		if w == 0 {
			continue
		}
		row := s.jac[i*s.k : (i+1)*s.k]
		for a, ja := range row {
			wa := w * ja
			right[a] += wa * s.r[i]
			out := normal.Data[a*normal.Stride:]
			for b := a; b < s.k; b++ {
				out[b] += wa * row[b]
			}
		}
	}
	s.fresh = true
}

// biweight is the tuning constant of Tukey's biweight for 95 per cent
// efficiency on normal errors (Beaton AE, Tukey JW. Technometrics 1974;16:147-85;
// constant from memory).
const biweight = 4.685

func (s *search) weight(r float64) float64 {
	if s.opt.Scale <= 0 {
		return 1
	}
	u := r / (biweight * s.opt.Scale)
	if u < -1 || u > 1 {
		return 0
	}
	v := 1 - u*u
	return v * v
}

func (s *search) lossOf(r []float64) float64 {
	sum := 0.0
	for _, x := range r {
		sum += Loss(x, s.opt.Scale)
	}
	return sum
}

// Loss is what a residual r costs in a fit with the given scale: r squared in a
// plain fit (scale 0); with Tukey's biweight it behaves so for small r and
// levels off at biweight squared times scale squared over 3.
func Loss(r, scale float64) float64 {
	if scale <= 0 {
		return r * r
	}
	c := biweight * scale
	u := r / c
	if u < -1 || u > 1 {
		return c * c / 3
	}
	v := 1 - u*u
	return c * c / 3 * (1 - v*v*v)
}
