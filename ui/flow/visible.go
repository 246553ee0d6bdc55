package flow

import "fyne.io/fyne/v2"

// Visible shows or hides a thing. It reports whether that changed anything, so
// that what stands around the thing must be arranged anew.
func Visible(o fyne.CanvasObject, on bool) bool {
	switch {
	case on == o.Visible():
		return false
	case on:
		o.Show()
	default:
		o.Hide()
	}
	return true
}
