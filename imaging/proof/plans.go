package proof

import (
	"fmt"
	"io"
	"math"
	"math/rand/v2"

	"ogive/geometry/plan"
	"ogive/geometry/plane"
	"ogive/imaging/marksfile"
	"ogive/imaging/measure"
	"ogive/imaging/phantom"
	"ogive/imaging/photo"
	"ogive/imaging/planning"
)

// PlansReport is where planned arches came to lie that were proposed from the
// other hand, beside the true place of the normal web, in millimetres on the
// true plane.
type PlansReport struct {
	Plan PairsPlan
	// Crown is the distance of the proposed crown from the true one, Arch the
	// greatest distance of the true border between its springings from the
	// proposed arch, Span the proposed span less the true one.
	Crown, Arch, Span []float64
	// Inside counts the crowns within the U95 that their proposal stated, Held the
	// indices.
	Inside, Held int
	Missed       []string
}

// RunPlans proposes, on pairs of phantoms with equal webs, each web of the one
// hand from the other, as if it were joined: only the joints and the scale of
// the hand that is planned on are used. Each photograph has a tilt, a distance,
// a light, a reference and clicks of its own.
func RunPlans(p PairsPlan, progress func(done int)) (PlansReport, error) {
	settings, err := measure.Defaults()
	if err != nil {
		return PlansReport{}, err
	}
	r := PlansReport{Plan: p}
	for i := range p.Pairs {
		seed := p.Seed + uint64(i)
		operated, other, _, _ := pairOf(seed, 0)
		if err := r.prove(operated, other, settings); err != nil {
			return r, fmt.Errorf("pair %d: %w", seed, err)
		}
		if progress != nil {
			progress(i + 1)
		}
	}
	return r, nil
}

func (r *PlansReport) prove(operated, other phantom.Case, settings measure.Settings) error {
	here, truth, err := r.prepare(operated, settings)
	if err != nil {
		return err
	}
	there, _, err := r.prepare(other, settings)
	if err != nil {
		return err
	}
	for _, w := range truth.Webs {
		p, err := here.Propose(w.Web, &there)
		if err != nil {
			return err
		}
		if p.Origin != plan.OtherHand {
			r.Missed = append(r.Missed, fmt.Sprintf("pair %d, %v: proposed from the %v: %v", operated.Seed, w.Web, p.Origin, p.Warnings))
			continue
		}
		r.compare(here, p, w, truth)
	}
	return nil
}

// prepare measures a phantom as an observer has marked it.
func (r *PlansReport) prepare(c phantom.Case, settings measure.Settings) (planning.Hand, phantom.Truth, error) {
	picture, err := c.Render()
	if err != nil {
		return planning.Hand{}, picture.Truth, err
	}
	p, err := photo.Decode(picture.JPEG)
	if err != nil {
		return planning.Hand{}, picture.Truth, err
	}
	marks, reference := picture.Truth.Marks(r.Plan.ClickSD, rand.New(rand.NewPCG(c.Seed, 0x91a9)))
	h, err := planning.Prepare(measure.Subject{Photograph: p, Marks: marksfile.File{Marks: marks, Reference: reference}}, settings)
	return h, picture.Truth, err
}

// compare adds how far the proposal lies from the truth.
func (r *PlansReport) compare(here planning.Hand, p plan.Proposal, w phantom.WebTruth, truth phantom.Truth) {
	back := here.Ground.Fit.Best.Back()
	onTruth := func(q plane.Position) plane.Position { return truth.Plane.Position(back.Pixel(q)) }
	crown := float64(onTruth(p.Arch.Crown).Distance(truth.Plane.Position(w.Crown)))
	r.Crown = append(r.Crown, crown)
	r.Span = append(r.Span, float64(p.Arch.Span()-w.Span))
	var curve []plane.Position
	for _, q := range p.Arch.Polyline(p.Arch.Span()/2, 0.1) {
		curve = append(curve, onTruth(q))
	}
	worst := 0.0
	for _, q := range arched(w) {
		worst = math.Max(worst, distance(truth.Plane.Position(q), curve))
	}
	r.Arch = append(r.Arch, worst)
	if crown <= float64(p.CrownU95) {
		r.Inside++
	}
	if p.Index.Holds(w.Index) {
		r.Held++
	}
}

// arched is the true border between its springings.
func arched(w phantom.WebTruth) []plane.PixelPoint {
	nearest := func(p plane.PixelPoint) int {
		at := 0
		for i, q := range w.Border {
			if q.Distance(p) < w.Border[at].Distance(p) {
				at = i
			}
		}
		return at
	}
	a, b := nearest(w.Springing[0]), nearest(w.Springing[1])
	return w.Border[min(a, b) : max(a, b)+1]
}

// distance is that of p from a line through the points.
func distance(p plane.Position, line []plane.Position) float64 {
	least := math.Inf(1)
	for i := 1; i < len(line); i++ {
		a, run := line[i-1], line[i].Sub(line[i-1])
		t := 0.0
		if n := float64(run.Dot(run)); n > 0 {
			t = math.Min(math.Max(float64(p.Sub(a).Dot(run))/n, 0), 1)
		}
		least = math.Min(least, float64(p.Distance(a.Add(run.Scale(t)))))
	}
	return least
}

// WriteTo prints the report.
func (r PlansReport) WriteTo(w io.Writer) (int64, error) {
	c := &counter{w: w}
	n := len(r.Crown)
	fmt.Fprintf(c, "%d webs of %d pairs of hands proposed from the other hand, clicks with %g px noise, seeds from %d\n\n", n, r.Plan.Pairs, float64(r.Plan.ClickSD), r.Plan.Seed)
	fmt.Fprintf(c, "%-34s %9s %9s %9s\n", "mm", "median", "90th pct", "worst")
	for _, f := range []struct {
		name string
		of   []float64
	}{{"crown beside the true one", r.Crown}, {"true border beside the arch", r.Arch}, {"span less the true one", sizes(r.Span)}} {
		fmt.Fprintf(c, "%-34s %9.3f %9.3f %9.3f\n", f.name, quantile(f.of, 0.5), quantile(f.of, 0.9), quantile(f.of, 1))
	}
	fmt.Fprintf(c, "\ncrown within 0.5 mm: %.1f per cent (target 90)\n", 100*share(within(r.Crown, 0.5), n))
	fmt.Fprintf(c, "crown within its stated U95: %.1f per cent; index: %.1f per cent\n", 100*share(r.Inside, n), 100*share(r.Held, n))
	for _, m := range r.Missed {
		fmt.Fprintln(c, " ", m)
	}
	return c.n, c.err
}

func sizes(misses []float64) []float64 {
	out := make([]float64, len(misses))
	for i, m := range misses {
		out[i] = math.Abs(m)
	}
	return out
}

func within(distances []float64, most float64) int {
	n := 0
	for _, d := range distances {
		if d <= most {
			n++
		}
	}
	return n
}
