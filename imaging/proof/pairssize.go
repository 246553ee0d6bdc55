package proof

import (
	"fmt"
	"io"
	"math/rand/v2"
	"slices"

	"ogive/geometry/comparison"
	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/geometry/reading"
	"ogive/geometry/scale"
	"ogive/imaging/measure"
	"ogive/imaging/phantom"
)

// What a reminder of size must follow.
const (
	longer = "one digit a tenth longer"
	wider  = "one digit a tenth wider"
)

// SizesReport is what the comparing of digits found.
type SizesReport struct {
	Pairs, Quiet    int            // of equal hands, and those without a reminder
	Grown, Reminded map[string]int // digits enlarged, and those reminded of
	// Sighted is Grown, and SightedReminded Reminded, where both photographs have
	// a card, which shows the tilt.
	Sighted, SightedReminded map[string]int
}

// RunSizes compares the digits of pairs of equal hands, each with a tilt, a
// distance, a reference and clicks of its own, and again with one digit a tenth
// longer or wider. Nothing is rendered: borders are the true ones, off by what
// a tracer is off by, and a ruler's ticks the true ones, clicked.
func RunSizes(p PairsPlan) (SizesReport, error) {
	r := SizesReport{Pairs: p.Pairs, Grown: map[string]int{}, Reminded: map[string]int{}, Sighted: map[string]int{}, SightedReminded: map[string]int{}}
	settings, err := measure.Defaults()
	if err != nil {
		return r, err
	}
	for i := range p.Pairs {
		one, other, _, _ := pairOf(p.Seed+uint64(i), 0)
		a, errA := sketched(one, p.ClickSD, settings)
		b, errB := sketched(other, p.ClickSD, settings)
		if errA != nil || errB != nil {
			return r, fmt.Errorf("pair %d: %v, %v", one.Seed, errA, errB)
		}
		if err := r.prove(a, b, int(one.Seed), settings); err != nil {
			return r, fmt.Errorf("pair %d: %w", one.Seed, err)
		}
	}
	return r, nil
}

func (r *SizesReport) prove(a, b comparison.Photograph, seed int, settings measure.Settings) error {
	c, err := comparison.Compare(a, b, settings.Norms.Span)
	if err != nil {
		return err
	}
	if len(c.Reminders) == 0 {
		r.Quiet++
	}
	d := hand.IndexFinger + hand.Digit(seed%4)
	if c, err = comparison.Compare(lengthened(a, d), b, settings.Norms.Span); err != nil {
		return err
	}
	r.remind(longer, a, b, c, func(s comparison.Size) bool { return s.Digit == d && s.Of != comparison.Width })
	d = hand.Middle + hand.Digit(seed%2)
	if c, err = comparison.Compare(widened(a, d), b, settings.Norms.Span); err != nil {
		return err
	}
	r.remind(wider, a, b, c, func(s comparison.Size) bool { return s.Digit == d && s.Of == comparison.Width })
	return nil
}

// sketched is the photograph of a case read without taking it.
func sketched(c phantom.Case, clickSD plane.Pixel, settings measure.Settings) (comparison.Photograph, error) {
	truth, err := c.Truth()
	if err != nil {
		return comparison.Photograph{}, err
	}
	rng := rand.New(rand.NewPCG(c.Seed, 0x517e5))
	marks, reference := truth.Marks(clickSD, rng)
	for i, w := range truth.Webs {
		marks.Webs[i].Edge = tracedAs(w, rng)
	}
	if ticks := truth.Ruler; ticks != nil {
		found := scale.Ticks{Step: ticks.Step}
		for _, q := range ticks.Ticks {
			found.At = append(found.At, q.Add(plane.Vec(plane.Pixel(0.3*rng.NormFloat64()), plane.Pixel(0.3*rng.NormFloat64()))))
		}
		reference = found
	}
	camera := scale.Camera{Width: plane.Pixel(c.Width), Height: plane.Pixel(c.Height), Tilt: settings.Tilt}
	fit, err := reference.Fit(camera, clickSD)
	return comparison.Photograph{Marks: marks, Scale: fit, Reading: reading.Read(marks, fit, settings.Norms)}, err
}

