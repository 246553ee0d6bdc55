package beside

import (
	"image"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ogive/geometry/comparison"
	"ogive/geometry/hand"
	"ogive/imaging/compared"
	"ogive/imaging/wording"
	"ogive/ui/flow"
	"ogive/ui/label"
	"ogive/ui/look"
	"ogive/ui/sign"
)

// card is the comparison of one web. A tap brings the web into sight.
type card struct {
	widget.BaseWidget
	onTap           func()
	chosen, hovered bool

	ground, rail       *canvas.Rectangle
	title, sub, shapes *canvas.Text
	sketch             *canvas.Raster
	bar                *canvas.Text
	overlay            *comparison.Overlay
	view               view
	rows               []*row
	warnings           *widget.Label
}

// row is one figure: its difference and the verdict on it.
type row struct {
	name, difference *canvas.Text
	sign             *sign.Sign
}

var (
	_ fyne.Tappable      = (*card)(nil)
	_ desktop.Hoverable  = (*card)(nil)
	_ desktop.Cursorable = (*card)(nil)
)

func newCard(w hand.Web, onTap func()) *card {
	c := &card{onTap: onTap, ground: canvas.NewRectangle(nil), rail: canvas.NewRectangle(nil), warnings: label.Caption("")}
	for _, t := range []**canvas.Text{&c.title, &c.sub, &c.shapes, &c.bar} {
		*t = canvas.NewText("", nil)
	}
	c.title.Text, c.title.TextStyle.Bold = wording.WebName(w), true
	c.sub.Text = wording.WebDigits(w)
	c.sketch = canvas.NewRaster(func(w, h int) image.Image { return drawSketch(c.overlay, c.view, w, h) })
	for range 4 {
		r := &row{canvas.NewText("", nil), canvas.NewText("", nil), sign.New()}
		r.sign.Quiet = true
		r.difference.Alignment, r.difference.TextStyle.Bold = fyne.TextAlignTrailing, true
		c.rows = append(c.rows, r)
	}
	c.rail.Hide()
	c.ExtendBaseWidget(c)
	return c
}

// show fills in a comparison.
func (c *card) show(p compared.Pair, w comparison.Web, v view) {
	c.overlay, c.view = w.Overlay, v
	flow.Visible(c.sketch, w.Overlay != nil)
	flow.Visible(c.bar, w.Overlay != nil)
	c.bar.Text = lang.L("{{.Length}} mm", map[string]any{"Length": int(v.bar())})
	c.shapes.Text = shapes(p.Shapes(w.Web))
	for i, f := range p.Figures(w) {
		r := c.rows[i]
		r.name.Text, r.difference.Text = wording.Sentence(wording.Term(f.Name)), f.Difference
		if f.Difference == "" {
			r.difference.Text = lang.L("not known")
		}
		flow.Visible(r.sign, f.Verdict != nil)
		if f.Verdict != nil {
			r.sign.SayAs(*f.Verdict, verdictWords(*f.Verdict), limitWords(*f.Verdict))
		}
	}
	c.warnings.SetText(strings.Join(w.Warnings, "\n"))
	flow.Visible(c.warnings, len(w.Warnings) > 0)
	c.Refresh()
}

// shapes names both shapes, once where they are the same.
func shapes(operated, other string) string {
	switch {
	case operated == "" || other == "":
		return ""
	case operated == other:
		return lang.L("both {{.Shape}}", map[string]any{"Shape": operated})
	}
	return lang.L("{{.One}} beside {{.Other}}", map[string]any{"One": operated, "Other": other})
}

func (c *card) choose(chosen bool) {
	if c.chosen != chosen {
		c.chosen = chosen
		c.Refresh()
	}
}

