package flow

import "fyne.io/fyne/v2"

// NewRenderer renders a widget that places its parts itself. Place gives each its
// place for a width and tells the height, as HeightAt does; colour takes the
// colours of the theme in use.
func NewRenderer(least fyne.Size, place func(width float32) float32, colour func(), parts ...fyne.CanvasObject) fyne.WidgetRenderer {
	return renderer{least, place, colour, parts}
}

type renderer struct {
	least  fyne.Size
	place  func(width float32) float32
	colour func()
	parts  []fyne.CanvasObject
}

func (r renderer) MinSize() fyne.Size           { return r.least }
func (r renderer) Layout(size fyne.Size)        { r.place(size.Width) }
func (r renderer) Objects() []fyne.CanvasObject { return r.parts }
func (renderer) Destroy()                       {}
func (r renderer) Refresh() {
	r.colour()
	for _, o := range r.parts {
		o.Refresh()
	}
}