// tracedAs is the true border, a point for every few pixels, off as a whole and
// point by point.
func tracedAs(w phantom.WebTruth, rng *rand.Rand) []plane.PixelPoint {
	off := plane.Vec(plane.Pixel(0.17*rng.NormFloat64()), plane.Pixel(0.17*rng.NormFloat64()))
	var out []plane.PixelPoint
	for i := 0; i < len(w.Border); i += 3 {
		out = append(out, w.Border[i].Add(off).Add(plane.Vec(plane.Pixel(0.1*rng.NormFloat64()), plane.Pixel(0.1*rng.NormFloat64()))))
	}
	return out
}

// lengthened is the photograph with the joints of one digit a tenth further apart.
func lengthened(p comparison.Photograph, d hand.Digit) comparison.Photograph {
	joints := map[hand.Digit]map[hand.Joint]plane.PixelPoint{}
	for digit, at := range p.Marks.Joints {
		joints[digit] = map[hand.Joint]plane.PixelPoint{}
		for j, q := range at {
			if digit == d {
				q = at[hand.MCP].Towards(q, 1.1)
			}
			joints[digit][j] = q
		}
	}
	p.Marks.Joints = joints
	return p
}

// widened is the photograph with the traced borders of one digit a tenth further
// from its axis.
func widened(p comparison.Photograph, d hand.Digit) comparison.Photograph {
	mcp, pip := p.Marks.Joints[d][hand.MCP], p.Marks.Joints[d][hand.PIP]
	across := pip.Sub(mcp).Direction().Left()
	p.Reading.Webs = slices.Clone(p.Reading.Webs)
	for i, w := range p.Reading.Webs {
		if w.Web != hand.Web(d) && w.Web != hand.Web(d)-1 {
			continue
		}
		w.Edge = slices.Clone(w.Edge)
		for n, q := range w.Edge {
			if nearer(p.Marks, w.Web, d, q) {
				w.Edge[n] = q.Add(across.Scale(0.1 * float64(q.Sub(mcp).Dot(across))))
			}
		}
		p.Reading.Webs[i] = w
	}
	return p
}

// nearer reports whether q lies nearer to the axis of d than to that of the other
// digit of the web.
func nearer(m hand.Marks, w hand.Web, d hand.Digit, q plane.PixelPoint) bool {
	beside := func(d hand.Digit) plane.Pixel {
		mcp, pip := m.Joints[d][hand.MCP], m.Joints[d][hand.PIP]
		off := pip.Sub(mcp).Direction().Cross(q.Sub(mcp))
		return max(off, -off)
	}
	radial, ulnar := w.Digits()
	if d == radial {
		return beside(radial) < beside(ulnar)
	}
	return beside(ulnar) < beside(radial)
}

// remind counts a size that was enlarged, if it could be measured.
func (r *SizesReport) remind(name string, a, b comparison.Photograph, c comparison.Comparison, about func(comparison.Size) bool) {
	sizes := slices.DeleteFunc(slices.Clone(c.Sizes), func(s comparison.Size) bool { return !about(s) })
	if len(sizes) == 0 {
		return
	}
	told := len(c.Reminders) > 0 && slices.ContainsFunc(sizes, func(s comparison.Size) bool { return s.Larger() > 0 })
	count := func(of, reminded map[string]int) {
		of[name]++
		if told {
			reminded[name]++
		}
	}
	count(r.Grown, r.Reminded)
	if a.Scale.Method == scale.ByCard && b.Scale.Method == scale.ByCard {
		count(r.Sighted, r.SightedReminded)
	}
}

// WriteTo prints the report.
func (r SizesReport) WriteTo(w io.Writer) (int64, error) {
	c := &counter{w: w}
	fmt.Fprintf(c, "digits of %d pairs of equal hands: no reminder of size in %.1f per cent (target 95)\n", r.Pairs, 100*share(r.Quiet, r.Pairs))
	for _, name := range []string{longer, wider} {
		fmt.Fprintf(c, "%s: reminded of in %d of %d, with a card on both photographs in %d of %d\n", name, r.Reminded[name], r.Grown[name], r.SightedReminded[name], r.Sighted[name])
	}
	return c.n, c.err
}
