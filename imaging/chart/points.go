package chart

import (
	"slices"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"

	"ogive/geometry/followup"
	"ogive/imaging/wording"
)

// points draws the sittings of the operated hand: a line through those that can
// be compared, then intervals, then the points themselves.
func (f field) points(c Chart) {
	var joined []vg.Point
	for _, p := range c.Series.Points {
		if !p.Before && p.View == c.view() {
			joined = append(joined, f.at(p.Months, p.Index.Value))
		}
	}
	f.StrokeLines(draw.LineStyle{Color: faded(f.ink.Own, 0xb0), Width: 1.2}, joined)
	bar := draw.LineStyle{Color: f.ink.Own, Width: 1.4}
	for _, p := range c.Series.Points {
		low, high := f.at(p.Months, p.Index.Low()), f.at(p.Months, p.Index.High())
		f.StrokeLine2(bar, low.X, low.Y, high.X, high.Y)
		for _, end := range []vg.Point{low, high} {
			f.StrokeLine2(bar, end.X-3.5, end.Y, end.X+3.5, end.Y)
		}
	}
	for i, p := range c.Series.Points {
		at := f.at(p.Months, p.Index.Value)
		shapeOf(p.Differs).mark(f.Canvas, f.ink, at, p.Before)
		if i == c.Series.Baseline {
			ring(f.Canvas, f.ink, at)
		}
	}
}

// labels writes the index beside each point where there is room, the latest
// first, since it is asked for most.
func (f field) labels(c Chart) {
	var taken []vg.Rectangle
	for _, p := range c.Series.Points {
		taken = append(taken, vg.Rectangle{
			Min: f.at(p.Months, p.Index.Low()).Sub(vg.Point{X: radius}), Max: f.at(p.Months, p.Index.High()).Add(vg.Point{X: radius}),
		})
	}
	s := letters(f.ink.Text, smallSize)
	for _, p := range slices.Backward(c.Series.Points) {
		label := wording.Ratio(p.Index)
		size := vg.Point{X: s.Width(label), Y: smallSize}
		if box, ok := f.room(p, size, taken); ok {
			taken = append(taken, box)
			f.FillPolygon(faded(f.ink.Ground, 0xb8), []vg.Point{box.Min, {X: box.Max.X, Y: box.Min.Y}, box.Max, {X: box.Min.X, Y: box.Max.Y}})
			f.FillText(s, vg.Point{X: box.Min.X, Y: box.Min.Y + 1.5}, label)
		}
	}
}

// room is a place for a label of that size near a point: above its interval,
// below it, or beside it.
func (f field) room(p followup.Point, size vg.Point, taken []vg.Rectangle) (vg.Rectangle, bool) {
	at := f.at(p.Months, p.Index.Value)
	x, y := at.X, at.Y
	low, high := f.at(p.Months, p.Index.Low()).Y, f.at(p.Months, p.Index.High()).Y
	const gap = radius + 7
	centred := min(max(x-size.X/2, f.Min.X+1), f.Max.X-1-size.X)
	for _, corner := range []vg.Point{
		{X: centred, Y: max(high, y+gap) + 3},
		{X: centred, Y: min(low, y-gap) - 3 - size.Y},
		{X: x + gap, Y: y - size.Y/2},
		{X: x - gap - size.X, Y: y - size.Y/2},
	} {
		box := vg.Rectangle{Min: corner, Max: corner.Add(size)}
		free := !slices.ContainsFunc(taken, func(t vg.Rectangle) bool { return overlap(box, t) })
		if free && f.Contains(box.Min) && f.Contains(box.Max) {
			return box, true
		}
	}
	return vg.Rectangle{}, false
}

func overlap(a, b vg.Rectangle) bool {
	return a.Min.X < b.Max.X && b.Min.X < a.Max.X && a.Min.Y < b.Max.Y && b.Min.Y < a.Max.Y
}
