package timeline

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

func besideFyne(work func() func()) {
	go func() {
		if then := work(); then != nil {
			fyne.Do(then)
		}
	}()
}

func visible(o fyne.CanvasObject, on bool) {
	if on {
		o.Show()
	} else {
		o.Hide()
	}
}

func wrapped(text string) *widget.Label {
	l := widget.NewLabel(text)
	l.Wrapping = fyne.TextWrapWord
	return l
}

func centred(text string) *widget.Label {
	l := wrapped(text)
	l.Alignment = fyne.TextAlignCenter
	return l
}

func caption(text string) *widget.Label {
	l := wrapped(text)
	l.SizeName, l.Importance = theme.SizeNameCaptionText, widget.LowImportance
	return l
}

// wide is a layout that gives its content a width.
type wide float32

// MinSize is called by Fyne.
func (w wide) MinSize(objects []fyne.CanvasObject) fyne.Size {
	var height float32
	for _, o := range objects {
		o.Resize(fyne.NewSize(float32(w), o.Size().Height))
		height = max(height, o.MinSize().Height)
	}
	return fyne.NewSize(float32(w), height)
}

// Layout is called by Fyne.
func (w wide) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	for _, o := range objects {
		o.Resize(size)
	}
}
