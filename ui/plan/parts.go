package plan

import (
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"

	"ogive/ui/flow"
)

// write reports whether that changed anything.
func write(l *widget.Label, text string) bool {
	changed := l.Text != text
	if changed {
		l.SetText(text)
	}
	return flow.Visible(l, text != "") || changed
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
