package scoring

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/stat/distuv"
)

// Lean is on which side of nothing values lie, and their median. It supposes
// nothing of how they are distributed, so that one wild value can't hide what all
// the others say, as it does in a mean.
type Lean struct {
	Below, Above, Of int
	// Chance is how probable it is that so many or more lie on one side if both
	// sides are equally likely: the exact sign test, two-sided, of the values that
	// are not nothing (Dixon WJ, Mood AM. J Am Stat Assoc 1946;41:557-66, from
	// memory). 1 where there are none.
	Chance float64
	// Median is the middle of all values with the interval between two of them
	// that holds the true median at 95 per cent at least; NaN below six values,
	// where no two reach that.
	Median Bias
}

// LeanOf tells on which side values lie; what is smaller than least is nothing.
func LeanOf(values []float64, least float64) Lean {
	l := Lean{Of: len(values), Median: medianOf(values)}
	for _, v := range values {
		switch {
		case v <= -least:
			l.Below++
		case v >= least:
			l.Above++
		}
	}
	l.Chance = SignTest(l.Below, l.Above)
	return l
}

// SignTest is the two-sided exact probability of so uneven a split or one more
// uneven, if both sides are equally likely.
func SignTest(below, above int) float64 {
	n := below + above
	if n == 0 {
		return 1
	}
	return min(1, 2*distuv.Binomial{N: float64(n), P: 0.5}.CDF(float64(min(below, above))))
}

// Told reports whether one side is told at 95 per cent.
func (l Lean) Told() bool { return l.Chance < 0.05 }

// leaning is the chance up to which values lean to one side without its being
// told: three of three, five of six, six of eight do. This project's own.
const leaning = 0.3

// Leans reports whether values lean to one side, told or not.
func (l Lean) Leans() bool { return l.Chance <= leaning }

// Negative reports whether more values lie below nothing than above.
func (l Lean) Negative() bool { return l.Below > l.Above }

// medianOf is the median with its interval between two order statistics, which
// follows from the binomial distribution.
func medianOf(values []float64) Bias {
	b := Bias{Value: Median(values), Low: math.NaN(), High: math.NaN(), N: len(values)}
	if b.N == 0 {
		return b
	}
	coin := distuv.Binomial{N: float64(b.N), P: 0.5}
	outside := 0 // values left out at either end
	for outside < b.N/2 && coin.CDF(float64(outside)) <= 0.025 {
		outside++
	}
	if outside > 0 {
		sorted := slices.Sorted(slices.Values(values))
		b.Low, b.High = sorted[outside-1], sorted[b.N-outside]
	}
	return b
}
