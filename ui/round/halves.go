package round

import (
	"fyne.io/fyne/v2"

	"ogive/ui/flow"
	"ogive/ui/look"
)

// narrow is a layout that keeps a field short.
type narrow float32

// MinSize is called by Fyne.
func (n narrow) MinSize(o []fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(float32(n), o[0].MinSize().Height)
}

// Layout is called by Fyne.
func (n narrow) Layout(o []fyne.CanvasObject, size fyne.Size) {
	o[0].Resize(fyne.NewSize(min(float32(n), size.Width), size.Height))
}

// halves stands two columns beside each other, the left one wider, and neither
// wider than is good to read.
type halves struct{}

const widestHalf = 620

func (halves) MinSize([]fyne.CanvasObject) fyne.Size { return fyne.NewSize(700, 400) }

func (halves) Layout(parts []fyne.CanvasObject, size fyne.Size) {
	gap := 2 * look.Size(look.Gap)
	room := size.Width - 3*gap
	left := min(room*0.52, widestHalf)
	right := min(room-left, widestHalf)
	from := (size.Width - left - right - gap) / 2
	flow.Put(parts[0], from, 0, left, size.Height-gap)
	flow.Put(parts[1], from+left+gap, 0, right, size.Height-gap)
}
