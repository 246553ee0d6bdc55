package guide

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ogive/geometry/hand"
	"ogive/ui/look"
	"ogive/ui/marking"
)

// choice asks which hand the photograph shows, and from where, by drawings.
type choice struct {
	widget.BaseWidget
	options []*option
	root    *fyne.Container
}

func newChoice(onChoose func(hand.Side, hand.View)) *choice {
	c := &choice{root: container.NewGridWithColumns(2)}
	for _, v := range []hand.View{hand.Dorsal, hand.Palmar, hand.WebView} {
		for _, s := range []hand.Side{hand.Left, hand.Right} {
			o := newOption(s, v, func() { onChoose(s, v) })
			c.options = append(c.options, o)
			c.root.Add(o)
		}
	}
	c.ExtendBaseWidget(c)
	return c
}

// mark shows which choice holds now.
func (c *choice) mark(s hand.Side, v hand.View) {
	for _, o := range c.options {
		o.set(o.side == s && o.view == v)
	}
}

func (c *choice) CreateRenderer() fyne.WidgetRenderer { return widget.NewSimpleRenderer(c.root) }

// option is one drawing that can be chosen.
type option struct {
	widget.BaseWidget
	side    hand.Side
	view    hand.View
	onTap   func()
	chosen  bool
	hovered bool

	ground  *canvas.Rectangle
	picture *picture
	name    *canvas.Text
}

func newOption(s hand.Side, v hand.View, onTap func()) *option {
	o := &option{side: s, view: v, onTap: onTap, ground: canvas.NewRectangle(nil), picture: newPicture()}
	o.picture.state = marking.State{Side: s, View: v}
	o.picture.plain = true
	o.name = canvas.NewText(optionName(s, v), nil)
	o.name.Alignment = fyne.TextAlignCenter
	o.ExtendBaseWidget(o)
	o.colour()
	return o
}

func optionName(s hand.Side, v hand.View) string {
	switch {
	case s == hand.Left && v == hand.Dorsal:
		return lang.L("Left, back")
	case s == hand.Right && v == hand.Dorsal:
		return lang.L("Right, back")
	case s == hand.Left && v == hand.Palmar:
		return lang.L("Left, palm")
	case s == hand.Right && v == hand.Palmar:
		return lang.L("Right, palm")
	case s == hand.Left:
		return lang.L("Left, into a web")
	}
	return lang.L("Right, into a web")
}

func (o *option) set(chosen bool) {
	if o.chosen != chosen {
		o.chosen = chosen
		o.Refresh()
	}
}

func (o *option) colour() {
	o.ground.FillColor = look.Colour(look.Card)
	o.ground.CornerRadius = look.Size(theme.SizeNameInputRadius)
	o.ground.StrokeColor, o.ground.StrokeWidth = look.Colour(look.Hairline), 1
	if o.hovered || o.chosen {
		o.ground.StrokeColor, o.ground.StrokeWidth = look.Colour(look.Accent), 2.5
	}
	o.name.Color, o.name.TextSize = look.Colour(theme.ColorNameForeground), look.Size(theme.SizeNameText)
	o.name.TextStyle.Bold = o.chosen
}

func (o *option) Tapped(*fyne.PointEvent)             { o.onTap() }
func (o *option) MouseIn(*desktop.MouseEvent)         { o.hovered = true; o.Refresh() }
func (o *option) MouseMoved(*desktop.MouseEvent)      {}
func (o *option) MouseOut()                           { o.hovered = false; o.Refresh() }
func (o *option) Cursor() desktop.Cursor              { return desktop.PointerCursor }
func (o *option) CreateRenderer() fyne.WidgetRenderer { return optionRenderer{o} }

type optionRenderer struct{ o *option }

func (r optionRenderer) MinSize() fyne.Size {
	return fyne.NewSize(max(120, r.o.name.MinSize().Width+12), 96)
}

func (r optionRenderer) Layout(size fyne.Size) {
	const pad = 6
	h := r.o.name.MinSize().Height
	r.o.ground.Resize(size)
	r.o.picture.Move(fyne.NewPos(pad, pad))
	r.o.picture.Resize(fyne.NewSize(size.Width-2*pad, size.Height-h-2*pad))
	r.o.name.Move(fyne.NewPos(0, size.Height-h-pad/2))
	r.o.name.Resize(fyne.NewSize(size.Width, h))
}

func (r optionRenderer) Refresh() {
	r.o.colour()
	for _, p := range r.Objects() {
		p.Refresh()
	}
}

func (r optionRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.o.ground, r.o.picture, r.o.name}
}

func (r optionRenderer) Destroy() {}
