package agreement

import (
	"encoding/csv"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"testing"
)

// reference is a table of testdata/reference: a target, then a value an observer.
func reference(t *testing.T, name string) Table {
	t.Helper()
	f, err := os.Open(filepath.Join("..", "..", "testdata", "reference", name))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	lines, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var rows [][]float64
	for _, line := range lines[1:] {
		var row []float64
		for _, cell := range line[1:] {
			x, err := strconv.ParseFloat(cell, 64)
			if err != nil {
				t.Fatal(err)
			}
			row = append(row, x)
		}
		rows = append(rows, row)
	}
	table, err := NewTable(lines[0][1:], rows)
	if err != nil {
		t.Fatal(err)
	}
	return table
}

func near(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s is %.6g, published %.6g", what, got, want)
	}
}

// Source: Shrout PE, Fleiss JL. Psychol Bull 1979;86:420-8, tables 2 to 4.
func TestShroutAndFleiss(t *testing.T) {
	a := reference(t, "shrout_fleiss1979_table2.csv").Agreement()
	near(t, "BMS", a.Squares.Between, 11.24, 0.005)
	near(t, "WMS", a.Squares.Within, 6.26, 0.005)
	near(t, "JMS", a.Squares.Judges, 32.49, 0.005)
	near(t, "EMS", a.Squares.Residual, 1.02, 0.005)
	near(t, "ICC(2,1)", a.Absolute.Value, 0.29, 0.005)
	near(t, "ICC(3,1)", a.Consistency.Value, 0.71, 0.005)
}

// Source: the function ICC of the R package psych 2.2.9 (Debian's r-cran-psych,
// R 4.2.2) on the same two tables, run for this project; an implementation that
// shares nothing with this one.
func TestIntervalsOfIntraclassCorrelationAreThoseOfAnotherProgram(t *testing.T) {
	for name, want := range map[string][2]Interval{
		"shrout_fleiss1979_table2.csv": {{0.2897637795, 0.01878651337, 0.7610843696}, {0.7148407148, 0.34246476503, 0.9458582600}},
		"bland_altman1986_pefr.csv":    {{0.9459284056, 0.8574111712, 0.9800786591}, {0.9429130724, 0.8499083917, 0.9789431344}},
	} {
		a := reference(t, name).Agreement()
		for i, got := range []Interval{a.Absolute, a.Consistency} {
			near(t, name+": value", got.Value, want[i].Value, 1e-8)
			near(t, name+": low", got.Low, want[i].Low, 1e-6)
			near(t, name+": high", got.High, want[i].High, 1e-6)
		}
	}
}

// Source: Bland JM, Altman DG. Lancet 1986;i:307-10: Wright less mini meter.
// The paper takes two standard deviations. Its intervals (bias -22.0 to 17.8,
// lower limit -114.3 to -45.1, upper limit 40.9 to 110.1) are from memory.
func TestBlandAndAltman(t *testing.T) {
	p := reference(t, "bland_altman1986_pefr.csv").Agreement().Pairs[0]
	bias, sd := p.Bias.Value, p.Deviation
	near(t, "mean difference", bias, -2.1, 0.05)
	near(t, "standard deviation", sd, 38.8, 0.05)
	// The paper computes its limits from the rounded mean and deviation.
	near(t, "lower limit at two deviations", bias-2*sd, -79.7, 0.1)
	near(t, "upper limit at two deviations", bias+2*sd, 75.5, 0.1)
	near(t, "bias, low", p.Bias.Low, -22.0, 0.15)
	near(t, "bias, high", p.Bias.High, 17.8, 0.15)
	near(t, "half width of a limit's interval", (p.Upper.High-p.Upper.Low)/2, (110.1-40.9)/2, 0.15)
	if p.Upper.Value != p.Bias.Value+1.96*sd {
		t.Errorf("the program's own limits lie %.3f deviations from the bias, not 1.96", (p.Upper.Value-p.Bias.Value)/sd)
	}
}

func TestTechnicalErrorOfTwoObserversIsDahlbergs(t *testing.T) {
	table := reference(t, "bland_altman1986_pefr.csv")
	var sum float64
	for _, d := range table.pair(0, 1).Differences {
		sum += d * d
	}
	a := table.Agreement()
	near(t, "technical error", a.Error, math.Sqrt(sum/float64(2*table.Targets())), 1e-9)
	near(t, "coefficient of variation", a.Variation, 100*a.Error/a.Mean, 1e-9)
}

func TestObserversWhoAlwaysAgreeHaveNoErrorAndFullCorrelation(t *testing.T) {
	table, err := NewTable([]string{"a", "b"}, [][]float64{{1, 1}, {2, 2}, {4, 4}})
	if err != nil {
		t.Fatal(err)
	}
	a := table.Agreement()
	if a.Absolute.Value != 1 || a.Consistency.Value != 1 || a.Error != 0 || a.Pairs[0].Deviation != 0 {
		t.Errorf("%+v", a)
	}
	if !math.IsNaN(a.Absolute.Low) {
		t.Error("an interval is given where the table can't tell one")
	}
}

func TestEveryTwoObserversAreCompared(t *testing.T) {
	a := reference(t, "shrout_fleiss1979_table2.csv").Agreement()
	if len(a.Pairs) != 6 {
		t.Errorf("4 observers make %d pairs", len(a.Pairs))
	}
}

func TestATableThatCannotTellIsRefused(t *testing.T) {
	two := []string{"a", "b"}
	for what, c := range map[string]struct {
		observers []string
		rows      [][]float64
	}{
		"one observer":   {[]string{"a"}, [][]float64{{1}, {2}}},
		"one target":     {two, [][]float64{{1, 2}}},
		"missing value":  {two, [][]float64{{1, 2}, {1}}},
		"not a number":   {two, [][]float64{{1, 2}, {1, math.NaN()}}},
		"without bounds": {two, [][]float64{{1, 2}, {1, math.Inf(1)}}},
	} {
		if _, err := NewTable(c.observers, c.rows); err == nil {
			t.Errorf("%s: no refusal", what)
		}
	}
}
