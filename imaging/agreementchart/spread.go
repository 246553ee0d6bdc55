package agreementchart

import (
	"math"

	"gonum.org/v1/gonum/stat/distuv"

	"ogive/geometry/agreement"
)

// Error is the technical error of measurement with its interval. With n targets
// read twice, n times its square over the true square is chi-squared of n degrees
// of freedom where the two differ by chance alone. A bias between them belongs to
// the error too; the interval then takes it for chance.
func (c Chart) Error() agreement.Interval {
	value, n := c.agreement.Error, float64(c.agreement.Targets)
	chi := distuv.ChiSquared{K: n}
	return agreement.Interval{Value: value, Low: value * math.Sqrt(n/chi.Quantile(0.975)), High: value * math.Sqrt(n/chi.Quantile(0.025))}
}

// Variation is the technical error in per cent of the mean, whose own interval is
// left out of account; not a number where the mean is 0.
func (c Chart) Variation() agreement.Interval {
	e, mean := c.Error(), math.Abs(c.agreement.Mean)
	if mean == 0 {
		return agreement.Interval{Value: math.NaN(), Low: math.NaN(), High: math.NaN()}
	}
	return agreement.Interval{Value: 100 * e.Value / mean, Low: 100 * e.Low / mean, High: 100 * e.High / mean}
}
