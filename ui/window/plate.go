package window

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"

	"ogive/ui/look"
)

// plate is a coloured ground under its content. One that shields keeps the
// pointer from what lies beneath it.
type plate struct {
	widget.BaseWidget
	ground, edge fyne.ThemeColorName // edge "" for none
	corner       float32
	content      fyne.CanvasObject
}

func newPlate(ground, edge fyne.ThemeColorName, corner float32, content fyne.CanvasObject) *plate {
	p := &plate{ground: ground, edge: edge, corner: corner, content: content}
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
	r.ground.CornerRadius = r.plate.corner
	if r.plate.edge != "" {
		r.ground.StrokeColor, r.ground.StrokeWidth = look.Colour(r.plate.edge), 1.5
	}
}

// Refresh takes the colours of the theme anew.
func (r *plateRenderer) Refresh() {
	r.colour()
	r.WidgetRenderer.Refresh()
}

// shield is a plate through which no click, drag or wheel reaches the
// photograph.
type shield struct{ plate }

func newShield(ground, edge fyne.ThemeColorName, content fyne.CanvasObject) *shield {
	s := &shield{plate{ground: ground, edge: edge, corner: 8, content: content}}
	s.ExtendBaseWidget(s)
	return s
}

// The pointer's events end here.
var (
	_ fyne.Tappable     = (*shield)(nil)
	_ fyne.Draggable    = (*shield)(nil)
	_ fyne.Scrollable   = (*shield)(nil)
	_ desktop.Mouseable = (*shield)(nil)
	_ desktop.Hoverable = (*shield)(nil)
)

// Tapped does nothing.
func (*shield) Tapped(*fyne.PointEvent) {}

// TappedSecondary does nothing.
func (*shield) TappedSecondary(*fyne.PointEvent) {}

// Dragged does nothing.
func (*shield) Dragged(*fyne.DragEvent) {}

// DragEnd does nothing.
func (*shield) DragEnd() {}

// Scrolled does nothing.
func (*shield) Scrolled(*fyne.ScrollEvent) {}

// MouseDown does nothing.
func (*shield) MouseDown(*desktop.MouseEvent) {}

// MouseUp does nothing.
func (*shield) MouseUp(*desktop.MouseEvent) {}

// MouseIn does nothing.
func (*shield) MouseIn(*desktop.MouseEvent) {}

// MouseMoved does nothing.
func (*shield) MouseMoved(*desktop.MouseEvent) {}

// MouseOut does nothing.
func (*shield) MouseOut() {}
