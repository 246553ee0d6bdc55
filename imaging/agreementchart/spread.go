package agreementchart

import (
	"math"

	"gonum.org/v1/gonum/stat/distuv"

	"ogive/geometry/agreement"
)

// Error is the technical error of measurement with its interval.
func (c Chart) Error() agreement.Interval { return Error(c.agreement) }

// Variation is the technical error in per cent of the mean.
func (c Chart) Variation() agreement.Interval { return Variation(c.agreement) }

// Error is the technical error of measurement with its interval. With n targets
// read by k observers, n(k-1) times its square over the true square is chi-squared
// of n(k-1) degrees of freedom where they differ by chance alone. A bias between
// them belongs to the error too; the interval then takes it for chance.
func Error(a agreement.Agreement) agreement.Interval {
	value, free := a.Error, float64(a.Targets*(a.Squares.Observers-1))
	chi := distuv.ChiSquared{K: free}
	return agreement.Interval{Value: value, Low: value * math.Sqrt(free/chi.Quantile(0.975)), High: value * math.Sqrt(free/chi.Quantile(0.025))}
}

// Variation is the technical error in per cent of the mean, whose own interval is
// left out of account; not a number where the mean is 0.
func Variation(a agreement.Agreement) agreement.Interval {
	e, mean := Error(a), math.Abs(a.Mean)
	if mean == 0 {
		return agreement.Interval{Value: math.NaN(), Low: math.NaN(), High: math.NaN()}
	}
	return agreement.Interval{Value: 100 * e.Value / mean, Low: 100 * e.Low / mean, High: 100 * e.High / mean}
}
