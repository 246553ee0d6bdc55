package flow

import "fyne.io/fyne/v2"

// Wide is a layout that gives what it holds that width, and the height which it
// needs there.
//
//	container.NewCenter(container.New(flow.Wide(420), label))
type Wide float32

// MinSize is called by Fyne.
func (w Wide) MinSize(objects []fyne.CanvasObject) fyne.Size {
	var height float32
	for _, o := range objects {
		height = max(height, HeightAt(o, float32(w)))
	}
	return fyne.NewSize(float32(w), height)
}

// Layout is called by Fyne.
func (w Wide) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	for _, o := range objects {
		o.Resize(size)
	}
}
