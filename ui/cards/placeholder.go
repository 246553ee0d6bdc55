package cards

import (
	"image"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
	"github.com/fogleman/gg"

	"ogive/ui/flow"
	"ogive/ui/look"
)

// placeholder says what will stand in the column.
type placeholder struct {
	widget.BaseWidget
	outline *canvas.Raster
	head    *widget.Label
	label   *widget.Label
	waits   *widget.Label
}

func newPlaceholder() *placeholder {
	p := &placeholder{
		head:  widget.NewLabelWithStyle(lang.L("The reading"), fyne.TextAlignLeading, fyne.TextStyle{Bold: true}),
		label: widget.NewLabel(lang.L("A card for each web will stand here: its arch at true proportion, index, depth, span, crown angle and slope, each with its interval, and how they compare with normal values.")),
		waits: widget.NewLabelWithStyle("", fyne.TextAlignLeading, fyne.TextStyle{Italic: true}),
	}
	p.head.SizeName = theme.SizeNameSubHeadingText
	p.outline = canvas.NewRaster(p.draw)
	for _, l := range p.labels() {
		l.Wrapping = fyne.TextWrapWord
	}
	p.ExtendBaseWidget(p)
	return p
}

func (p *placeholder) labels() []*widget.Label { return []*widget.Label{p.head, p.label, p.waits} }

// say reports whether the height may have changed.
func (p *placeholder) say(waits string) bool {
	if p.waits.Text == waits {
		return false
	}
	p.waits.SetText(waits)
	return true
}

const emptyArch = 96

func (p *placeholder) HeightAt(width float32) float32 {
	y := float32(emptyArch)
	for _, l := range p.labels() {
		h := flow.HeightAt(l, width-2*4)
		flow.Put(l, 4, y, width-2*4, h)
		y += h - 6
	}
	y += 12
	flow.Put(p.outline, 0, 0, width, y)
	return y
}

func (p *placeholder) CreateRenderer() fyne.WidgetRenderer {
	return flow.NewRenderer(p.HeightAt, nil, p.outline, p.head, p.label, p.waits)
}

// draw draws the outline of a card and of an arch that is not there yet.
func (p *placeholder) draw(w, h int) image.Image {
	c := gg.NewContext(max(w, 1), max(h, 1))
	if p.Size().Width <= 0 {
		return c.Image()
	}
	px := float64(w) / float64(p.Size().Width)
	c.SetColor(look.Colour(look.Hairline))
	c.SetLineWidth(1.5 * px)
	c.SetDash(6*px, 5*px)
	c.DrawRoundedRectangle(px, px, float64(w)-2*px, float64(h)-2*px, 5*px)
	c.Stroke()
	c.SetColor(look.Colour(look.SecondInk))
	c.SetLineWidth(2 * px)
	x, top, spring, crown := 14*px, 18*px, 42*px, 84*px
	c.MoveTo(x, top)
	c.LineTo(x, spring)
	c.CubicTo(x, spring+20*px, x+18*px, crown-10*px, x+30*px, crown)
	c.CubicTo(x+42*px, crown-10*px, x+60*px, spring+20*px, x+60*px, spring)
	c.LineTo(x+60*px, top)
	c.Stroke()
	return c.Image()
}
