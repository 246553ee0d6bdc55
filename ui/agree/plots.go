package agree

import (
	"image"
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ogive/imaging/agreementchart"
	"ogive/imaging/charting"
	"ogive/ui/look"
)

// plots is the two plots on the screen. They are drawn beside Fyne; until a new
// drawing is ready the last one is shown, stretched.
type plots struct {
	widget.BaseWidget
	room    *Room
	chart   agreementchart.Chart
	number  int // counts the charts shown
	picture *canvas.Image
	drawn   drawing
	busy    bool
}

// drawing is what a picture was drawn for.
type drawing struct {
	number int
	size   image.Point
	scale  float64
	ink    charting.Ink
}

func newPlots(r *Room) *plots {
	p := &plots{room: r, picture: &canvas.Image{FillMode: canvas.ImageFillStretch}}
	p.ExtendBaseWidget(p)
	return p
}

func (p *plots) show(c agreementchart.Chart) {
	p.chart = c
	p.number++
	p.draw()
}

// wanted is the drawing that fits the widget as it stands.
func (p *plots) wanted() (drawing, bool) {
	c := fyne.CurrentApp().Driver().CanvasForObject(p)
	if c == nil || len(p.chart.Targets) == 0 || p.Size().Width < 1 || p.Size().Height < 1 {
		return drawing{}, false
	}
	k := c.Scale()
	larger := min(max(p.Size().Width/600, 1.2), 1.5) // the type, where there is room
	return drawing{
		number: p.number,
		size:   image.Pt(int(p.Size().Width*k), int(p.Size().Height*k)),
		scale:  float64(k * larger),
		ink:    ink(),
	}, true
}

// draw has the plots drawn if the last drawing does not fit any more. While one is
// being made no other is begun: it looks again when it is done.
func (p *plots) draw() {
	want, ok := p.wanted()
	if !ok || p.busy || want == p.drawn {
		return
	}
	p.busy = true
	chart := p.chart
	p.room.beside(func() func() {
		img := chart.Image(want.size, want.scale, want.ink)
		return func() {
			p.busy, p.drawn = false, want
			if want.number == p.number {
				p.picture.Image = img
				p.picture.Refresh()
			}
			p.draw()
		}
	})
}

// CreateRenderer is called by Fyne.
func (p *plots) CreateRenderer() fyne.WidgetRenderer { return &plotsRenderer{p} }

type plotsRenderer struct{ p *plots }

func (r *plotsRenderer) Layout(size fyne.Size) {
	r.p.picture.Resize(size)
	r.p.draw()
}

func (r *plotsRenderer) MinSize() fyne.Size           { return fyne.NewSize(320, 300) }
func (r *plotsRenderer) Refresh()                     { r.p.draw() }
func (r *plotsRenderer) Objects() []fyne.CanvasObject { return []fyne.CanvasObject{r.p.picture} }
func (r *plotsRenderer) Destroy()                     {}

// ink is the colours of the theme in use; what the theme has no name for is the
// chart's own.
func ink() charting.Ink {
	i := charting.Paper
	if dark(look.Colour(theme.ColorNameBackground)) {
		i = charting.Chalk
	}
	i.Ground = look.Colour(theme.ColorNameBackground)
	i.Text, i.Second = look.Colour(theme.ColorNameForeground), look.Colour(look.SecondInk)
	i.Faint, i.Own = look.Colour(look.Hairline), look.Colour(look.Accent)
	return i
}

func dark(c color.Color) bool { return color.GrayModel.Convert(c).(color.Gray).Y < 128 }
