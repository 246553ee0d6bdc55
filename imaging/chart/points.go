package chart

import (
	"slices"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"

	"ogive/imaging/charting"
	"ogive/imaging/wording"
)

// placed is where a point and the ends of its interval are drawn.
type placed struct{ at, low, high vg.Point }

// apart is the distance between points of one day, which would hide each other.
const apart vg.Length = 2*radius + 2

// place is where the points of the series are drawn, those of one day side by
// side.
func (f field) place(c Chart) []placed {
	points := c.Series.Points
	out := make([]placed, len(points))
	for from := 0; from < len(points); {
		to := from
		for to < len(points) && points[to].Day == points[from].Day {
			to++
		}
		for i := from; i < to; i++ {
			p := points[i]
			aside := vg.Point{X: apart * vg.Length(float64(i-from)-float64(to-from-1)/2)}
			out[i] = placed{
				at: f.at(p.Months, p.Index.Value).Add(aside), low: f.at(p.Months, p.Index.Low()).Add(aside), high: f.at(p.Months, p.Index.High()).Add(aside),
			}
		}
		from = to
	}
	return out
}

// points draws the sittings of the operated hand: a line through those that can
// be compared, then intervals, then the points themselves.
func (f field) points(c Chart, where []placed) {
	var joined []vg.Point
	for i, p := range c.Series.Points {
		if !p.Before && p.View == c.view() {
			joined = append(joined, where[i].at)
		}
	}
	f.StrokeLines(draw.LineStyle{Color: charting.Faded(f.ink.Own, 0xb0), Width: 1.2}, joined)
	bar := draw.LineStyle{Color: f.ink.Own, Width: 1.4}
	for _, w := range where {
		f.StrokeLine2(bar, w.low.X, w.low.Y, w.high.X, w.high.Y)
		for _, end := range []vg.Point{w.low, w.high} {
			f.StrokeLine2(bar, end.X-3.5, end.Y, end.X+3.5, end.Y)
		}
	}
	for i, p := range c.Series.Points {
		shapeOf(p.Differs).mark(f.Canvas, f.ink, where[i].at, p.Before)
		if i == c.Series.Baseline {
			ring(f.Canvas, f.ink, where[i].at)
		}
	}
}

// labels writes the index beside each point where there is room, the latest
// first, since it is asked for most.
func (f field) labels(c Chart, where []placed) {
	var taken []vg.Rectangle
	for _, w := range where {
		taken = append(taken, vg.Rectangle{Min: w.low.Sub(vg.Point{X: radius}), Max: w.high.Add(vg.Point{X: radius})})
	}
	s := charting.Letters(f.ink.Text, charting.SmallSize)
	for i, p := range slices.Backward(c.Series.Points) {
		label := wording.Ratio(p.Index)
		if box, ok := f.room(where[i], vg.Point{X: s.Width(label), Y: charting.SmallSize}, taken); ok {
			taken = append(taken, box)
			f.FillPolygon(charting.Faded(f.ink.Ground, 0xb8), []vg.Point{box.Min, {X: box.Max.X, Y: box.Min.Y}, box.Max, {X: box.Min.X, Y: box.Max.Y}})
			f.FillText(s, vg.Point{X: box.Min.X, Y: box.Min.Y + 1.5}, label)
		}
	}
}

// room is a place for a label of that size near a point: above its interval,
// below it, or beside it.
func (f field) room(w placed, size vg.Point, taken []vg.Rectangle) (vg.Rectangle, bool) {
	const gap = radius + 7
	x, y := w.at.X, w.at.Y
	centred := min(max(x-size.X/2, f.Min.X+1), f.Max.X-1-size.X)
	for _, corner := range []vg.Point{
		{X: centred, Y: max(w.high.Y, y+gap) + 3},
		{X: centred, Y: min(w.low.Y, y-gap) - 3 - size.Y},
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
