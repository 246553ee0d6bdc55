package cards

import (
	"fyne.io/fyne/v2"
)

// parts draws a thing that places its parts itself.
type parts struct {
	least   fyne.Size
	place   func(fyne.Size)
	colour  func() // takes the colours of the theme in use
	objects []fyne.CanvasObject
}

func (p parts) MinSize() fyne.Size           { return p.least }
func (p parts) Layout(size fyne.Size)        { p.place(size) }
func (p parts) Objects() []fyne.CanvasObject { return p.objects }
func (p parts) Destroy()                     {}

func (p parts) Refresh() {
	p.colour()
	for _, o := range p.objects {
		o.Refresh()
	}
}
