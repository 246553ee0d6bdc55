// Package proof measures the measuring: it photographs phantoms of exactly
// known geometry, marks them as an observer with a given click noise would,
// runs the whole job on the photographs, and compares every figure with the
// truth.
//
//	report, err := proof.Run(proof.Plan{Hands: 100, WebViews: 40, ClickSD: 2})
//	report.WriteTo(os.Stdout)
//
// The targets printed beside the figures are those the project set itself.
package proof

import (
	"fmt"
	"math/rand/v2"
	"strings"

	"ogive/geometry/arch"
	"ogive/geometry/plane"
	"ogive/geometry/reading"
	"ogive/geometry/scale"
	"ogive/imaging/marksfile"
	"ogive/imaging/measure"
	"ogive/imaging/phantom"
	"ogive/imaging/photo"
	"ogive/imaging/ruler"
)

// Plan says how much to prove.
type Plan struct {
	Hands    int // phantoms in dorsal and palmar view, three webs each
	WebViews int // phantoms in the web view, for the slope
	ClickSD  plane.Pixel
	Seed     uint64
}

// Run proves the plan on every case, in the order of their seeds. Progress, if
// not nil, hears of every finished case.
func Run(p Plan, progress func(done int)) (Report, error) {
	settings, err := measure.Defaults()
	if err != nil {
		return Report{}, err
	}
	r := newReport(p)
	for i := range p.Hands + p.WebViews {
		seed := p.Seed + uint64(i)
		c := phantom.Random(seed)
		if i >= p.Hands {
			c = phantom.RandomWebView(seed)
		}
		if err := r.prove(c, p.ClickSD, settings); err != nil {
			return r, fmt.Errorf("phantom %d: %w", seed, err)
		}
		if progress != nil {
			progress(i + 1)
		}
	}
	return r, nil
}

// prove adds one case to the report.
func (r *Report) prove(c phantom.Case, sd plane.Pixel, settings measure.Settings) error {
	picture, err := c.Render()
	if err != nil {
		return err
	}
	photograph, err := photo.Decode(picture.JPEG)
	if err != nil {
		return err
	}
	marks, reference := picture.Truth.Marks(sd, rand.New(rand.NewPCG(c.Seed, 0xc11c)))
	subject := measure.Subject{Photograph: photograph, Marks: marksfile.File{
		Marks: marks, Reference: withTicks(photograph, reference, c.Seed),
	}}
	result, err := subject.Measure(settings)
	if err != nil {
		return err
	}
	r.compare(c, result.Reading, picture.Truth)
	return nil
}

// withTicks takes every other ruler by its ticks, as found in the photograph.
func withTicks(p *photo.Photograph, reference scale.Reference, seed uint64) scale.Reference {
	two, ok := reference.(scale.Ruler)
	if !ok || seed%2 == 0 {
		return reference
	}
	found, err := ruler.FindTicks(p, two.From, two.To)
	if err != nil {
		return reference
	}
	if ticks, ok := found.Scale(two.Length); ok {
		return ticks
	}
	return reference
}

// compare adds the figures of one photograph to the report.
func (r *Report) compare(c phantom.Case, got reading.Reading, truth phantom.Truth) {
	for _, want := range truth.Webs {
		for _, w := range got.Webs {
			if w.Web != want.Web {
				continue
			}
			if w.Shape == 0 {
				r.Untraced = append(r.Untraced, fmt.Sprintf("phantom %d, %v: %s", c.Seed, w.Web, strings.Join(w.Warnings, " ")))
			} else {
				r.compareWeb(c, got.Method, w, want)
			}
		}
	}
	for _, want := range truth.Junctions {
		for _, w := range got.Webs {
			if w.Web == want.Web && w.Slope != nil {
				r.add("slope", c, degrees(*w.Slope), want.Slope.Degrees())
			}
		}
	}
}

func (r *Report) compareWeb(c phantom.Case, method scale.Method, w reading.Web, want phantom.WebTruth) {
	r.Methods[method]++
	r.border(w.Edge, want.Border)
	r.shape(c, w, want)
	if w.Index != nil {
		r.add("index", c, number(*w.Index), float64(want.Index))
		r.add("depth", c, number(*w.Depth), float64(want.Depth))
	}
	r.add("span", c, number(*w.Span), float64(want.Span))
	r.add("rise", c, number(*w.Rise), float64(want.Rise))
	if w.RiseToSpan != nil && want.Shape != arch.V {
		r.add("rise/span", c, number(*w.RiseToSpan), float64(want.RiseToSpan))
	}
	r.add("flare", c, degrees(*w.Flare), want.Flare.Degrees())
	r.add("crown angle", c, degrees(*w.CrownAngle), want.CrownAngle.Degrees())
	for _, width := range w.Widths {
		for _, truth := range want.Widths {
			if truth.Distal == width.Distal {
				r.add(fmt.Sprintf("width %g", float64(width.Distal)), c, number(width.Width), float64(truth.Width))
			}
		}
	}
}

func number[Q plane.Measured](e plane.Estimate[Q]) plane.Estimate[float64] {
	return plane.Estimate[float64]{Value: float64(e.Value), U95: float64(e.U95)}
}

func degrees(e plane.Estimate[plane.Angle]) plane.Estimate[float64] {
	return plane.Estimate[float64]{Value: e.Value.Degrees(), U95: e.U95.Degrees()}
}
