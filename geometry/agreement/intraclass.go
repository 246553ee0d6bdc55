package agreement

import (
	"math"

	"gonum.org/v1/gonum/stat/distuv"
)

// MeanSquares are those of the two-way analysis of variance without repetition,
// named as by Shrout PE, Fleiss JL. Psychol Bull 1979;86:420-8.
type MeanSquares struct {
	Targets, Observers int
	Between            float64 // BMS, between targets
	Within             float64 // WMS, within targets
	Judges             float64 // JMS, between observers
	Residual           float64 // EMS
}

// MeanSquares of the table.
func (t Table) MeanSquares() MeanSquares {
	n, k := len(t.rows), len(t.Observers)
	grand := t.mean()
	var between, within, judges float64
	columns := make([]float64, k)
	for _, row := range t.rows {
		var mean float64
		for j, x := range row {
			mean += x / float64(k)
			columns[j] += x / float64(n)
		}
		between += float64(k) * (mean - grand) * (mean - grand)
		for _, x := range row {
			within += (x - mean) * (x - mean)
		}
	}
	for _, mean := range columns {
		judges += float64(n) * (mean - grand) * (mean - grand)
	}
	rest := max(within-judges, 0)
	return MeanSquares{
		Targets: n, Observers: k,
		Between:  between / float64(n-1),
		Within:   within / float64(n*(k-1)),
		Judges:   judges / float64(k-1),
		Residual: rest / float64((n-1)*(k-1)),
	}
}

const tail = 0.975 // both tails hold 5 per cent together

// Absolute is ICC(2,1), observers drawn at random, with the interval of Shrout
// and Fleiss (their equations 14 to 17).
func (m MeanSquares) Absolute() Interval {
	n, k := float64(m.Targets), float64(m.Observers)
	value := ratio(m.Between-m.Residual, m.Between+(k-1)*m.Residual+k*(m.Judges-m.Residual)/n)
	if m.Residual == 0 {
		return Interval{value, math.NaN(), math.NaN()}
	}
	fj := m.Judges / m.Residual
	up := n*(1+(k-1)*value) - k*value
	freedom := (n - 1) * (k - 1) * math.Pow(k*value*fj+up, 2) / ((n-1)*k*k*value*value*fj*fj + up*up)
	above, below := quantile(n-1, freedom), quantile(freedom, n-1)
	judged := k*m.Judges + (k*n-k-n)*m.Residual
	return Interval{value,
		ratio(n*(m.Between-above*m.Residual), above*judged+n*m.Between),
		ratio(n*(below*m.Between-m.Residual), judged+n*below*m.Between)}
}

// Consistency is ICC(3,1), these very observers, with the interval of Shrout and
// Fleiss (their equations 18 and 19).
func (m MeanSquares) Consistency() Interval {
	n, k := float64(m.Targets), float64(m.Observers)
	value := ratio(m.Between-m.Residual, m.Between+(k-1)*m.Residual)
	if m.Residual == 0 {
		return Interval{value, math.NaN(), math.NaN()}
	}
	f := m.Between / m.Residual
	low, high := f/quantile(n-1, (n-1)*(k-1)), f*quantile((n-1)*(k-1), n-1)
	return Interval{value, (low - 1) / (low + k - 1), (high - 1) / (high + k - 1)}
}

func quantile(d1, d2 float64) float64 { return distuv.F{D1: d1, D2: d2}.Quantile(tail) }

func ratio(a, b float64) float64 {
	if b == 0 {
		return math.NaN()
	}
	return a / b
}
