package rounds

import (
	"fmt"
	"math/rand/v2"

	"ogive/geometry/arch"
	"ogive/geometry/hand"
	"ogive/geometry/norms"
	"ogive/geometry/plane"
	"ogive/imaging/phantom"
)

// The pictures' size, small enough to be painted while the last one is judged.
const pictureWidth, pictureHeight = 1200, 900

// tries is how many hands are drawn for one picture before it is given up.
const tries = 60

// cases draws the phantoms of a round.
func cases(s Setup, l Limits) ([]phantom.Case, error) {
	list := make([]phantom.Case, 0, s.Count)
	for i, w := range s.wants() {
		c, err := drawCase(s, l, w, i)
		if err != nil {
			return nil, fmt.Errorf("picture %d: %w", i+1, err)
		}
		list = append(list, c)
	}
	return list, nil
}

// drawCase is a hand that shows what is wanted. Not every drawn hand can be, and
// some come out beyond another limit than the one that was meant.
func drawCase(s Setup, l Limits, w want, number int) (phantom.Case, error) {
	for try := range tries {
		rng := rand.New(rand.NewPCG(s.Seed, uint64(number)<<16|uint64(try)))
		c := scene(s.Difficulty, rng)
		c.Seed = s.Seed<<16 + uint64(number)<<8 + uint64(try)
		if w.view == hand.WebView {
			c.View = hand.WebView
			c.Webs = map[hand.Web]phantom.WebShape{w.web: {}}
			c.JunctionSlope = plane.Degrees(figure(rng, margins[s.Difficulty].slope, w.slope, "too flat", l.Slope))
		} else {
			c.Webs = webs(s, l, w, c, rng)
		}
		if t, err := c.Truth(); err == nil && inside(t, c) && w.shownBy(ofPhantom(t, l)) {
			return c, nil
		}
	}
	return phantom.Case{}, fmt.Errorf("no hand can be drawn that is %s by these normal values; choose other faults, or restore the table", w)
}

// rim is the margin of the picture within which everything that is to be marked must lie, in
// pixels: a tilted card can reach beyond it.
const rim = 6

// inside reports whether all that is to be marked can be clicked on.
func inside(t phantom.Truth, c phantom.Case) bool {
	var marks []plane.PixelPoint
	for _, joints := range t.Joints {
		for _, p := range joints {
			marks = append(marks, p)
		}
	}
	if t.Card != nil {
		marks = append(marks, t.Card.Corners[:]...)
	}
	if t.Ruler != nil {
		marks = append(marks, t.Ruler.From, t.Ruler.To)
	}
	for _, p := range marks {
		if p.X < rim || p.Y < rim || p.X > plane.Pixel(c.Width-rim) || p.Y > plane.Pixel(c.Height-rim) {
			return false
		}
	}
	return true
}

// String is what is wanted in words.
func (w want) String() string {
	if w.view == hand.WebView {
		return "in its slope " + w.slope
	}
	return fmt.Sprintf("in its place %s and in its width %s", w.place, w.width)
}

func (w want) shownBy(t Truth) bool {
	web, ok := t.Web(w.web)
	if !ok {
		return false
	}
	if w.view == hand.WebView {
		return web.verdicts[Slope].Finding == w.slope
	}
	return web.verdicts[Place].Finding == w.place && web.Shape == w.shape &&
		(w.shape == arch.V || web.verdicts[Width].Finding == w.width)
}

// webs are the webs of a hand: the one asked about as wanted, the others normal.
func webs(s Setup, l Limits, w want, c phantom.Case, rng *rand.Rand) map[hand.Web]phantom.WebShape {
	out := map[hand.Web]phantom.WebShape{}
	var others []norms.WebSpan
	for _, web := range []hand.Web{hand.SecondWeb, hand.ThirdWeb, hand.FourthWeb} {
		if web == w.web {
			continue
		}
		o := normal(web, c.Size, l, rng)
		out[web] = o
		others = append(others, norms.WebSpan{Web: web, Span: *exactly(o.Span)})
	}
	own := normal(w.web, c.Size, l, rng)
	own.Index = plane.Ratio(figure(rng, margins[s.Difficulty].index, w.place, "too deep", l.Index))
	own.Shape, own.Turn, own.Flat = w.shape, 0, 0
	form(&own, s.Difficulty, rng)
	if w.shape != arch.V {
		limits := l.spans(w.web, others)
		beside := limits[1]
		if w.width == "too narrow" {
			beside = limits[0]
		}
		own.Span = plane.Millimetre(figure(rng, margins[s.Difficulty].span.of(beside), w.width, "too narrow", limits))
	}
	out[w.web] = own
	return out
}

// spans is from the least to the largest span of a web that is within limits
// beside the others, as package norms has it.
func (l Limits) spans(w hand.Web, others []norms.WebSpan) [2]float64 {
	at := func(span plane.Millimetre) float64 {
		own := norms.WebSpan{Web: w, Span: *exactly(span)}
		return l.table().JudgeSpans(append([]norms.WebSpan{own}, others...))[0][0].Limit
	}
	return [2]float64{at(0), at(1000)}
}

// normal is a web that is within limits: its place in the proximal half of the
// band, the third web a little more distal and narrower.
func normal(w hand.Web, size plane.Millimetre, l Limits, rng *rand.Rand) phantom.WebShape {
	band := l.Index[1] - l.Index[0]
	part, span := 0.2, 0.25
	if w == hand.ThirdWeb {
		part, span = 0.38, 0.215
	}
	s := phantom.WebShape{
		Shape: usualShape(w),
		Index: plane.Ratio(l.Index[0] + band*(part+0.15*rng.Float64())),
		Span:  size * plane.Millimetre(span+0.02*(rng.Float64()-0.5)),
	}
	if s.Shape == arch.U {
		s.Flat = plane.Ratio(0.35 + 0.1*rng.Float64())
	} else {
		s.Turn = plane.Degrees(56 + 8*rng.Float64())
	}
	return s
}
