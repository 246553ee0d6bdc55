package plan

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

func wrapping() *widget.Label {
	l := widget.NewLabel("")
	l.Wrapping = fyne.TextWrapWord
	return l
}

// small is text for what is second.
func small() *widget.Label {
	l := wrapping()
	l.SizeName, l.Importance = theme.SizeNameCaptionText, widget.MediumImportance
	return l
}

// visible reports whether that changed anything.
func visible(o fyne.CanvasObject, seen bool) bool {
	if seen == o.Visible() {
		return false
	}
	if seen {
		o.Show()
	} else {
		o.Hide()
	}
	return true
}

// write reports whether that changed anything.
func write(l *widget.Label, text string) bool {
	changed := l.Text != text
	if changed {
		l.SetText(text)
	}
	return visible(l, text != "") || changed
}

// writeText changes a line that is laid out already.
func writeText(t *canvas.Text, text string) bool {
	if t.Text == text {
		return false
	}
	t.Text = text
	t.Refresh()
	return true
}
