package round

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ogive/ui/flow"
	"ogive/ui/look"
)

// card is a ground on which things stand over each other. Its height depends on
// its width.
type card struct {
	widget.BaseWidget
	ground, edge fyne.ThemeColorName // no edge: ""
	thick        float32             // of the edge
	margin, gap  float32
	objects      []fyne.CanvasObject

	plate *canvas.Rectangle
}

var _ flow.Tall = (*card)(nil)

func newCard(objects ...fyne.CanvasObject) *card {
	c := &card{}
	c.build(objects)
	c.ExtendBaseWidget(c)
	return c
}

// build is for widgets that are made of a card.
func (c *card) build(objects []fyne.CanvasObject) {
	c.ground, c.edge, c.thick, c.margin, c.gap = look.Card, look.Hairline, 1, 8, 2
	c.objects = objects
	c.plate = canvas.NewRectangle(nil)
	c.colour()
}

// mark gives the card another edge.
func (c *card) mark(edge fyne.ThemeColorName, thick float32) {
	if c.edge != edge || c.thick != thick {
		c.edge, c.thick = edge, thick
		c.colour()
		c.plate.Refresh()
	}
}

// HeightAt places what stands on the card for that width.
func (c *card) HeightAt(width float32) float32 {
	y := c.margin
	for _, o := range c.objects {
		if !o.Visible() {
			continue
		}
		h := flow.HeightAt(o, width-2*c.margin)
		flow.Put(o, c.margin, y, width-2*c.margin, h)
		y += h + c.gap
	}
	return y - c.gap + c.margin
}

func (c *card) colour() {
	c.plate.FillColor = look.Colour(c.ground)
	c.plate.CornerRadius = look.Size(theme.SizeNameInputRadius)
	c.plate.StrokeWidth = 0
	if c.edge != "" {
		c.plate.StrokeColor, c.plate.StrokeWidth = look.Colour(c.edge), c.thick
	}
}

// CreateRenderer is called by Fyne.
func (c *card) CreateRenderer() fyne.WidgetRenderer { return cardRenderer{c} }

type cardRenderer struct{ c *card }

// MinSize leaves the height to whoever gives the width.
func (r cardRenderer) MinSize() fyne.Size {
	width := max(r.c.Size().Width, 120)
	return fyne.NewSize(120, r.c.HeightAt(width))
}

func (r cardRenderer) Layout(size fyne.Size) {
	r.c.plate.Resize(size)
	r.c.HeightAt(size.Width)
}

func (r cardRenderer) Objects() []fyne.CanvasObject {
	return append([]fyne.CanvasObject{r.c.plate}, r.c.objects...)
}

func (r cardRenderer) Refresh() {
	r.c.colour()
	r.c.HeightAt(r.c.Size().Width)
	for _, o := range r.Objects() {
		o.Refresh()
	}
}

func (r cardRenderer) Destroy() {}

// notice is a sentence on a ground of its own, hidden while there is none.
type notice struct {
	object  *card
	label   *widget.Label
	changed func() // lays out anew what stands around it
}

func newNotice(changed func()) *notice {
	n := &notice{label: wrapped(""), changed: changed}
	n.object = newCard(n.label)
	n.object.ground, n.object.edge, n.object.margin = look.Notice, "", 0
	n.object.Hide()
	return n
}

func (n *notice) show(text string) {
	if n.label.Text == text {
		return
	}
	n.label.SetText(text)
	visible(n.object, text != "")
	n.changed()
}
