// Package reading computes the figures of every marked web, each with its
// expanded uncertainty at 95 per cent, and the verdicts on them.
//
//	fit, err := reference.Fit(camera, marks.ClickSD)
//	r := reading.Read(marks, fit, norms)
//	r.Webs[0].Index // *plane.Estimate[plane.Ratio], nil where it can't be told
//
// Webs are read from their traced border (hand.WebMarks.Edge); a web that has
// only seeds must be traced first, else its index and depth are told from the
// clicked crown, and nothing else. Uncertainty is found by propagating
// distributions (JCGM 101:2008): every figure is computed again for a few
// hundred arches, joints and maps that are as likely as the best ones, and U95
// is the distance from the figure that 95 per cent of them keep to.
package reading

import (
	"fmt"

	"ogive/geometry/arch"
	"ogive/geometry/hand"
	"ogive/geometry/norms"
	"ogive/geometry/plane"
	"ogive/geometry/scale"
)

// Read computes everything that m says on the plane of fit, judged by table.
// What can't be computed is left out, with a warning that says why.
func Read(m hand.Marks, fit scale.Fit, table norms.Table) Reading {
	return new(Reader).Read(m, fit, table)
}

func readAll(m hand.Marks, fit scale.Fit, table norms.Table, from *Reader) Reading {
	r := Reading{
		Side: m.Side, View: m.View, Method: fit.Method,
		PerPixel: fit.PerPixel(middle(m)),
		Warnings: append([]string(nil), fit.Warnings...),
		Usual:    append([]string(nil), fit.Usual...),
	}
	for _, w := range m.Webs {
		r.Webs = append(r.Webs, readWeb(m, w, fit, table, from))
	}
	for _, j := range m.Junctions {
		readJunction(r.web(j.Web), j, m, fit, table)
	}
	judgeSpans(r.Webs, table)
	if share := float64(r.PerPixel.U95 / r.PerPixel.Value); fit.Method != scale.ByCard && share > mostTilted {
		r.Warnings = append(r.Warnings, fmt.Sprintf("At the webs lengths are known to %.2g per cent only, because the ruler does not show how the hand is tilted: photograph it from farther away and straight above with the ruler close to the webs, or lay a card beside it.", 100*share))
	}
	if r.PerPixel.Value > coarsest {
		r.Warnings = append(r.Warnings, fmt.Sprintf("A pixel is %.2f mm: the photograph is too small to measure a web well. Take it closer, or send the original instead of a reduced copy.", r.PerPixel.Value))
	}
	return r
}

// mostTilted is the share of a length that unseen tilt may leave unknown before
// it is worth a warning (this project's own limit; on 34
// phantoms with a ruler an allowed tilt of 10 degrees left 4 to 7 per cent unknown).
const mostTilted = 0.12

// coarsest is the size of a pixel from which the borders of an infant's web,
// some 4 mm apart, are too few pixels apart to show a shape (this project's own
// limit).
const coarsest plane.Millimetre = 0.2

// web is the reading of w, a new one if there is none yet.
func (r *Reading) web(w hand.Web) *Web {
	for i := range r.Webs {
		if r.Webs[i].Web == w {
			return &r.Webs[i]
		}
	}
	r.Webs = append(r.Webs, Web{Web: w})
	return &r.Webs[len(r.Webs)-1]
}

// readWeb reads one traced web.
func readWeb(m hand.Marks, w hand.WebMarks, fit scale.Fit, table norms.Table, from *Reader) Web {
	out := Web{Web: w.Web, Edge: w.Edge}
	if len(w.Edge) == 0 {
		readClickedCrown(&out, m, w, fit, table)
		return out
	}
	if old, ok := from.again(m, w, fit); ok {
		old.Verdicts = judgeIndex(m.View, old, table)
		return old
	}
	border := fit.Best.Positions(w.Edge)
	pixel := fit.Best.PerPixel(w.Edge[len(w.Edge)/2])
	fitted, err := from.fit(w, fit.Best, border, pixel)
	if err != nil {
		out.warn("No arch: " + err.Error() + ".")
		return out
	}
	t := trial{marks: m, joints: jointsOf(m, w.Web), web: w.Web, fit: fit, back: fit.Best.Back(), fitted: fitted, trace: newTrace(border, fitted), pixel: pixel}
	t.fill(&out)
	from.remember(m, w, fit, fitted, out)
	out = from.last[w.Web].copied()
	out.Verdicts = judgeIndex(m.View, out, table)
	return out
}

func judgeIndex(view hand.View, w Web, table norms.Table) []norms.Verdict {
	if w.Index == nil {
		return nil
	}
	return table.JudgeIndex(view, *w.Index)
}

// judgeSpans adds the verdicts on the spans, each web against the others.
func judgeSpans(webs []Web, table norms.Table) {
	var spans []norms.WebSpan
	var at []int
	for i, w := range webs {
		if w.Span != nil && w.Shape != arch.V {
			spans = append(spans, norms.WebSpan{Web: w.Web, Span: *w.Span, Shallow: norms.Shallow(w.Verdicts)})
			at = append(at, i)
		}
	}
	for i, verdicts := range table.JudgeSpans(spans) {
		webs[at[i]].Verdicts = append(webs[at[i]].Verdicts, verdicts...)
	}
}

func (w *Web) warn(text string) { w.Warnings = append(w.Warnings, text) }

func (w *Web) lack(text string) { w.Lacks = append(w.Lacks, text) }

// middle is the middle of everything that is marked for the webs, where the
// size of a pixel is stated.
func middle(m hand.Marks) plane.PixelPoint {
	var sum plane.Vector[plane.Pixel]
	n := 0.0
	add := func(ps ...plane.PixelPoint) {
		for _, p := range ps {
			sum, n = sum.Add(p.Sub(plane.PixelPoint{})), n+1
		}
	}
	for _, w := range m.Webs {
		add(w.Edge...)
	}
	for _, j := range m.Junctions {
		add(j.Line...)
	}
	if n == 0 {
		for _, d := range hand.Digits {
			for _, j := range hand.Joints {
				if p, ok := m.Joint(d, j); ok {
					add(p)
				}
			}
		}
	}
	if n == 0 {
		return plane.PixelPoint{}
	}
	return plane.PixelPoint{}.Add(sum.Scale(1 / n))
}
