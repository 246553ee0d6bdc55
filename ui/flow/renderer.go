package flow

import "fyne.io/fyne/v2"

// NewRenderer renders a widget that places its parts itself. Place gives each its
// place for a width and tells the height, as HeightAt does; colour takes the
// colours of the theme in use. Colour may be nil.
func NewRenderer(place func(width float32) float32, colour func(), parts ...fyne.CanvasObject) fyne.WidgetRenderer {
	if colour == nil {
		colour = func() {}
	}
	return renderer{place, colour, parts}
}

type renderer struct {
	place  func(width float32) float32
	colour func()
	parts  []fyne.CanvasObject
}

func (renderer) MinSize() fyne.Size             { return fyne.NewSize(120, 20) }
func (r renderer) Layout(size fyne.Size)        { r.place(size.Width) }
func (r renderer) Objects() []fyne.CanvasObject { return r.parts }
func (renderer) Destroy()                       {}
func (r renderer) Refresh() {
	r.colour()
	for _, o := range r.parts {
		o.Refresh()
	}
}
