package cases

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ogive/ui/flow"
	"ogive/ui/label"
)

func heading(text string) *widget.Label {
	l := widget.NewLabelWithStyle(text, fyne.TextAlignLeading, fyne.TextStyle{Bold: true})
	l.SizeName = theme.SizeNameSubHeadingText
	return l
}

func quiet(text string, do func()) *widget.Button {
	b := widget.NewButton(text, do)
	b.Importance = widget.LowImportance
	return b
}

// middle is a sentence and what can be done, in the middle of a page.
func middle(text string, buttons ...fyne.CanvasObject) *fyne.Container {
	words := container.NewVBox(container.New(flow.Wide(420), label.Centred(text)), container.NewCenter(container.NewHBox(buttons...)))
	return container.NewCenter(words)
}

// closely stands labels over each other without the space between paragraphs.
func closely(objects ...fyne.CanvasObject) *fyne.Container {
	return container.New(layout.NewCustomPaddedVBoxLayout(-9), objects...)
}
