package window

import (
	"runtime"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"
)

// showKeys lists what the keys and the pointer do.
func (w *Window) showKeys() {
	ctrl := "Ctrl"
	if runtime.GOOS == "darwin" {
		ctrl = "Cmd"
	}
	grid := container.New(layout.NewFormLayout())
	for _, row := range [][2]string{
		{lang.L("Click"), lang.L("place the point that is asked for")},
		{lang.L("Drag a point or a border"), lang.L("move it")},
		{lang.L("Drag elsewhere, wheel, pinch"), lang.L("move the photograph; closer and farther")},
		{lang.L("Arrow keys"), lang.L("move the selected point by a pixel, with Shift by ten")},
		{lang.L("Tab, Shift+Tab"), lang.L("select the next point, the one before")},
		{lang.L("Backspace"), lang.L("take back the point placed last")},
		{lang.L("Delete"), lang.L("remove the selected point")},
		{"S", lang.L("skip the point that is asked for")},
		{lang.L("Enter"), lang.L("accept the borders that the program proposes")},
		{lang.L("Esc"), lang.L("refuse them; let go of the selected point")},
		{"F", lang.L("show the whole photograph")},
		{"1, 0", lang.L("show it pixel for pixel")},
		{"+, −", lang.L("closer, farther")},
		{ctrl + "+Z", lang.L("undo")},
		{ctrl + "+Shift+Z, " + ctrl + "+Y", lang.L("redo")},
		{ctrl + "+O", lang.L("open a photograph")},
		{ctrl + "+S", lang.L("save the marked picture")},
		{ctrl + "+C", lang.L("copy the figures as a table")},
		{ctrl + "+Q", lang.L("quit; everything is kept")},
	} {
		grid.Add(widget.NewLabelWithStyle(row[0], fyne.TextAlignTrailing, fyne.TextStyle{Bold: true}))
		grid.Add(widget.NewLabel(row[1]))
	}
	page := dialog.NewCustom(lang.L("Keys"), lang.L("Close"), container.NewVScroll(grid), w.win)
	w.open(page)
	page.Resize(w.nearlyWhole(720, 820))
	page.Show()
}
