package rounds

import (
	"math"
	"slices"

	"ogive/geometry/arch"
	"ogive/geometry/norms"
	"ogive/geometry/plane"
	"ogive/geometry/scoring"
)

// aside is how far beside the middle of the web a normal crown may be put, as a
// part of the length MCP to PIP: less than half the opening of a normal web. This
// project's own.
const aside = 0.1

// judgeByEye scores the answers to every question of the picture.
func (r *Result) judgeByEye(p *Picture, a Answer, l Limits) {
	r.Exact, r.Longer = p.Truth.Exact, p.longer()
	web, _ := p.Truth.Web(p.Web)
	for _, q := range p.Questions {
		if q.Of == Crown {
			r.Judged = append(r.Judged, judgeCrown(p.Truth, q, a.Crown, l))
			continue
		}
		r.Judged = append(r.Judged, judged(web, q.Of, a.Choices[q.Of], l))
	}
}

// judged holds one finding or shape against the truth of the web.
func judged(web WebTruth, of Asked, given string, l Limits) Judged {
	j := Judged{Of: of, Web: web.Web, Given: given, Counted: true}
	if of == Shape {
		j.True = web.Shape.String()
		for _, s := range web.ShapeAlso {
			if s != web.Shape {
				j.Also = append(j.Also, s.String())
			}
		}
	} else if v, ok := web.verdicts[of]; ok {
		j.True, j.Limit = v.Finding, v.Limit
		e := web.figure(of)
		j.Figure, j.U95 = e.Value, e.U95
		if !v.Certain {
			j.Also = allowed(of, v, e, l)
		}
	} else {
		j.Counted = false
	}
	j.Right = j.Counted && (given == j.True || slices.Contains(j.Also, given)) && given != ""
	return j
}

// figure is what the question is about, in the unit of its limit.
func (w WebTruth) figure(of Asked) plane.Estimate[float64] {
	switch {
	case of == Place && w.Index != nil:
		return plane.Estimate[float64]{Value: float64(w.Index.Value), U95: float64(w.Index.U95)}
	case of == Width && w.Span != nil:
		return plane.Estimate[float64]{Value: float64(w.Span.Value), U95: float64(w.Span.U95)}
	case of == Slope && w.Slope != nil:
		return plane.Estimate[float64]{Value: w.Slope.Value.Degrees(), U95: w.Slope.U95.Degrees()}
	}
	return plane.Estimate[float64]{}
}

// allowed are the other findings that the uncertainty of the figure reaches into.
// The limits of a span are uncertain themselves: there only the finding on the other
// side of the nearest limit is allowed.
func allowed(of Asked, v norms.Verdict, e plane.Estimate[float64], l Limits) []string {
	low, within, high := findings[of][0], findings[of][1], findings[of][2]
	if of == Width {
		switch {
		case v.Finding != within:
			return []string{within}
		case e.Value < v.Limit:
			return []string{high}
		}
		return []string{low}
	}
	band := l.Index
	if of == Slope {
		band = l.Slope
	}
	var also []string
	for _, region := range []struct {
		finding  string
		from, to float64
	}{{low, math.Inf(-1), band[0]}, {within, band[0], band[1]}, {high, band[1], math.Inf(1)}} {
		if region.finding != v.Finding && e.High() > region.from && e.Low() < region.to {
			also = append(also, region.finding)
		}
	}
	return also
}

// judgeCrown scores where the crown of a normal web would be put. The normal
// values give a band and no point: anywhere in it is right, if it is not far aside
// of the middle of the web.
func judgeCrown(t Truth, q Question, click *plane.PixelPoint, l Limits) Judged {
	j := Judged{Of: Crown, Web: q.Web, Counted: true, True: norms.WithinLimits}
	f, ok := t.frame(q.Web)
	if !ok || click == nil {
		return j
	}
	at := t.Plane.Position(*click)
	o := scoring.Beyond(f, plane.Ratio(l.Index[0]), plane.Ratio(l.Index[1]), at)
	if !bounded(float64(o.Distal), float64(o.Ulnar)) {
		return j
	}
	j.Off, j.Figure = off(o), float64(f.Index(at))
	switch {
	case o.Distal < 0:
		j.Given, j.Limit = "too deep", l.Index[0]
	case o.Distal > 0:
		j.Given, j.Limit = "too shallow", l.Index[1]
	case max(o.Ulnar, -o.Ulnar) > aside*f.Phalanx():
		j.Given = "aside"
	default:
		j.Given, j.Right = norms.WithinLimits, true
	}
	return j
}

// shapeNames are the shapes in the order in which they are offered.
func shapeNames() []string {
	return []string{arch.V.String(), arch.Gothic.String(), arch.Round.String(), arch.U.String()}
}
