package proof

import (
	"fmt"
	"io"
	"math"
)

func (f Figure) printBare(w io.Writer, name string) {
	var size, u95 []float64
	inside := 0
	for _, e := range f.Errors {
		size, u95 = append(size, math.Abs(e.Miss)), append(u95, e.U95)
		if e.Inside {
			inside++
		}
	}
	fmt.Fprintf(w, "%-12s %5d %9.4f %9.4f %9.4f %8.1f%%\n", name, len(size), quantile(size, 0.5), quantile(size, 0.9), quantile(u95, 0.5), 100*share(inside, len(size)))
}

// WriteTo prints the report.
func (r PairsReport) WriteTo(w io.Writer) (int64, error) {
	c := &counter{w: w}
	fmt.Fprintf(c, "%d pairs of hands, clicks with %g px noise, seeds from %d; differences are operated minus other\n\n", r.Plan.Pairs, float64(r.Plan.ClickSD), r.Plan.Seed)
	fmt.Fprintf(c, "%-12s %5s %9s %9s %9s %9s\n", "difference", "n", "median", "90th pct", "med. U95", "inside")
	for _, name := range []string{"index", "depth", "span", "crown angle"} {
		if f := r.Figures[name]; f != nil {
			f.printBare(c, name)
		}
	}
	if f := r.Figures["index"]; f != nil {
		fmt.Fprintf(c, "\nindex difference within 0.02: %.1f per cent (target 90)\n", 100*f.Within(0.02))
	}
	for _, name := range []string{"depth", "span"} {
		fmt.Fprintf(c, "%s changed by 3 to 5 mm on an adult hand: certain and right in %d of %d\n", name, r.Right[name], r.Changed[name])
	}
	fmt.Fprintf(c, "unchanged: no certain verdict in %d of %d pairs (target 95 per cent); no reminder of size in %d (target 95)\n", r.Equal-r.False, r.Equal, r.Equal-r.Sized)
	if len(r.RMS) > 0 {
		fmt.Fprintf(c, "residual of the registration: median %.2f mm, 90th percentile %.2f mm\n", quantile(r.RMS, 0.5), quantile(r.RMS, 0.9))
	}
	for _, m := range r.Missed {
		fmt.Fprintln(c, " ", m)
	}
	return c.n, c.err
}
