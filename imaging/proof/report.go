package proof

import (
	"fmt"
	"io"
	"math"
	"slices"

	"ogive/geometry/arch"
	"ogive/geometry/plane"
	"ogive/geometry/reading"
	"ogive/geometry/scale"
	"ogive/imaging/phantom"
)

// Report is what a run found.
type Report struct {
	Plan     Plan
	Methods  map[scale.Method]int
	Figures  map[string]*Figure
	Untraced []string
	// Shapes counts the webs by their true shape and the shape found.
	Shapes map[arch.Shape]map[arch.Shape]int
	// Sure counts the shapes called sure, SureRight those of them that are right.
	Sure, SureRight int
	// Border is the median distance from each traced border to the true one, in
	// pixels, Offset its mean signed distance: positive towards the skin.
	Border, Offset []float64
}

// Figure collects the errors of one figure.
type Figure struct {
	Errors []Error
}

// Error is how one figure of one phantom missed the truth.
type Error struct {
	Seed   uint64
	Miss   float64 // figure less truth
	U95    float64
	Inside bool
}

func newReport(p Plan) Report {
	return Report{Plan: p, Methods: map[scale.Method]int{}, Figures: map[string]*Figure{}, Shapes: map[arch.Shape]map[arch.Shape]int{}}
}

func (r *Report) add(figure string, c phantom.Case, got plane.Estimate[float64], want float64) {
	f := r.Figures[figure]
	if f == nil {
		f = &Figure{}
		r.Figures[figure] = f
	}
	f.Errors = append(f.Errors, Error{Seed: c.Seed, Miss: got.Value - want, U95: got.U95, Inside: got.Holds(want)})
}

func (r *Report) shape(c phantom.Case, w reading.Web, want phantom.WebTruth) {
	if r.Shapes[want.Shape] == nil {
		r.Shapes[want.Shape] = map[arch.Shape]int{}
	}
	r.Shapes[want.Shape][w.Shape]++
	if w.ShapeSure {
		r.Sure++
		if w.Shape == want.Shape {
			r.SureRight++
		}
	}
}

// border adds how far the traced points lie from the true border.
func (r *Report) border(traced, truth []plane.PixelPoint) {
	var distances []float64
	offset := 0.0
	const every = 7 // neighbouring points err alike
	for i := 0; i < len(traced); i += every {
		distances = append(distances, math.Abs(signedDistance(traced[i], truth)))
		offset += signedDistance(traced[i], truth)
	}
	offset /= float64(len(distances))
	if len(distances) > 0 {
		r.Border = append(r.Border, quantile(distances, 0.5))
		r.Offset = append(r.Offset, offset)
	}
}

// signedDistance is the distance from p to the polyline, positive on the side
// away from the opening.
func signedDistance(p plane.PixelPoint, line []plane.PixelPoint) float64 {
	best, sign := math.Inf(1), 1.0
	opening := line[0].Mid(line[len(line)-1])
	for i := 1; i < len(line); i++ {
		a, d := line[i-1], line[i].Sub(line[i-1])
		long := float64(d.Dot(d))
		if long == 0 {
			continue
		}
		t := math.Min(math.Max(float64(p.Sub(a).Dot(d))/long, 0), 1)
		if dist := float64(p.Distance(a.Add(d.Scale(t)))); dist < best {
			best = dist
			sign = 1
			if d.Cross(p.Sub(a))*d.Cross(opening.Sub(a)) > 0 {
				sign = -1
			}
		}
	}
	return sign * best
}

// target is what the project set itself for a figure: so many per cent of the
// errors within the limit.
type target struct{ limit, share float64 }

var targets = map[string]target{
	"index":       {0.015, 0.9},
	"span":        {0.25, 0.5},
	"rise":        {0.4, 0.5},
	"crown angle": {5, 0.5},
	"slope":       {1.5, 0.9},
}

var order = []string{"index", "depth", "span", "rise", "rise/span", "flare", "crown angle", "width 2", "width 5", "width 10", "slope"}

