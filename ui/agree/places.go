package agree

import (
	"fyne.io/fyne/v2"

	"ogive/ui/flow"
)

func besideFyne(work func() func()) {
	go func() {
		if then := work(); then != nil {
			fyne.Do(then)
		}
	}()
}

// split stands the column at the left of the plots, which get what room it leaves.
type split struct{}

// MinSize is called by Fyne.
func (split) MinSize(objects []fyne.CanvasObject) fyne.Size {
	least := objects[1].MinSize()
	return fyne.NewSize(leastColumn+between+least.Width, least.Height)
}

const (
	leastColumn = 350
	mostColumn  = 500
	between     = 14
)

// Layout is called by Fyne.
func (split) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	width := min(max(0.36*size.Width, leastColumn), mostColumn)
	flow.Put(objects[0], 0, 0, width, size.Height)
	flow.Put(objects[1], width+between, 0, max(size.Width-width-between, 1), size.Height)
}

// middle gives its content a width that is read with ease, in the middle.
type middle struct{}

// MinSize is called by Fyne.
func (middle) MinSize([]fyne.CanvasObject) fyne.Size { return fyne.NewSize(320, 200) }

// Layout is called by Fyne.
func (middle) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	width := min(620, size.Width)
	flow.Put(objects[0], (size.Width-width)/2, 0, width, size.Height)
}

// wide is a layout that gives its content a width.
type wide float32

// MinSize is called by Fyne.
func (w wide) MinSize(objects []fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(float32(w), objects[0].MinSize().Height)
}

// Layout is called by Fyne.
func (w wide) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	flow.Put(objects[0], 0, 0, size.Width, size.Height)
}
