// Package agreement tells how far observers agree who measured the same targets,
// or one observer who measured them twice.
//
//	table, err := agreement.NewTable(observers, rows) // one row a target
//	a := table.Agreement()
//	a.Absolute       // ICC(2,1) with its interval at 95 per cent
//	a.Pairs[0].Bias  // first less second observer, with the limits of agreement
//	a.Error          // technical error of measurement, in the unit of the figure
//
// Every target must be measured by every observer: what is missing is left out
// by whoever builds the table, and said. Values are plain numbers, for an index
// agrees or not in the same way as a span.
package agreement

import (
	"fmt"
	"math"
)

// Table is one figure measured on the same targets by the same observers.
type Table struct {
	Observers []string
	rows      [][]float64 // a row a target, a column an observer
}

// NewTable is the table of rows, one a target with a value an observer. It needs
// two targets and two observers at least, and every value.
func NewTable(observers []string, rows [][]float64) (Table, error) {
	if len(observers) < 2 {
		return Table{}, fmt.Errorf("agreement needs two observers, or one who measured twice; there is %d", len(observers))
	}
	if len(rows) < 2 {
		return Table{}, fmt.Errorf("agreement needs two targets that all observers measured; there is %d", len(rows))
	}
	for i, row := range rows {
		if len(row) != len(observers) {
			return Table{}, fmt.Errorf("target %d has %d values for %d observers; give one each", i+1, len(row), len(observers))
		}
		for j, x := range row {
			if math.IsNaN(x) || math.IsInf(x, 0) {
				return Table{}, fmt.Errorf("target %d has no number for %s; leave the target out or measure it", i+1, observers[j])
			}
		}
	}
	return Table{Observers: observers, rows: rows}, nil
}

// Targets is how many targets there are.
func (t Table) Targets() int { return len(t.rows) }

// Value is what observer j found on target i.
func (t Table) Value(i, j int) float64 { return t.rows[i][j] }

// Interval is a figure with the bounds within which its true value lies at 95
// per cent. Bounds that the table can't tell are not numbers (NaN).
type Interval struct{ Value, Low, High float64 }

// Agreement is all that a table tells.
type Agreement struct {
	Targets int
	Mean    float64
	Squares MeanSquares
	// Absolute is ICC(2,1): how far single values agree in themselves.
	Absolute Interval
	// Consistency is ICC(3,1): how far they agree if each observer's own bias is
	// taken off.
	Consistency Interval
	// Pairs compares every two observers.
	Pairs []Pair
	// Error is the technical error of measurement: the standard deviation of
	// one observer's value about what all found on the same target.
	Error float64
	// Variation is the error in per cent of the mean; NaN where the mean is 0.
	Variation float64
}

// Agreement computes it.
func (t Table) Agreement() Agreement {
	a := Agreement{Targets: t.Targets(), Mean: t.mean(), Squares: t.MeanSquares(), Error: t.technicalError()}
	a.Absolute, a.Consistency = a.Squares.Absolute(), a.Squares.Consistency()
	a.Variation = math.NaN()
	if a.Mean != 0 {
		a.Variation = 100 * a.Error / math.Abs(a.Mean)
	}
	for j := range t.Observers {
		for i := range j {
			a.Pairs = append(a.Pairs, t.pair(i, j))
		}
	}
	return a
}

func (t Table) mean() float64 {
	var sum float64
	for _, row := range t.rows {
		for _, x := range row {
			sum += x
		}
	}
	return sum / float64(len(t.rows)*len(t.Observers))
}

// technicalError is the root of the mean square within targets; with two
// observers it is the root of the sum of squared differences over twice the
// number of targets (Dahlberg's formula; for more observers: Ulijaszek SJ, Kerr
// DA. Br J Nutr 1999;82:165-77, from memory).
func (t Table) technicalError() float64 {
	s := t.MeanSquares()
	return math.Sqrt(s.Within)
}
