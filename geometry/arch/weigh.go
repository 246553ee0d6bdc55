package arch

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"

	"ogive/geometry/leastsquares"
	"ogive/geometry/plane"
)

// weigh turns fits into candidates: BIC with the number of independent points,
// weights exp(-BIC/2) (Schwarz G. Ann Stat 1978;6:461-4).
func weigh(fits []shapeFit, points []plane.Position, floor float64) Fitted {
	fullest := slices.MinFunc(fits, func(a, b shapeFit) int { return cmp.Compare(a.Loss, b.Loss) })
	independent := independentPoints(fullest.Residuals, fullest.scale)
	var out Fitted
	for _, f := range fits {
		c := Candidate{
			Arch: f.form.arch(f.Params),
			RMS:  plane.Millimetre(math.Max(robustRMS(f.Residuals, f.scale), floor/10)),
			bic:  f.Loss/(f.scale*f.scale)*independent/float64(len(points)) + float64(f.form.size())*math.Log(independent),
		}
		c.spread = spread(f, float64(len(points))/independent)
		out.Candidates = append(out.Candidates, c)
	}
	slices.SortStableFunc(out.Candidates, func(a, b Candidate) int { return cmp.Compare(a.bic, b.bic) })
	least := out.Candidates[0].bic
	total := 0.0
	for i := range out.Candidates {
		c := &out.Candidates[i]
		c.Weight = math.Exp(-(c.bic - least) / 2)
		total += c.Weight
	}
	for i := range out.Candidates {
		out.Candidates[i].Weight /= total
	}
	out.Sure = len(out.Candidates) == 1 || out.Candidates[1].bic-least >= sureBIC
	return out
}

// independentPoints is how many of the residuals count as independent, from
// their autocorrelation up to its first negative value. Stray residuals are
// clipped first.
func independentPoints(residuals []float64, scale float64) float64 {
	n := len(residuals)
	r := make([]float64, n)
	mean := 0.0
	for i, x := range residuals {
		r[i] = clamp(x, -3*scale, 3*scale)
		mean += r[i] / float64(n)
	}
	variance := 0.0
	for _, x := range r {
		variance += (x - mean) * (x - mean)
	}
	if variance == 0 {
		return float64(n)
	}
	sum := 1.0
	for lag := 1; lag < n/3; lag++ {
		c := 0.0
		for i := lag; i < n; i++ {
			c += (r[i] - mean) * (r[i-lag] - mean)
		}
		rho := c / variance
		if rho <= 0 {
			break
		}
		sum += 2 * rho
	}
	return math.Max(float64(n)/sum, minimumPoints)
}

// robustRMS is the root mean square of the residuals with stray ones levelled
// off as in the fit.
func robustRMS(residuals []float64, scale float64) float64 {
	sum := 0.0
	for _, r := range residuals {
		sum += leastsquares.Loss(r, scale)
	}
	return math.Sqrt(sum / float64(len(residuals)))
}

// spread is the lower Cholesky factor of the parameters' covariance: the
// inverse normal matrix times the variance of a residual, larger by the
// redundancy of neighbouring points. It is nil where the border does not
// determine the shape.
func spread(f shapeFit, redundancy float64) *mat.TriDense {
	cov, err := f.Covariance()
	if err != nil {
		return nil
	}
	variance := math.Max(f.scale*f.scale, f.Loss/float64(len(f.Residuals)))
	cov.ScaleSym(variance*redundancy, cov)
	var chol mat.Cholesky
	if !chol.Factorize(cov) {
		return nil
	}
	var l mat.TriDense
	chol.LTo(&l)
	return &l
}

// Drawn is an arch as likely as c.Arch, given independent standard normal
// numbers z (6 of them are enough for every shape).
func (c Candidate) Drawn(z []float64) Arch {
	fm := form{c.Arch.Shape}
	p := fm.numbers(c.Arch)
	if c.spread == nil {
		return c.Arch
	}
	for i := range p {
		for j := 0; j <= i; j++ {
			p[i] += c.spread.At(i, j) * z[j]
		}
	}
	fm.bound(p)
	return fm.arch(p)
}

// Drawn is an arch as likely as the best one: of the shape at share (0 to 1) of
// the weights, most probable first, drawn with the numbers z.
func (f Fitted) Drawn(share float64, z []float64) Arch {
	for _, c := range f.Candidates {
		if share < c.Weight {
			return c.Drawn(z)
		}
		share -= c.Weight
	}
	return f.Best().Drawn(z)
}
