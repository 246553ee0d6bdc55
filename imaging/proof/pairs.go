package proof

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"

	"ogive/geometry/arch"
	"ogive/geometry/comparison"
	"ogive/geometry/hand"
	"ogive/geometry/norms"
	"ogive/geometry/plane"
	"ogive/imaging/compared"
	"ogive/imaging/marksfile"
	"ogive/imaging/measure"
	"ogive/imaging/phantom"
	"ogive/imaging/photo"
)

// PairsPlan says how many pairs of hands to compare.
type PairsPlan struct {
	Pairs   int
	ClickSD plane.Pixel
	Seed    uint64
}

// PairsReport is what the comparing of pairs found.
type PairsReport struct {
	Plan PairsPlan
	// Figures are the errors of the differences, by figure, over all webs.
	Figures map[string]*Figure
	// Changed counts the webs moved by 3 mm or more on an adult hand, by depth
	// or by span; Right those with a certain verdict of the right kind, and none
	// of a wrong one.
	Changed, Right map[string]int
	// Equal counts the pairs of hands of any size without a change; False those
	// with a certain verdict on any web, Sized those with a reminder of size.
	Equal, False, Sized int
	RMS                 []float64 // of the registrations, mm
	Missed              []string
}

// change is what was done to one web of the operated hand.
type change struct {
	figure string // "depth", "span" or "" for none
	by     plane.Millimetre
}

// RunPairs compares pairs of phantoms: the operated hand, and its mirror image
// photographed anew with a tilt, a distance, a light, a reference and clicks of
// its own. By turns nothing is changed, one web of the operated hand is moved,
// or one is made wider or narrower.
func RunPairs(p PairsPlan, progress func(done int)) (PairsReport, error) {
	settings, err := measure.Defaults()
	if err != nil {
		return PairsReport{}, err
	}
	r := PairsReport{Plan: p, Figures: map[string]*Figure{}, Changed: map[string]int{}, Right: map[string]int{}}
	for i := range p.Pairs {
		seed := p.Seed + uint64(i)
		operated, other, web, done := pairOf(seed, i%3)
		if err := r.prove(operated, other, web, done, settings); err != nil {
			return r, fmt.Errorf("pair %d: %w", seed, err)
		}
		if progress != nil {
			progress(i + 1)
		}
	}
	return r, nil
}

// pairOf is the pair drawn for a seed: kind 0 without a change, 1 with a web
// moved, 2 with one wider or narrower. Changed pairs are adult hands; a V has no
// span to be changed.
func pairOf(seed uint64, kind int) (operated, other phantom.Case, web hand.Web, done change) {
	rng := rand.New(rand.NewPCG(seed, 0x9a125))
	operated = phantom.Random(seed)
	if kind != 0 {
		operated.Size = plane.Millimetre(38 + 8*rng.Float64())
	}
	natural(&operated, rng)
	web = hand.SecondWeb + hand.Web(rng.IntN(3))
	if s := operated.Webs[web]; kind == 2 && s.Shape == arch.V {
		s.Shape, s.Flare, s.Flat, s.Span = arch.U, 0, 0.4, 0.25*operated.Size
		operated.Webs[web] = s
	}
	other = phantom.Random(seed + 1<<32)
	other.Side, other.View = operated.Side.Other(), operated.View
	other.Size, other.Build, other.Skin = operated.Size, operated.Build, operated.Skin
	other.Webs = operated.Webs
	operated.Webs = map[hand.Web]phantom.WebShape{}
	for w, s := range other.Webs {
		operated.Webs[w] = s
	}
	by := plane.Millimetre(3 + 2*rng.Float64())
	if rng.IntN(2) == 0 {
		by = -by
	}
	s := operated.Webs[web]
	switch kind {
	case 1:
		done = change{"depth", by}
		s.Index -= plane.Ratio(by / phalanx(operated, web))
	case 2:
		done = change{"span", by}
		s.Span += by
	}
	operated.Webs[web] = s
	return operated, other, web, done
}

// natural draws webs of every shape that may be moved or widened by 5 mm and
// still be webs.
func natural(c *phantom.Case, rng *rand.Rand) {
	between := func(low, high float64) float64 { return low + (high-low)*rng.Float64() }
	for _, w := range []hand.Web{hand.SecondWeb, hand.ThirdWeb, hand.FourthWeb} {
		s := phantom.WebShape{Shape: arch.Shapes[rng.IntN(len(arch.Shapes))], Index: plane.Ratio(between(0.42, 0.6)), Span: c.Size * plane.Millimetre(between(0.22, 0.28))}
		switch s.Shape {
		case arch.U:
			s.Flat = plane.Ratio(between(0.3, 0.5))
		case arch.Gothic:
			s.Turn = plane.Degrees(between(50, 68))
		case arch.V:
			s.Span, s.Flare = 0, plane.Degrees(between(5, 10))
		}
		c.Webs[w] = s
	}
}

// phalanx is the mean length from MCP (or basal crease) to PIP of the two digits
// of a web, from the truth.
func phalanx(c phantom.Case, w hand.Web) plane.Millimetre {
	truth, err := c.Truth()
	if err != nil {
		return c.Size
	}
	radial, ulnar := w.Digits()
	sum := plane.Millimetre(0)
	for _, d := range []hand.Digit{radial, ulnar} {
		sum += truth.Plane.Position(truth.Joints[d][hand.MCP]).Distance(truth.Plane.Position(truth.Joints[d][hand.PIP]))
	}
	return sum / 2
}

