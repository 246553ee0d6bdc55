package round

import (
	"image/color"
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ogive/imaging/rounds"
	"ogive/ui/look"
)

// curve is a small chart of an observer's score over the rounds of one kind, each
// with its interval. Rounds of pictures seen before are hollow.
type curve struct {
	card
	title, legend *widget.Label
	chart         *scoreChart
}

func newCurve() *curve {
	c := &curve{title: strong(""), legend: caption(""), chart: newScoreChart()}
	c.build([]fyne.CanvasObject{c.title, c.chart, c.legend})
	c.ExtendBaseWidget(c)
	c.Hide()
	return c
}

// mostPoints is how many rounds the chart has room for; the latest are shown.
const mostPoints = 24

// show shows the rounds in the order of time.
func (c *curve) show(points []rounds.Point, kind rounds.Kind) {
	points = points[max(0, len(points)-mostPoints):]
	visible(c, len(points) > 0)
	if len(points) == 0 {
		return
	}
	c.title.SetText(lang.L("{{.Kind}}: right answers, round by round", map[string]any{"Kind": kindWords(kind)}))
	text := lang.L("The bars are intervals at 95 per cent.")
	for _, p := range points {
		if p.Repeat {
			text += " " + lang.L("A hollow square: pictures seen before.")
			break
		}
	}
	c.legend.SetText(text)
	c.chart.points = points
	c.chart.Refresh()
	c.Refresh()
}

// scoreChart draws the points.
type scoreChart struct {
	widget.BaseWidget
	points []rounds.Point
}

func newScoreChart() *scoreChart {
	c := &scoreChart{}
	c.ExtendBaseWidget(c)
	return c
}

// CreateRenderer is called by Fyne.
func (c *scoreChart) CreateRenderer() fyne.WidgetRenderer { return &scoreRenderer{chart: c} }

type scoreRenderer struct {
	chart   *scoreChart
	objects []fyne.CanvasObject
}

const chartHeight, chartSide, chartFoot, chartTop = 150, 46, 24, 8

func (r *scoreRenderer) MinSize() fyne.Size           { return fyne.NewSize(160, chartHeight) }
func (r *scoreRenderer) Objects() []fyne.CanvasObject { return r.objects }
func (r *scoreRenderer) Destroy()                     {}
func (r *scoreRenderer) Layout(size fyne.Size)        { r.draw(size) }

func (r *scoreRenderer) Refresh() {
	r.draw(r.chart.Size())
	canvas.Refresh(r.chart)
}

func (r *scoreRenderer) draw(size fyne.Size) {
	r.objects = nil
	if size.Width < 2*chartSide {
		return
	}
	height := func(part float64) float32 {
		return chartTop + float32(1-part)*(size.Height-chartTop-chartFoot)
	}
	for _, percent := range []int{0, 50, 100} {
		y := height(float64(percent) / 100)
		r.line(look.Colour(look.Hairline), 1, chartSide, y, size.Width-8, y)
		r.text(fixed(float64(percent), 0)+" %", chartSide-6, y-9, fyne.TextAlignTrailing)
	}
	n := len(r.chart.points)
	step := (size.Width - chartSide - 28) / float32(max(n, 6))
	last := fyne.Position{}
	for i, p := range r.chart.points {
		x := chartSide + 14 + step*(float32(i)+0.5)
		r.text(fixed(float64(i+1), 0), x, size.Height-chartFoot+3, fyne.TextAlignCenter)
		if math.IsNaN(p.Score.Value) {
			continue
		}
		at := fyne.NewPos(x, height(p.Score.Value))
		if last != (fyne.Position{}) {
			r.line(look.Colour(look.Accent), 1.5, last.X, last.Y, at.X, at.Y)
		}
		r.line(look.Colour(look.SecondInk), 1.5, x, height(p.Score.Low), x, height(p.Score.High))
		last = at
	}
	for i, p := range r.chart.points {
		if !math.IsNaN(p.Score.Value) {
			r.point(chartSide+14+step*(float32(i)+0.5), height(p.Score.Value), p.Repeat)
		}
	}
}

func (r *scoreRenderer) point(x, y float32, repeat bool) {
	const half = 5
	ink := look.Colour(look.Accent)
	if repeat {
		s := canvas.NewRectangle(look.Colour(look.Card))
		s.StrokeColor, s.StrokeWidth = ink, 2
		s.Move(fyne.NewPos(x-half, y-half))
		s.Resize(fyne.NewSquareSize(2 * half))
		r.objects = append(r.objects, s)
		return
	}
	d := canvas.NewCircle(ink)
	d.Move(fyne.NewPos(x-half, y-half))
	d.Resize(fyne.NewSquareSize(2 * half))
	r.objects = append(r.objects, d)
}

func (r *scoreRenderer) line(ink color.Color, thick, x1, y1, x2, y2 float32) {
	l := canvas.NewLine(ink)
	l.StrokeWidth, l.Position1, l.Position2 = thick, fyne.NewPos(x1, y1), fyne.NewPos(x2, y2)
	r.objects = append(r.objects, l)
}

func (r *scoreRenderer) text(words string, x, y float32, align fyne.TextAlign) {
	t := canvas.NewText(words, look.Colour(look.SecondInk))
	t.TextSize = look.Size(theme.SizeNameCaptionText)
	w := t.MinSize().Width
	switch align {
	case fyne.TextAlignTrailing:
		x -= w
	case fyne.TextAlignCenter:
		x -= w / 2
	}
	t.Move(fyne.NewPos(x, y))
	r.objects = append(r.objects, t)
}
