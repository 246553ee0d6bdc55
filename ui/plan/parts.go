package plan

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// parts is the renderer of a widget that places its parts itself, for a width.
type parts struct {
	place   func(width float32) float32
	colour  func() // takes the colours of the theme in use
	objects []fyne.CanvasObject
}

func (parts) MinSize() fyne.Size             { return fyne.NewSize(120, 20) }
func (p parts) Layout(size fyne.Size)        { p.place(size.Width) }
func (p parts) Objects() []fyne.CanvasObject { return p.objects }
func (parts) Destroy()                       {}
func (p parts) Refresh() {
	p.colour()
	for _, o := range p.objects {
		o.Refresh()
	}
}

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
