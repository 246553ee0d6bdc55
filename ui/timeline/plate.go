package timeline

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ogive/ui/look"
)

// plate is a coloured ground under its content.
type plate struct {
	widget.BaseWidget
	ground  fyne.ThemeColorName
	content fyne.CanvasObject
}

func newPlate(ground fyne.ThemeColorName, content fyne.CanvasObject) *plate {
	p := &plate{ground: ground, content: content}
	p.ExtendBaseWidget(p)
	return p
}

// CreateRenderer is called by Fyne.
func (p *plate) CreateRenderer() fyne.WidgetRenderer {
	r := &plateRenderer{plate: p, ground: canvas.NewRectangle(nil)}
	r.WidgetRenderer = widget.NewSimpleRenderer(container.NewStack(r.ground, p.content))
	r.colour()
	return r
}

type plateRenderer struct {
	fyne.WidgetRenderer
	plate  *plate
	ground *canvas.Rectangle
}

func (r *plateRenderer) colour() {
	r.ground.FillColor = look.Colour(r.plate.ground)
	r.ground.CornerRadius = look.Size(theme.SizeNameInputRadius)
}

// Refresh takes the colours of the theme anew.
func (r *plateRenderer) Refresh() {
	r.colour()
	r.WidgetRenderer.Refresh()
}

// notice is a sentence on a ground of its own, hidden while there is none.
type notice struct {
	object *plate
	label  *widget.Label
}

func newNotice() *notice {
	n := &notice{label: wrapped("")}
	n.object = newPlate(look.Notice, n.label)
	n.object.Hide()
	return n
}

func (n *notice) show(text string) {
	n.label.SetText(text)
	visible(n.object, text != "")
}
