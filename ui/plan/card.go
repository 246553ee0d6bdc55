package plan

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ogive/geometry/norms"
	"ogive/imaging/wording"
	"ogive/ui/flow"
	"ogive/ui/look"
	"ogive/ui/sign"
)

// Most rows and verdicts that a card has.
const mostRows, mostSigns = 8, 4

// card is figures with their intervals, the first of them large, and what they
// come to.
type card struct {
	widget.BaseWidget
	ground    *canvas.Rectangle
	lead      row
	rows      []row
	signs     []*sign.Sign
	shown     int // rows
	signsSeen int
}

// row is the name of a figure and its value.
type row struct{ name, value *canvas.Text }

var _ flow.Tall = (*card)(nil)

func newRow() row {
	r := row{canvas.NewText("", nil), canvas.NewText("", nil)}
	r.value.Alignment, r.value.TextStyle.Bold = fyne.TextAlignTrailing, true
	return r
}

func newCard() *card {
	c := &card{ground: canvas.NewRectangle(nil), lead: newRow()}
	for range mostRows {
		c.rows = append(c.rows, newRow())
	}
	for range mostSigns {
		c.signs = append(c.signs, sign.New())
	}
	c.ExtendBaseWidget(c)
	c.colour()
	return c
}

// show reports whether the height may have changed. The first figure is large.
func (c *card) show(figures []wording.Figure, verdicts []norms.Verdict) bool {
	rearranged := len(figures) != c.shown || len(verdicts) != c.signsSeen
	c.shown, c.signsSeen = min(len(figures), mostRows+1), min(len(verdicts), mostSigns)
	changed := false
	for i, f := range figures[:c.shown] {
		r := c.at(i)
		changed = writeText(r.name, f.Name) || changed
		changed = writeText(r.value, f.Value) || changed
	}
	for i := range mostRows + 1 {
		flow.Visible(c.at(i).name, i < c.shown)
		flow.Visible(c.at(i).value, i < c.shown)
	}
	for i, s := range c.signs {
		flow.Visible(s, i < c.signsSeen)
		if i < c.signsSeen {
			rearranged = s.Say(verdicts[i]) || rearranged
		}
	}
	if changed && !rearranged && c.Size().Width > 0 {
		c.HeightAt(c.Size().Width)
	}
	return rearranged
}

func (c *card) at(i int) row {
	if i == 0 {
		return c.lead
	}
	return c.rows[i-1]
}

func (c *card) colour() {
	c.ground.FillColor, c.ground.StrokeColor, c.ground.StrokeWidth = look.Colour(look.Card), look.Colour(look.Hairline), 1
	c.ground.CornerRadius = 6
	for i := range mostRows + 1 {
		r, size := c.at(i), look.Size(theme.SizeNameText)
		if i == 0 {
			size = look.Size(look.FigureText)
		}
		r.name.Color, r.name.TextSize = look.Colour(look.SecondInk), look.Size(theme.SizeNameText)
		r.value.Color, r.value.TextSize = look.Colour(theme.ColorNameForeground), size
	}
}

const cardPad = 12

// HeightAt is called by flow.
func (c *card) HeightAt(width float32) float32 {
	c.colour()
	inner, y := width-2*cardPad, float32(cardPad-2)
	for i := range c.shown {
		r := c.at(i)
		h := r.value.MinSize().Height
		if w, room := r.value.MinSize().Width, inner-r.name.MinSize().Width-8; w > room && room > 0 {
			r.value.TextSize *= room / w
		}
		flow.Put(r.value, cardPad, y, inner, h)
		flow.Put(r.name, cardPad, y+(h-r.name.MinSize().Height)*0.7, inner, r.name.MinSize().Height)
		y += h + 2
	}
	for _, s := range c.signs[:c.signsSeen] {
		y += 5
		h := s.HeightAt(inner)
		flow.Put(s, cardPad, y, inner, h)
		y += h
	}
	y += cardPad - 2
	flow.Put(c.ground, 0, 0, width, y)
	return y + 6
}

// CreateRenderer is called by Fyne.
func (c *card) CreateRenderer() fyne.WidgetRenderer {
	objects := []fyne.CanvasObject{c.ground}
	for i := range mostRows + 1 {
		objects = append(objects, c.at(i).name, c.at(i).value)
	}
	for _, s := range c.signs {
		objects = append(objects, s)
	}
	return flow.NewRenderer(c.HeightAt, c.colour, objects...)
}
