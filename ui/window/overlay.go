package window

import (
	"fyne.io/fyne/v2"
)

// overlay lays panels over the photograph: the first along its top, all others
// above its lower edge, where they hide the least of a hand.
type overlay struct {
	// beside is the column, which stays free while room is shown.
	beside, room fyne.CanvasObject
}

const overlayMargin = 12

// MinSize is nothing: panels lie over what is there.
func (overlay) MinSize([]fyne.CanvasObject) fyne.Size { return fyne.Size{} }

// Layout is called by Fyne.
func (o overlay) Layout(panels []fyne.CanvasObject, size fyne.Size) {
	if o.room.Visible() {
		size.Width -= o.beside.MinSize().Width
	}
	for i, p := range panels {
		least := p.MinSize()
		width := min(max(least.Width, 520), size.Width-2*overlayMargin)
		if i > 0 {
			width = min(least.Width, size.Width-2*overlayMargin)
		}
		p.Resize(fyne.NewSize(width, p.MinSize().Height))
		least = p.MinSize() // wrapped text knows its height only now
		height := min(least.Height, size.Height-2*overlayMargin)
		p.Resize(fyne.NewSize(width, height))
		x, y := (size.Width-width)/2, float32(overlayMargin)
		if i > 0 {
			y = size.Height - height - 4*overlayMargin
		}
		p.Move(fyne.NewPos(x, y))
	}
}
