package window

import (
	"fmt"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ogive/imaging/wording"
)

// foot is the line under the photograph: what was done last, the caution, which
// small windows have no other room for, and how large the photograph is shown.
type foot struct {
	row        fyne.CanvasObject
	left, zoom *widget.Label
}

func newFoot() *foot {
	f := &foot{left: small(), zoom: small()}
	f.left.Truncation = fyne.TextTruncateEllipsis
	again := small()
	again.SetText(lang.L("An aid only: measure again on the patient."))
	f.row = newPlate(theme.ColorNameBackground, "", 0, container.NewBorder(nil, nil, nil, container.NewHBox(again, f.zoom), f.left))
	return f
}

func small() *widget.Label {
	l := widget.NewLabel("")
	l.SizeName = theme.SizeNameCaptionText
	return l
}

func (f *foot) showGesture(name string, unsaved bool) {
	switch {
	case name == "":
		f.left.SetText("")
	case unsaved:
		f.left.SetText(lang.L("{{.Gesture}}; not on the disk", map[string]any{"Gesture": wording.Sentence(name)}))
	default:
		f.left.SetText(lang.L("{{.Gesture}}; on the disk", map[string]any{"Gesture": wording.Sentence(name)}))
	}
}

func (f *foot) showSelected(name string) {
	f.left.SetText(lang.L("{{.Point}}: arrow keys move it by a pixel, with shift by ten", map[string]any{"Point": name}))
}

func (f *foot) showZoom(zoom float64) {
	f.zoom.SetText(fmt.Sprintf("%.0f %%", 100*zoom))
	f.row.Refresh()
}
