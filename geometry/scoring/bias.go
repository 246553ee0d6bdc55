// Package scoring tells how far a learner misses the truth: which way on
// average, how widely, and what is mistaken for what.
//
//	off := scoring.Miss(truth, placed, frame.Axis(), frame.Across())
//	bias := scoring.BiasOf(distal)      // mean with its interval at 95 per cent
//	if bias.Told() { ... }              // the interval leaves zero out
//	sd := scoring.RobustSD(residuals)   // one wild click does not move it
//
// Values are plain numbers, since a bias in millimetres is reckoned in the same
// way as one of the index.
package scoring

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"
)

// Bias is a mean with the interval within which the true mean lies at 95 per
// cent. With fewer than two values the interval is not known (NaN).
type Bias struct {
	Value, Low, High float64
	N                int
}

// BiasOf is the mean of independent values with Student's interval.
func BiasOf(values []float64) Bias {
	b := Bias{Value: math.NaN(), Low: math.NaN(), High: math.NaN(), N: len(values)}
	if b.N == 0 {
		return b
	}
	b.Value = stat.Mean(values, nil)
	if b.N < 2 {
		return b
	}
	half := distuv.StudentsT{Sigma: 1, Nu: float64(b.N - 1)}.Quantile(0.975) *
		stat.StdDev(values, nil) / math.Sqrt(float64(b.N))
	b.Low, b.High = b.Value-half, b.Value+half
	return b
}

// Told reports whether the interval leaves zero out: only then can it be told
// which way to correct.
func (b Bias) Told() bool { return b.Low > 0 || b.High < 0 }

// RootMeanSquare is the technical error against an exact truth: the square root
// of the mean square of the misses. Against another observer the same squares
// would be halved, because both err; a truth does not. NaN for none.
func RootMeanSquare(misses []float64) float64 {
	sum := 0.0
	for _, m := range misses {
		sum += m * m
	}
	return math.Sqrt(sum / float64(len(misses)))
}

// Median is the middle value, NaN for none.
func Median(values []float64) float64 {
	n := len(values)
	if n == 0 {
		return math.NaN()
	}
	sorted := slices.Sorted(slices.Values(values))
	return (sorted[(n-1)/2] + sorted[n/2]) / 2
}

// normalMAD is the standard deviation of a normal distribution by its median
// absolute deviation: 1 / 0.6745, the upper quartile of the standard normal.
var normalMAD = 1 / distuv.UnitNormal.Quantile(0.75)

// RobustSD is the standard deviation that residuals about zero show when the
// wild ones among them are given no weight: 1.4826 times the median of their
// sizes. NaN for none.
func RobustSD(residuals []float64) float64 {
	sizes := make([]float64, len(residuals))
	for i, r := range residuals {
		sizes[i] = math.Abs(r)
	}
	return normalMAD * Median(sizes)
}

// SD is the standard deviation of a sample, NaN of fewer than two.
func SD(values []float64) float64 {
	if len(values) < 2 {
		return math.NaN()
	}
	return stat.StdDev(values, nil)
}
