package agreementchart

import (
	"image"
	"math"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/text"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"

	"ogive/imaging/charting"
)

// Image is the two plots alone as an image of that size in pixels, beside each
// other where it is wide, else over each other; scale is how many pixels of it a
// point of type is.
func (c Chart) Image(size image.Point, scale float64, ink charting.Ink) image.Image {
	return charting.Page{Draw: func(all draw.Canvas, ink charting.Ink) {
		charting.Ground(all, ink)
		const border = 8
		c.plots(draw.Crop(all, border, -border, border, -border), ink)
	}}.Image(size, scale, ink)
}

// plots draws the readings against each other and their differences.
func (c Chart) plots(all draw.Canvas, ink charting.Ink) {
	const gap = 26
	one, two := all, all
	if size := all.Size(); size.X > 1.3*size.Y {
		one.Max.X = all.Min.X + (size.X-gap)/2
		two.Min.X = one.Max.X + gap
	} else {
		one.Min.Y = all.Max.Y - (size.Y-gap)/2
		two.Max.Y = one.Min.Y - gap
	}
	c.scatter(one, ink)
	c.differences(two, ink)
}

// entry is one line of a legend: a sample, drawn about a point, and its words.
type entry struct {
	sample func(c draw.Canvas, ink charting.Ink, at vg.Point)
	words  string
}

// Half a sample's width, and the height of a line of a legend.
const (
	half vg.Length = 10
	line vg.Length = 15
)

// headed writes a title and a legend, and leaves the room below them.
func headed(all draw.Canvas, ink charting.Ink, title string, entries ...entry) draw.Canvas {
	if all.Max.Y-all.Min.Y < 160 {
		return all // too low for words
	}
	s := charting.Aligned(charting.Bold(charting.Letters(ink.Text, charting.TextSize)), text.XLeft, text.YTop)
	for _, words := range charting.Wrapped(title, s, all.Max.X-all.Min.X) {
		all.FillText(s, vg.Point{X: all.Min.X, Y: all.Max.Y}, words)
		all.Max.Y -= line
	}
	all.Max.Y -= 2
	s = charting.Aligned(charting.Letters(ink.Text, charting.SmallSize), text.XLeft, text.YCenter)
	const indent = 2*half + 6
	for _, e := range entries {
		e.sample(all, ink, vg.Point{X: all.Min.X + half, Y: all.Max.Y - line/2})
		for _, words := range charting.Wrapped(e.words, s, all.Max.X-all.Min.X-indent) {
			all.FillText(s, vg.Point{X: all.Min.X + indent, Y: all.Max.Y - line/2 + 1.2}, words)
			all.Max.Y -= line
		}
	}
	all.Max.Y -= 6
	return all
}

// field is the part of a plot between the axes.
type field struct {
	draw.Canvas
	ink  charting.Ink
	x, y func(float64) vg.Length
}

// reach is the range that an axis shows.
type reach struct{ low, high float64 }

// around is a range that holds all values with some room, even where they are one.
func around(values ...float64) reach {
	r := reach{values[0], values[0]}
	for _, v := range values {
		r.low, r.high = min(r.low, v), max(r.high, v)
	}
	margin := 0.07 * (r.high - r.low)
	if margin == 0 {
		margin = max(0.05*max(r.high, -r.high), 0.01)
	}
	return reach{r.low - margin, r.high + margin}
}

// axes draws axes and gives the field between them. What lies below the points is
// drawn by under.
func axes(within draw.Canvas, ink charting.Ink, x, y reach, xName, yName string, under func(field)) field {
	p := plot.New()
	p.BackgroundColor, p.TextHandler = nil, charting.Handler()
	p.X.Min, p.X.Max, p.Y.Min, p.Y.Max = x.low, x.high, y.low, y.high
	for _, a := range []*plot.Axis{&p.X, &p.Y} {
		stroke := draw.LineStyle{Color: ink.Second, Width: 0.8}
		a.LineStyle, a.Tick.LineStyle, a.Tick.Length, a.Padding, a.Label.Padding = stroke, stroke, 4, 0, 4
		a.Tick.Marker = rounds{}
		a.Label.TextStyle = charting.Aligned(charting.Letters(ink.Second, charting.SmallSize), text.XCenter, text.YBottom)
	}
	p.X.Tick.Label = charting.Aligned(charting.Letters(ink.Text, charting.SmallSize), text.XCenter, text.YTop)
	p.Y.Tick.Label = charting.Aligned(charting.Letters(ink.Text, charting.SmallSize), text.XRight, text.YCenter)
	p.X.Label.Text, p.Y.Label.Text = fitting(xName, p.X.Label.TextStyle, within.Max.X-within.Min.X-40), fitting(yName, p.Y.Label.TextStyle, within.Max.Y-within.Min.Y-30)
	f := field{Canvas: p.DataCanvas(within), ink: ink}
	f.x, f.y = p.Transforms(&f.Canvas)
	under(f)
	p.Draw(within)
	return f
}

// fitting shortens a name that would run out of the drawing.
func fitting(name string, s text.Style, room vg.Length) string {
	if s.Width(name) <= room {
		return name
	}
	letters := []rune(name)
	for len(letters) > 1 && s.Width(string(letters)+"…") > room {
		letters = letters[:len(letters)-1]
	}
	return string(letters) + "…"
}

// rounds are ticks at three to nine round numbers.
type rounds struct{}

// Ticks is called by gonum/plot.
func (rounds) Ticks(low, high float64) (out []plot.Tick) {
	const fewest = 3.5 // steps between the ends
	step := math.Pow(10, math.Floor(math.Log10((high-low)/fewest)))
	for _, times := range []float64{5, 2} {
		if (high-low)/(step*times) >= fewest {
			step *= times
			break
		}
	}
	decimals := max(0, -int(math.Floor(math.Log10(step)+1e-9)))
	for n := math.Ceil(low / step); n*step <= high; n++ {
		out = append(out, plot.Tick{Value: n * step, Label: number(n*step, decimals)})
	}
	return out
}

// level draws a line across the field, if it lies within.
func (f field) level(at float64, s draw.LineStyle) {
	if y := f.y(at); f.ContainsY(y) {
		f.StrokeLine2(s, f.Min.X, y, f.Max.X, y)
	}
}

// band fills what lies between two levels.
func (f field) band(low, high float64, paint func(draw.Canvas, []vg.Point)) {
	bottom, top := max(f.y(low), f.Min.Y), min(f.y(high), f.Max.Y)
	if bottom < top {
		paint(f.Canvas, []vg.Point{{X: f.Min.X, Y: bottom}, {X: f.Max.X, Y: bottom}, {X: f.Max.X, Y: top}, {X: f.Min.X, Y: top}})
	}
}

// points draws a circle for each target, through which those behind it show.
func (f field) points(xs, ys []float64) {
	for i := range xs {
		circle(f.Canvas, f.ink, vg.Point{X: f.x(xs[i]), Y: f.y(ys[i])})
	}
}

func circle(c draw.Canvas, ink charting.Ink, at vg.Point) {
	const radius = 3.4
	var p vg.Path
	p.Move(vg.Point{X: at.X + radius, Y: at.Y})
	p.Arc(at, radius, 0, 2*math.Pi)
	p.Close()
	c.SetColor(charting.Faded(ink.Own, 0x50))
	c.Fill(p)
	c.SetLineStyle(draw.LineStyle{Color: ink.Own, Width: 1.1})
	c.Stroke(p)
}