func (c *card) colour() {
	ink, second := look.Colour(theme.ColorNameForeground), look.Colour(look.SecondInk)
	c.ground.FillColor = look.Colour(look.Card)
	c.ground.CornerRadius = look.Size(theme.SizeNameInputRadius)
	c.ground.StrokeColor, c.ground.StrokeWidth = look.Colour(look.Hairline), 1
	if c.hovered || c.chosen {
		c.ground.StrokeColor = look.Colour(look.Accent)
	}
	c.rail.FillColor = look.Colour(look.Accent)
	flow.Visible(c.rail, c.chosen)
	body, caption := look.Size(theme.SizeNameText), look.Size(theme.SizeNameCaptionText)
	c.title.Color, c.title.TextSize = ink, look.Size(theme.SizeNameSubHeadingText)
	for _, t := range []*canvas.Text{c.sub, c.shapes} {
		t.Color, t.TextSize = second, caption
	}
	c.bar.Color, c.bar.TextSize = ink, 11
	for _, r := range c.rows {
		r.name.Color, r.name.TextSize = second, caption
		r.difference.Color, r.difference.TextSize = ink, body
	}
}

func (c *card) Tapped(*fyne.PointEvent)        { c.onTap() }
func (c *card) MouseIn(*desktop.MouseEvent)    { c.hovered = true; c.Refresh() }
func (c *card) MouseMoved(*desktop.MouseEvent) {}
func (c *card) MouseOut()                      { c.hovered = false; c.Refresh() }
func (c *card) Cursor() desktop.Cursor         { return desktop.PointerCursor }

const cardPad, cardGap = 11, 10

// HeightAt places everything for a width: names at the left of the sketch, the
// figures below.
func (c *card) HeightAt(width float32) float32 {
	c.colour()
	inner := width - 2*cardPad
	y := float32(cardPad - 3)
	for _, t := range []*canvas.Text{c.title, c.sub, c.shapes} {
		h := t.MinSize().Height
		flow.Put(t, cardPad, y, inner, h)
		if t.Text != "" {
			y += h
		}
	}
	if c.sketch.Visible() {
		left := width - cardPad - sketchSide
		if left < cardPad+c.widest()+8 {
			y += 4
		} else {
			y = cardPad
		}
		flow.Put(c.sketch, left, y, sketchSide, sketchRise)
		flow.Put(c.bar, left+6, y+sketchRise-23, 60, c.bar.MinSize().Height)
		y += sketchRise
	}
	y += 8
	for _, r := range c.rows {
		y = r.place(y, width)
	}
	if c.warnings.Visible() {
		const labelPad = 8
		h := flow.HeightAt(c.warnings, inner+2*labelPad)
		flow.Put(c.warnings, cardPad-labelPad, y-labelPad, inner+2*labelPad, h)
		y += h - 2*labelPad
	}
	y += cardPad - 4
	flow.Put(c.ground, 0, 0, width, y)
	flow.Put(c.rail, 0, 0, 4, y)
	return y + cardGap
}

// widest is the width of the widest of the names.
func (c *card) widest() float32 {
	return max(c.title.MinSize().Width, c.sub.MinSize().Width, c.shapes.MinSize().Width)
}

// place stands a row at y and tells where the next begins.
func (r *row) place(y, width float32) float32 {
	inner := width - 2*cardPad
	h := r.difference.MinSize().Height
	flow.Put(r.name, cardPad, y+1, inner, h)
	flow.Put(r.difference, cardPad, y, inner, h)
	y += h
	if r.sign.Visible() {
		if r.sign.State() != sign.Equal {
			y += 3
		}
		h := r.sign.HeightAt(inner)
		flow.Put(r.sign, cardPad, y, inner, h)
		y += h
	}
	return y + 8
}

// CreateRenderer is called by Fyne.
func (c *card) CreateRenderer() fyne.WidgetRenderer {
	objects := []fyne.CanvasObject{c.ground, c.rail, c.title, c.sub, c.shapes, c.sketch, c.bar}
	for _, r := range c.rows {
		objects = append(objects, r.name, r.difference, r.sign)
	}
	return flow.NewRenderer(c.HeightAt, c.colour, append(objects, c.warnings)...)
}
