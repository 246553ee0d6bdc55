// Package plate stands things on a coloured ground.
//
//	plate.New(look.Card, look.Hairline, content)
//
// The ground is named rather than given, so that it follows the theme.
package plate

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ogive/ui/look"
)

// Plate is a coloured ground under its content. A widget that embeds one has
// its looks.
type Plate struct {
	widget.BaseWidget
	Ground, Edge fyne.ThemeColorName // Edge is "" for none
	Corner       float32             // the radius, 0 for a square one
	Content      fyne.CanvasObject
}

// New is a plate with the corners of a field to write in. Without an edge, which
// is then "", it has its ground only.
func New(ground, edge fyne.ThemeColorName, content fyne.CanvasObject) *Plate {
	p := &Plate{Ground: ground, Edge: edge, Corner: look.Size(theme.SizeNameInputRadius), Content: content}
	p.ExtendBaseWidget(p)
	return p
}

// CreateRenderer is called by Fyne.
func (p *Plate) CreateRenderer() fyne.WidgetRenderer {
	r := &renderer{plate: p, ground: canvas.NewRectangle(nil)}
	r.WidgetRenderer = widget.NewSimpleRenderer(container.NewStack(r.ground, p.Content))
	r.colour()
	return r
}

type renderer struct {
	fyne.WidgetRenderer
	plate  *Plate
	ground *canvas.Rectangle
}

const edgeWidth = 1.5

func (r *renderer) colour() {
	r.ground.FillColor, r.ground.CornerRadius = look.Colour(r.plate.Ground), r.plate.Corner
	r.ground.StrokeWidth = 0
	if r.plate.Edge != "" {
		r.ground.StrokeColor, r.ground.StrokeWidth = look.Colour(r.plate.Edge), edgeWidth
	}
}

// Refresh takes the colours of the theme anew.
func (r *renderer) Refresh() {
	r.colour()
	r.WidgetRenderer.Refresh()
}
