package timeline

import (
	"image"
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ogive/imaging/chart"
	"ogive/ui/flow"
	"ogive/ui/look"
)

// plot is the chart on the screen. It is drawn beside Fyne; until a new drawing
// is ready the last one is shown, stretched.
type plot struct {
	widget.BaseWidget
	room  *Room
	chart *chart.Chart

	picture *canvas.Image
	ring    *canvas.Circle
	frame   *canvas.Rectangle // while keys go here

	drawn   drawing
	spots   []fyne.Position
	busy    bool // a drawing is being made
	marked  int
	focused bool
}

// drawing is what a picture was drawn for.
type drawing struct {
	chart *chart.Chart
	size  image.Point
	scale float64
	ink   chart.Ink
}

func newPlot(r *Room) *plot {
	p := &plot{room: r, marked: -1}
	p.picture = &canvas.Image{FillMode: canvas.ImageFillStretch}
	p.ring, p.frame = canvas.NewCircle(color.Transparent), canvas.NewRectangle(color.Transparent)
	p.ring.StrokeWidth, p.frame.StrokeWidth = 2, 2
	p.ring.Hide()
	p.ExtendBaseWidget(p)
	return p
}

func (p *plot) show(c chart.Chart) {
	p.chart, p.spots = &c, nil
	p.mark(-1)
	p.draw()
}

// wanted is the drawing that fits the widget as it stands.
func (p *plot) wanted() (drawing, bool) {
	c := fyne.CurrentApp().Driver().CanvasForObject(p)
	if c == nil || p.chart == nil || p.Size().Width < 1 || p.Size().Height < 1 {
		return drawing{}, false
	}
	k := c.Scale()
	return drawing{
		chart: p.chart,
		size:  image.Pt(int(p.Size().Width*k), int(p.Size().Height*k)),
		scale: float64(k) * typeScale(p.Size().Width),
		ink:   ink(),
	}, true
}

// typeScale is how large the chart's type is drawn: larger where there is room.
func typeScale(width float32) float64 { return float64(min(max(width/640, 1.05), 1.35)) }

// draw has the chart drawn if the last drawing does not fit any more. While one
// is being made no other is begun: it looks again when it is done.
func (p *plot) draw() {
	want, ok := p.wanted()
	if !ok || p.busy || want == p.drawn {
		return
	}
	p.busy = true
	p.room.beside(func() func() {
		img, spots := want.chart.Image(want.size, want.scale, want.ink)
		return func() {
			p.busy, p.drawn = false, want
			p.take(img, spots)
			p.draw()
		}
	})
}

func (p *plot) take(img image.Image, spots []chart.Spot) {
	if p.drawn.chart != p.chart {
		return
	}
	k := p.Size().Width / float32(p.drawn.size.X)
	p.spots = make([]fyne.Position, len(spots))
	for _, s := range spots {
		p.spots[s.Point] = fyne.NewPos(float32(s.X)*k, float32(s.Y)*k)
	}
	p.picture.Image = img
	p.picture.Refresh()
	p.place()
}

// mark puts the ring around a point, around none for -1.
func (p *plot) mark(i int) {
	p.marked = i
	p.place()
}

func (p *plot) place() {
	const across = 28
	shown := p.marked >= 0 && p.marked < len(p.spots)
	if shown {
		p.ring.Resize(fyne.NewSquareSize(across))
		p.ring.Move(p.spots[p.marked].SubtractXY(across/2, across/2))
	}
	flow.Visible(p.ring, shown)
	p.ring.Refresh()
}

// CreateRenderer is called by Fyne.
func (p *plot) CreateRenderer() fyne.WidgetRenderer {
	r := &plotRenderer{p}
	r.colour()
	return r
}

type plotRenderer struct{ p *plot }

func (r *plotRenderer) Layout(size fyne.Size) {
	r.p.picture.Resize(size)
	r.p.frame.Resize(size)
	r.p.draw()
}

func (r *plotRenderer) MinSize() fyne.Size { return fyne.NewSize(360, 280) }

func (r *plotRenderer) Refresh() {
	r.colour()
	r.p.draw()
}

func (r *plotRenderer) colour() {
	r.p.ring.StrokeColor = look.Colour(theme.ColorNameForeground)
	r.p.frame.StrokeColor = color.Transparent
	if r.p.focused {
		r.p.frame.StrokeColor = look.Colour(look.Accent)
	}
	r.p.ring.Refresh()
	r.p.frame.Refresh()
}

func (r *plotRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.p.picture, r.p.frame, r.p.ring}
}

func (r *plotRenderer) Destroy() {}

// ink is the colours of the theme in use. The other hand's and the normal band's
// are the chart's own, those of paper on a light ground.
func ink() chart.Ink {
	i := chart.Paper
	if dark(look.Colour(theme.ColorNameBackground)) {
		i = chart.Chalk
	}
	i.Ground = look.Colour(theme.ColorNameBackground)
	i.Text, i.Second = look.Colour(theme.ColorNameForeground), look.Colour(look.SecondInk)
	i.Faint, i.Own = look.Colour(look.Hairline), look.Colour(look.Accent)
	return i
}

func dark(c color.Color) bool {
	return color.GrayModel.Convert(c).(color.Gray).Y < 128
}