// prove adds one pair to the report.
func (r *PairsReport) prove(operated, other phantom.Case, web hand.Web, done change, settings measure.Settings) error {
	a, truthA, err := r.photograph(operated, settings)
	if err != nil {
		return err
	}
	b, truthB, err := r.photograph(other, settings)
	if err != nil {
		return err
	}
	c, err := compared.Results(a, b, settings)
	if err != nil {
		return err
	}
	r.RMS = append(r.RMS, float64(c.RegistrationRMS))
	certain := 0
	for _, w := range c.Webs {
		r.differences(operated, w, truthA, truthB)
		certain += len(certainOf(w))
		if w.Web == web && done.figure != "" {
			r.judge(operated, w, done)
		}
	}
	if done.figure == "" {

		r.Equal++
		if certain > 0 {
			r.False++
			r.Missed = append(r.Missed, fmt.Sprintf("pair %d, unchanged: a certain verdict", operated.Seed))
		}
		if len(c.Reminders) > 0 {
			r.Sized++
			r.Missed = append(r.Missed, fmt.Sprintf("pair %d, unchanged: %s", operated.Seed, strings.Join(c.Reminders, " ")))
		}
	}
	return nil
}

func (r *PairsReport) photograph(c phantom.Case, settings measure.Settings) (measure.Result, phantom.Truth, error) {
	picture, err := c.Render()
	if err != nil {
		return measure.Result{}, picture.Truth, err
	}
	p, err := photo.Decode(picture.JPEG)
	if err != nil {
		return measure.Result{}, picture.Truth, err
	}
	marks, reference := picture.Truth.Marks(r.Plan.ClickSD, rand.New(rand.NewPCG(c.Seed, 0xc11c)))
	result, err := measure.Subject{Photograph: p, Marks: marksfile.File{Marks: marks, Reference: reference}}.Measure(settings)
	return result, picture.Truth, err
}

// differences adds how far each difference of a web is from the true one.
func (r *PairsReport) differences(c phantom.Case, w comparison.Web, a, b phantom.Truth) {
	one, two := truthOf(a, w.Web), truthOf(b, w.Web)
	add := func(name string, got plane.Estimate[float64], want float64) {
		f := r.Figures[name]
		if f == nil {
			f = &Figure{}
			r.Figures[name] = f
		}
		f.Errors = append(f.Errors, Error{Seed: c.Seed, Miss: got.Value - want, U95: got.U95, Inside: got.Holds(want)})
	}
	if w.Index != nil {
		add("index", number(*w.Index), float64(one.Index-two.Index))
	}
	if w.Depth != nil {
		add("depth", number(*w.Depth), float64(one.Depth-two.Depth))
	}
	if w.Span != nil {
		add("span", number(*w.Span), float64(one.Span-two.Span))
	}
	if w.CrownAngle != nil {
		add("crown angle", degrees(*w.CrownAngle), (one.CrownAngle - two.CrownAngle).Degrees())
	}
}

func truthOf(t phantom.Truth, web hand.Web) phantom.WebTruth {
	for _, w := range t.Webs {
		if w.Web == web {
			return w
		}
	}
	return phantom.WebTruth{}
}

// judge counts whether the change was told, and as what it is.
func (r *PairsReport) judge(c phantom.Case, w comparison.Web, done change) {
	want := map[string][2]string{"depth": {"too shallow", "too deep"}, "span": {"too narrow", "too wide"}}[done.figure]
	finding := want[0]
	if done.by > 0 {
		finding = want[1]
	}
	told, wrong := false, false
	for _, v := range certainOf(w) {
		told = told || v.Finding == finding
		wrong = wrong || v.Finding != finding
	}
	r.Changed[done.figure]++
	if told && !wrong {
		r.Right[done.figure]++
		return
	}
	r.Missed = append(r.Missed, fmt.Sprintf("pair %d, %v, %s changed by %+.1f mm on %.0f mm, told %v, wrongly %v: %s",
		c.Seed, w.Web, done.figure, float64(done.by), float64(c.Size), told, wrong, differencesIn(w)))
}

func differencesIn(w comparison.Web) string {
	var out []string
	if w.Index != nil {
		out = append(out, fmt.Sprintf("index %+.3f ± %.3f", float64(w.Index.Value), float64(w.Index.U95)))
	}
	if w.Depth != nil {
		out = append(out, fmt.Sprintf("depth %+.2f ± %.2f mm", float64(w.Depth.Value), float64(w.Depth.U95)))
	}
	if w.Span != nil {
		out = append(out, fmt.Sprintf("span %+.2f ± %.2f mm", float64(w.Span.Value), float64(w.Span.U95)))
	}
	return strings.Join(append(out, w.Warnings...), ", ")
}

func certainOf(w comparison.Web) []norms.Verdict {
	var out []norms.Verdict
	for _, v := range w.Verdicts {
		if v.Certain {
			out = append(out, v)
		}
	}
	return out
}

// Told is the share of changes that have a certain and right verdict.
func (r PairsReport) Told() float64 {
	return share(r.Right["depth"]+r.Right["span"], r.Changed["depth"]+r.Changed["span"])
}

// Quiet is the share of unchanged pairs without any certain verdict.
func (r PairsReport) Quiet() float64 { return share(r.Equal-r.False, r.Equal) }

func share(n, of int) float64 {
	if of == 0 {
		return math.NaN()
	}
	return float64(n) / float64(of)
}
