// Package label makes the labels of rooms: text that goes on in the next line, in
// the sizes of the theme.
//
//	container.NewVBox(label.Heading("The other hand"), label.Caption("as marked last"))
package label

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// Wrapped is text that goes on in the next line where it finds no room.
func Wrapped(text string) *widget.Label {
	l := widget.NewLabel(text)
	l.Wrapping = fyne.TextWrapWord
	return l
}

// Centred is wrapped text in the middle.
func Centred(text string) *widget.Label {
	l := Wrapped(text)
	l.Alignment = fyne.TextAlignCenter
	return l
}

// Caption is small wrapped text, for what is second.
func Caption(text string) *widget.Label {
	l := Wrapped(text)
	l.SizeName = theme.SizeNameCaptionText
	return l
}
