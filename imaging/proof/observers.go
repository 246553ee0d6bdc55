package proof

import (
	"fmt"
	"math/rand/v2"

	"ogive/geometry/agreement"
	"ogive/geometry/arch"
	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/imaging/marksfile"
	"ogive/imaging/measure"
	"ogive/imaging/phantom"
	"ogive/imaging/photo"
)

// ObserversPlan says how many adults two observers measure: both hands of each,
// the second to the fourth web, from the back, as in Tonkin MA et al. J Hand Surg
// Am 2015;40:456-61.
type ObserversPlan struct {
	Adults  int
	ClickSD plane.Pixel
	Seed    uint64
}

// ObserversReport is how far the two agree.
type ObserversReport struct {
	Plan ObserversPlan
	// Figures are the figures that both read on a web, in the order of figuresRead.
	Figures map[string]*Paired
	// Unread are the webs that one of the two could not read.
	Unread []string
}

// Paired is one figure of many webs as two observers read it, and as it truly is.
type Paired struct {
	Rows [][]float64 // a row a web, a value an observer
	True []float64
}

// Agreement of the two observers on the figure.
func (p Paired) Agreement() (agreement.Agreement, error) {
	table, err := agreement.NewTable([]string{"first", "second"}, p.Rows)
	if err != nil {
		return agreement.Agreement{}, err
	}
	return table.Agreement(), nil
}

// figuresRead are the figures that are compared.
var figuresRead = []string{"index", "depth", "span"}

// RunObservers has two observers mark the same photographs of grown hands, each
// missing every point by a normal error of ClickSD each way, and reads the marks.
// Progress, if not nil, hears of every finished hand.
func RunObservers(p ObserversPlan, progress func(done int)) (ObserversReport, error) {
	settings, err := measure.Defaults()
	if err != nil {
		return ObserversReport{}, err
	}
	r := ObserversReport{Plan: p, Figures: map[string]*Paired{}}
	for _, f := range figuresRead {
		r.Figures[f] = &Paired{}
	}
	for i := range p.Adults {
		for k, c := range adult(p.Seed + uint64(i)) {
			if err := r.observe(c, settings); err != nil {
				return r, fmt.Errorf("adult %d, %v hand: %w", p.Seed+uint64(i), c.Side, err)
			}
			if progress != nil {
				progress(2*i + k + 1)
			}
		}
	}
	return r, nil
}

// The webs of healthy adults differ by so much, standard deviations from person to
// person and from hand to hand: assumed, no source. The coefficients hang on it, as
// the report says; the technical error does not.
const (
	personIndex, handIndex = 0.035, 0.015
	personSpan, handSpan   = 0.018, 0.008 // parts of the length MCP to PIP
)

// adult is both hands of a person, each photographed by itself.
func adult(seed uint64) [2]phantom.Case {
	rng := rand.New(rand.NewPCG(seed, 0x0b5))
	person := phantom.Random(seed)
	person.Size = plane.Millimetre(36 + 10*rng.Float64())
	person.Build = plane.Ratio(0.95 + 0.1*rng.Float64())
	own := map[hand.Web][2]float64{}
	for _, w := range studied {
		own[w] = [2]float64{personIndex * rng.NormFloat64(), personSpan * rng.NormFloat64()}
	}
	var hands [2]phantom.Case
	for i, side := range []hand.Side{hand.Left, hand.Right} {
		c := phantom.Random(seed<<1 + uint64(i) + 1<<33)
		c.Side, c.View, c.Size, c.Build, c.Skin = side, hand.Dorsal, person.Size, person.Build, person.Skin
		c.Webs = map[hand.Web]phantom.WebShape{}
		for _, w := range studied {
			c.Webs[w] = healthy(w, c.Size, own[w][0]+handIndex*rng.NormFloat64(), own[w][1]+handSpan*rng.NormFloat64())
		}
		hands[i] = c
	}
	return hands
}

var studied = []hand.Web{hand.SecondWeb, hand.ThirdWeb, hand.FourthWeb}

// healthy is a web of usual shape whose index and span differ from the usual ones.
func healthy(w hand.Web, size plane.Millimetre, index, span float64) phantom.WebShape {
	if w == hand.ThirdWeb {
		return phantom.WebShape{Shape: arch.Gothic, Index: plane.Ratio(0.54 + index), Span: size * plane.Millimetre(0.21+span), Turn: plane.Degrees(60)}
	}
	return phantom.WebShape{Shape: arch.U, Index: plane.Ratio(0.5 + index), Span: size * plane.Millimetre(0.25+span), Flat: 0.35}
}

// observe adds one photograph.
func (r *ObserversReport) observe(c phantom.Case, settings measure.Settings) error {
	picture, err := c.Render()
	if err != nil {
		return err
	}
	p, err := photo.Decode(picture.JPEG)
	if err != nil {
		return err
	}
	var read [2]measure.Result
	for i := range read {
		marks, reference := picture.Truth.Marks(r.Plan.ClickSD, rand.New(rand.NewPCG(c.Seed, 0x0b50+uint64(i))))
		read[i], err = measure.Subject{Photograph: p, Marks: marksfile.File{Marks: marks, Reference: reference}}.Measure(settings)
		if err != nil {
			return err
		}
	}
	for _, truth := range picture.Truth.Webs {
		r.pair(c, truth, figuresOf(read[0], truth.Web), figuresOf(read[1], truth.Web))
	}
	return nil
}

// figuresOf are the figures of one web by name, as far as they could be read.
func figuresOf(r measure.Result, web hand.Web) map[string]float64 {
	out := map[string]float64{}
	for _, w := range r.Reading.Webs {
		if w.Web != web {
			continue
		}
		if w.Index != nil {
			out["index"] = float64(w.Index.Value)
		}
		if w.Depth != nil {
			out["depth"] = float64(w.Depth.Value)
		}
		if w.Span != nil {
			out["span"] = float64(w.Span.Value)
		}
	}
	return out
}

func (r *ObserversReport) pair(c phantom.Case, truth phantom.WebTruth, a, b map[string]float64) {
	exact := map[string]float64{"index": float64(truth.Index), "depth": float64(truth.Depth), "span": float64(truth.Span)}
	for _, f := range figuresRead {
		one, okA := a[f]
		two, okB := b[f]
		if !okA || !okB {
			r.Unread = append(r.Unread, fmt.Sprintf("phantom %d, %v: no %s by both", c.Seed, truth.Web, f))
			continue
		}
		p := r.Figures[f]
		p.Rows, p.True = append(p.Rows, []float64{one, two}), append(p.True, exact[f])
	}
}
