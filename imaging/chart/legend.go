package chart

import (
	"fmt"
	"strings"

	"gonum.org/v1/plot/text"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"

	"ogive/geometry/followup"
	"ogive/imaging/charting"
)

// entry is one line of the legend: a sample, drawn about a point, and its words.
type entry struct {
	sample func(c draw.Canvas, ink Ink, at vg.Point)
	words  string
}

// half is half the width of a sample.
const half vg.Length = 11

func (c Chart) legend() []entry {
	out := c.pointEntries()
	if _, ok := c.baseline(); ok {
		out = append(out, entry{ring, "baseline of the creep"})
	}
	if len(c.Series.Band) > 0 {
		out = append(out, entry{otherSample, "other hand, same web"})
	}
	if c.Series.Plan != nil {
		out = append(out, entry{planSample, fmt.Sprintf("planned at %.2f", float64(*c.Series.Plan))})
	}
	if n := c.Normal; n != nil {
		out = append(out, entry{normalSample, fmt.Sprintf("normal, %.2f to %.2f (%s)", float64(n.Low), float64(n.High), n.Source)})
	}
	return out
}

// pointEntries name every shape that is drawn, in the order in which they come.
func (c Chart) pointEntries() []entry {
	type look struct {
		differs string
		before  bool
	}
	var out []entry
	seen := map[look]bool{}
	for _, p := range c.Series.Points {
		l := look{Differences(p.Differs), p.Before}
		if seen[l] {
			continue
		}
		seen[l] = true
		out = append(out, entry{pointSample(p), pointWords(l.differs, l.before)})
	}
	return out
}

func pointWords(differs string, before bool) string {
	words := "this hand"
	if before {
		words = "before the release"
	}
	if differs != "" {
		words += ", " + differs
	}
	return words
}

func pointSample(p followup.Point) func(draw.Canvas, Ink, vg.Point) {
	return func(c draw.Canvas, ink Ink, at vg.Point) { shapeOf(p.Differs).mark(c, ink, at, p.Before) }
}

func otherSample(c draw.Canvas, ink Ink, at vg.Point) {
	c.FillPolygon(charting.Faded(ink.Other, 0x38), box(at, half, 5))
	c.StrokeLine2(draw.LineStyle{Color: ink.Other, Width: 1.1}, at.X-half, at.Y, at.X+half, at.Y)
	c.StrokeLine2(draw.LineStyle{Color: ink.Other, Width: 1.6}, at.X, at.Y-5, at.X, at.Y+5)
}

func planSample(c draw.Canvas, ink Ink, at vg.Point) {
	c.StrokeLine2(draw.LineStyle{Color: ink.Text, Width: 1.2, Dashes: dashed}, at.X-half, at.Y, at.X+half, at.Y)
}

func normalSample(c draw.Canvas, ink Ink, at vg.Point) {
	c.FillPolygon(ink.Normal, box(at, half, 5))
	for _, dy := range []vg.Length{-5, 5} {
		c.StrokeLine2(draw.LineStyle{Color: ink.Second, Width: 0.9, Dashes: dotted}, at.X-half, at.Y+dy, at.X+half, at.Y+dy)
	}
}

func box(at vg.Point, w, h vg.Length) []vg.Point {
	return []vg.Point{{X: at.X - w, Y: at.Y - h}, {X: at.X + w, Y: at.Y - h}, {X: at.X + w, Y: at.Y + h}, {X: at.X - w, Y: at.Y + h}}
}

// rowHeight is that of one row of the legend.
const rowHeight vg.Length = 19

// rows deals the legend out on rows no wider than width.
func rows(all []entry, s text.Style, width vg.Length) [][]entry {
	var out [][]entry
	x := width + 1
	for _, e := range all {
		w := e.width(s)
		if x+w > width {
			out, x = append(out, nil), 0
		}
		out[len(out)-1] = append(out[len(out)-1], e)
		x += w
	}
	return out
}

func (e entry) width(s text.Style) vg.Length { return 2*half + 7 + s.Width(e.words) + 20 }

// drawLegend writes the rows downwards from the top left corner.
func drawLegend(c draw.Canvas, ink Ink, rows [][]entry, from vg.Point) {
	s := charting.Aligned(charting.Letters(ink.Text, charting.TextSize), text.XLeft, text.YCenter)
	for i, row := range rows {
		at := vg.Point{X: from.X + half, Y: from.Y - rowHeight*(vg.Length(i)+0.5)}
		for _, e := range row {
			e.sample(c, ink, at)
			c.FillText(s, vg.Point{X: at.X + half + 7, Y: at.Y + 1.5}, e.words)
			at.X += e.width(s)
		}
	}
}

// notes are the small print: what limits the chart, where the grades come from,
// and the caution.
func (c Chart) notes(caution string) []string {
	var out []string
	for _, p := range c.Series.Points {
		if len(p.Differs) > 0 {
			out = append(out, "A change between sittings that differ in view, scale or observer may come from that and not from the web.")
			break
		}
	}
	if _, ok := c.baseline(); ok {
		out = append(out, "Grades after Withey et al. 2001, by thirds of the way from the baseline to the PIP joints (the thirds from memory).")
	}
	return []string{strings.Join(append(out, "Bars and bands are 95 % intervals."), " "), caution}
}
