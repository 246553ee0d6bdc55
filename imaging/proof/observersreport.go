package proof

import (
	"fmt"
	"io"
	"math"

	"gonum.org/v1/gonum/stat"

	"ogive/geometry/agreement"
)

// enough is the coefficient that the project set itself for the dorsal index.
const enough = 0.95

// WriteTo prints the report.
func (r ObserversReport) WriteTo(w io.Writer) (int64, error) {
	c := &counter{w: w}
	fmt.Fprintf(c, "Two observers with %g px clicks on both hands of %d adult phantoms, second to fourth web, from the back, on photographs 1200 to 2400 px wide; seeds from %d\n", float64(r.Plan.ClickSD), r.Plan.Adults, r.Plan.Seed)
	for _, name := range figuresRead {
		if err := r.Figures[name].print(c, name); err != nil {
			return c.n, err
		}
	}
	for _, u := range r.Unread {
		fmt.Fprintln(c, " ", u)
	}
	fmt.Fprint(c, notModelled)
	return c.n, c.err
}

const notModelled = `
Tonkin MA et al. (J Hand Surg Am 2015;40:456-61: 30 adults, both hands, second to
fourth web) report coefficients above 0.80 for measuring by hand. The figures above
can't be set against theirs as they stand. Not modelled: that joints are hard to find
on skin, so that people miss them by more than 2 px and each in his own way; that each
observer photographs or poses the hand anew; that observers differ in where they take
a joint to be. How far healthy webs differ from person to person is assumed, and a
coefficient hangs on it as much as on the error: the technical error does not. Webs on
one photograph share the error of its scale and of the joints between them, so that
the intervals, above all those of millimetres, are somewhat too narrow.
`

func (p Paired) print(w io.Writer, name string) error {
	a, err := p.Agreement()
	if err != nil {
		return fmt.Errorf("%s: %w", name, err)
	}
	unit := " mm"
	if name == "index" {
		unit = ""
	}
	fmt.Fprintf(w, "\n%s of %d webs, mean %.4g%s, true standard deviation between webs %.4g%s\n", name, a.Targets, a.Mean, unit, stat.StdDev(p.True, nil), unit)
	fmt.Fprintf(w, "  ICC(2,1)         %s\n", with(a.Absolute, 3))
	fmt.Fprintf(w, "  ICC(3,1)         %s\n", with(a.Consistency, 3))
	pair := a.Pairs[0]
	fmt.Fprintf(w, "  bias             %s%s\n", with(pair.Bias, 4), unit)
	fmt.Fprintf(w, "  limits           %s to %s%s\n", with(pair.Lower, 4), with(pair.Upper, 4), unit)
	fmt.Fprintf(w, "  technical error  %.4f%s, %.2f per cent\n", a.Error, unit, a.Variation)
	fmt.Fprintf(w, "  against the truth: root mean square %.4f%s\n", p.miss(), unit)
	fmt.Fprintf(w, "  with this error the coefficient exceeds %.2f wherever webs truly differ by a standard deviation of %.4g%s or more\n",
		enough, a.Error*math.Sqrt(enough/(1-enough)), unit)
	return nil
}

// miss is the root mean square of what both are off by.
func (p Paired) miss() float64 {
	sum, n := 0.0, 0
	for i, row := range p.Rows {
		for _, v := range row {
			sum += (v - p.True[i]) * (v - p.True[i])
			n++
		}
	}
	return math.Sqrt(sum / float64(n))
}

func with(i agreement.Interval, places int) string {
	return fmt.Sprintf("%.*f (%.*f to %.*f)", places, i.Value, places, i.Low, places, i.High)
}
