package agreement

import (
	"math"

	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"
)

// Reach is how many standard deviations of the differences the limits of
// agreement lie from the bias: 95 per cent of a normal distribution. The paper
// of 1986 rounds it to 2.
const Reach = 1.96

// Pair is two observers held against each other, as by Bland JM, Altman DG.
// Lancet 1986;i:307-10. Differences are the first's value less the second's.
type Pair struct {
	First, Second string
	Deviation     float64  // standard deviation of the differences
	Bias          Interval // their mean
	Lower, Upper  Interval // the limits of agreement
	// Means and Differences are those of each target, for drawing.
	Means, Differences []float64
}

func (t Table) pair(i, j int) Pair {
	p := Pair{First: t.Observers[i], Second: t.Observers[j]}
	for _, row := range t.rows {
		p.Means = append(p.Means, (row[i]+row[j])/2)
		p.Differences = append(p.Differences, row[i]-row[j])
	}
	mean, sd := stat.MeanStdDev(p.Differences, nil)
	p.Deviation = sd
	p.Bias = about(mean, sd*sd, len(t.rows))
	// The variance of a limit is about three times that of the mean.
	p.Lower = about(mean-Reach*sd, 3*sd*sd, len(t.rows))
	p.Upper = about(mean+Reach*sd, 3*sd*sd, len(t.rows))
	return p
}

// about is a value from n differences with its interval by Student's t, variance
// being n times that of the value.
func about(value, variance float64, n int) Interval {
	t := distuv.StudentsT{Mu: 0, Sigma: 1, Nu: float64(n - 1)}.Quantile(tail)
	reach := t * math.Sqrt(variance/float64(n))
	return Interval{value, value - reach, value + reach}
}
