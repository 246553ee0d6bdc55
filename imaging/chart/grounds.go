package chart

import (
	"fmt"

	"gonum.org/v1/plot/text"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"

	"ogive/geometry/plane"
	"ogive/imaging/charting"
)

// field is the part of the drawing between the axes.
type field struct {
	draw.Canvas
	ink  Ink
	x, y func(float64) vg.Length
}

// at is where an index lies, held within the field.
func (f field) at(months float64, index plane.Ratio) vg.Point {
	return vg.Point{X: f.x(months), Y: min(max(f.y(float64(index)), f.Min.Y), f.Max.Y)}
}

func (f field) level(index plane.Ratio, s draw.LineStyle) {
	y := f.y(float64(index))
	if f.ContainsY(y) {
		f.StrokeLine2(s, f.Min.X, y, f.Max.X, y)
	}
}

var (
	dotted = []vg.Length{1.2, 3.2}
	dashed = []vg.Length{7, 4}
)

func (f field) normal(n *Normal) {
	if n == nil {
		return
	}
	low, high := max(f.y(float64(n.Low)), f.Min.Y), min(f.y(float64(n.High)), f.Max.Y)
	f.FillPolygon(f.ink.Normal, []vg.Point{{X: f.Min.X, Y: low}, {X: f.Max.X, Y: low}, {X: f.Max.X, Y: high}, {X: f.Min.X, Y: high}})
	edge := draw.LineStyle{Color: f.ink.Second, Width: 0.9, Dashes: dotted}
	f.level(n.Low, edge)
	f.level(n.High, edge)
}

// operation is the upright line at month zero.
func (f field) operation(name string) {
	x := f.x(0)
	f.StrokeLine2(draw.LineStyle{Color: f.ink.Faint, Width: 1}, x, f.Min.Y, x, f.Max.Y)
	s := charting.Aligned(charting.Letters(f.ink.Second, charting.SmallSize), text.XLeft, text.YBottom)
	f.FillText(s, vg.Point{X: x + 4, Y: f.Min.Y + 4}, name)
}

// grades draws the thirds of the way from the baseline to the PIP joints, and
// names in the margin the grade that lies between them.
func (f field) grades(c Chart) {
	at, ok := c.baseline()
	if !ok || at.Index.Value >= 1 {
		return
	}
	third := func(k int) plane.Ratio { return at.Index.Value + (1-at.Index.Value)*plane.Ratio(k)/3 }
	s := draw.LineStyle{Color: f.ink.Faint, Width: 0.9}
	names := charting.Aligned(charting.Letters(f.ink.Second, charting.SmallSize), text.XLeft, text.YCenter)
	for k := range 4 {
		f.level(third(k), s)
		if y := f.y(float64(third(k))); k == 3 {
			if f.ContainsY(y) {
				f.FillText(names, vg.Point{X: f.Max.X + 8, Y: y}, "PIP joints")
			}
			break
		}
		low, high := max(f.y(float64(third(k))), f.Min.Y), min(f.y(float64(third(k+1))), f.Max.Y)
		if high-low > charting.SmallSize {
			f.FillText(names, vg.Point{X: f.Max.X + 8, Y: (low + high) / 2}, fmt.Sprintf("grade %d", k+2))
		}
		f.StrokeLine2(s, f.Max.X, low, f.Max.X+6, low)
	}
}

// other draws where the other hand's web lies, sitting by sitting.
func (f field) other(c Chart) {
	band := c.Series.Band
	var upper, lower, middle []vg.Point
	for _, b := range band {
		upper = append(upper, f.at(b.Months, b.Index.High()))
		lower = append(lower, f.at(b.Months, b.Index.Low()))
		middle = append(middle, f.at(b.Months, b.Index.Value))
	}
	if len(band) > 1 {
		around := append([]vg.Point{}, upper...)
		for i := range lower {
			around = append(around, lower[len(lower)-1-i])
		}
		f.FillPolygon(charting.Faded(f.ink.Other, 0x38), around)
		f.StrokeLines(draw.LineStyle{Color: f.ink.Other, Width: 1.1}, middle)
	}
	bar := draw.LineStyle{Color: f.ink.Other, Width: 1.6}
	for i, m := range middle {
		f.StrokeLine2(bar, m.X, lower[i].Y, m.X, upper[i].Y)
		f.StrokeLine2(bar, m.X-4, m.Y, m.X+4, m.Y)
	}
}

func (f field) plan(p *plane.Ratio) {
	if p != nil {
		f.level(*p, draw.LineStyle{Color: f.ink.Text, Width: 1.2, Dashes: dashed})
	}
}
