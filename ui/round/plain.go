package round

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

func visible(o fyne.CanvasObject, on bool) {
	if on {
		o.Show()
	} else {
		o.Hide()
	}
}

func able(b fyne.Disableable, on bool) {
	if on {
		b.Enable()
	} else {
		b.Disable()
	}
}

func wrapped(text string) *widget.Label {
	l := widget.NewLabel(text)
	l.Wrapping = fyne.TextWrapWord
	return l
}

// caption is text for what is second.
func caption(text string) *widget.Label {
	l := wrapped(text)
	l.SizeName = theme.SizeNameCaptionText
	return l
}

func heading(text string) *widget.Label {
	l := wrapped(text)
	l.SizeName, l.TextStyle.Bold = theme.SizeNameSubHeadingText, true
	return l
}

func strong(text string) *widget.Label {
	l := wrapped(text)
	l.TextStyle.Bold = true
	return l
}

func quiet(text string, do func()) *widget.Button {
	b := widget.NewButton(text, do)
	b.Importance = widget.LowImportance
	return b
}

// closely stands labels over each other without the space between paragraphs.
func closely(objects ...fyne.CanvasObject) *fyne.Container {
	return container.New(layout.NewCustomPaddedVBoxLayout(-10), objects...)
}

// inset is a margin around content.
func inset(o fyne.CanvasObject, top, bottom, sides float32) fyne.CanvasObject {
	return container.New(layout.NewCustomPaddedLayout(top, bottom, sides, sides), o)
}

// empty takes up height.
func empty(height float32) fyne.CanvasObject {
	return container.New(layout.NewCustomPaddedLayout(height, 0, 0, 0))
}
