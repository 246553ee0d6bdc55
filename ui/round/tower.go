package round

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"ogive/ui/flow"
)

// tower stands things over each other in the height it is given; the one at middle
// takes what the others leave. Text that wraps gets the height it needs.
type tower struct {
	middle int
	gap    float32
}

// MinSize leaves the heights to Layout, which knows the width.
func (tower) MinSize([]fyne.CanvasObject) fyne.Size { return fyne.NewSize(200, 200) }

// Layout is called by Fyne.
func (t tower) Layout(parts []fyne.CanvasObject, size fyne.Size) {
	heights := make([]float32, len(parts))
	left := size.Height
	for i, p := range parts {
		if i == t.middle || !p.Visible() {
			continue
		}
		heights[i] = flow.HeightAt(p, size.Width)
		left -= heights[i] + t.gap
	}
	heights[t.middle] = max(0, left)
	y := float32(0)
	for i, p := range parts {
		if i != t.middle && !p.Visible() {
			continue
		}
		flow.Put(p, 0, y, size.Width, heights[i])
		y += heights[i] + t.gap
	}
}

// newTower is a column of things of which the one at middle takes what is left.
func newTower(middle int, parts ...fyne.CanvasObject) *fyne.Container {
	return container.New(tower{middle, 4}, parts...)
}