// WriteTo prints the report.
func (r Report) WriteTo(w io.Writer) (int64, error) {
	c := &counter{w: w}
	fmt.Fprintf(c, "%d hands and %d web views, clicks with %g px noise, seeds from %d; scale by %v (webs)\n\n",
		r.Plan.Hands, r.Plan.WebViews, float64(r.Plan.ClickSD), r.Plan.Seed, r.Methods)
	fmt.Fprintf(c, "%-12s %5s %9s %9s %9s %9s   %s\n", "figure", "n", "median", "90th pct", "med. U95", "inside", "target")
	for _, name := range order {
		if f := r.Figures[name]; f != nil {
			f.print(c, name)
		}
	}
	fmt.Fprintf(c, "\ntruth inside the stated interval: %.1f per cent of %d figures (target 92 to 99)\n", 100*r.Coverage(), r.count())
	fmt.Fprintf(c, "shape right: %.1f per cent (target 90); called sure %d, of these right %.1f per cent\n", 100*r.ShapeRight(), r.Sure, 100*float64(r.SureRight)/float64(max(r.Sure, 1)))
	for _, s := range arch.Shapes {
		fmt.Fprintf(c, "  true %-7v", s)
		for _, found := range arch.Shapes {
			fmt.Fprintf(c, " %v %d ", found, r.Shapes[s][found])
		}
		fmt.Fprintln(c)
	}
	if len(r.Border) > 0 {
		fmt.Fprintf(c, "traced border: median distance %.3f px, 90th percentile of borders %.3f px, worst %.3f px (target median 1); mean offset %+.3f px, its dispersion %.3f px\n",
			quantile(r.Border, 0.5), quantile(r.Border, 0.9), quantile(r.Border, 1), mean(r.Offset), deviation(r.Offset))
	}
	fmt.Fprintf(c, "webs not traced: %d\n", len(r.Untraced))
	for _, u := range r.Untraced {
		fmt.Fprintln(c, " ", u)
	}
	return c.n, c.err
}

func (f Figure) print(w io.Writer, name string) {
	var size, u95 []float64
	inside := 0
	for _, e := range f.Errors {
		size, u95 = append(size, math.Abs(e.Miss)), append(u95, e.U95)
		if e.Inside {
			inside++
		}
	}
	note := ""
	if t, ok := targets[name]; ok {
		note = fmt.Sprintf("%.1f per cent within %g (target %g)", 100*f.Within(t.limit), t.limit, 100*t.share)
	}
	fmt.Fprintf(w, "%-12s %5d %9.4f %9.4f %9.4f %8.1f%%   %s\n", name, len(size), quantile(size, 0.5), quantile(size, 0.9), quantile(u95, 0.5), 100*float64(inside)/float64(len(size)), note)
}

// Within is the share of errors no larger than limit.
func (f Figure) Within(limit float64) float64 {
	n := 0
	for _, e := range f.Errors {
		if math.Abs(e.Miss) <= limit {
			n++
		}
	}
	return float64(n) / float64(len(f.Errors))
}

// Coverage is the share of all figures whose stated interval holds the truth.
func (r Report) Coverage() float64 {
	inside := 0
	for _, f := range r.Figures {
		for _, e := range f.Errors {
			if e.Inside {
				inside++
			}
		}
	}
	return float64(inside) / float64(max(r.count(), 1))
}

func (r Report) count() int {
	n := 0
	for _, f := range r.Figures {
		n += len(f.Errors)
	}
	return n
}

// ShapeRight is the share of webs whose shape is found.
func (r Report) ShapeRight() float64 {
	right, all := 0, 0
	for want, found := range r.Shapes {
		for got, n := range found {
			all += n
			if got == want {
				right += n
			}
		}
	}
	return float64(right) / float64(max(all, 1))
}

func quantile(xs []float64, q float64) float64 {
	s := slices.Clone(xs)
	slices.Sort(s)
	return s[min(int(q*float64(len(s))), len(s)-1)]
}

func mean(xs []float64) float64 {
	sum := 0.0
	for _, x := range xs {
		sum += x
	}
	return sum / float64(len(xs))
}

func deviation(xs []float64) float64 {
	m, sum := mean(xs), 0.0
	for _, x := range xs {
		sum += (x - m) * (x - m)
	}
	return math.Sqrt(sum / float64(max(len(xs)-1, 1)))
}

// counter counts what is written, for WriteTo.
type counter struct {
	w   io.Writer
	n   int64
	err error
}

func (c *counter) Write(p []byte) (int, error) {
	n, err := c.w.Write(p)
	c.n += int64(n)
	if err != nil && c.err == nil {
		c.err = err
	}
	return n, err
}
