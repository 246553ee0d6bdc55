package timeline

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"ogive/ui/label"
)

func besideFyne(work func() func()) {
	go func() {
		if then := work(); then != nil {
			fyne.Do(then)
		}
	}()
}

// faint is a caption in small ink.
func faint(text string) *widget.Label {
	l := label.Caption(text)
	l.Importance = widget.LowImportance
	return l
}
