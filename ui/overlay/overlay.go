// Package overlay sizes the dialogs that are laid over a window.
//
//	ask.Resize(overlay.Size(win, 520, 260))
//	overlay.ShowFiles(win, dialog.NewFileOpen(...))
//	overlay.AskFolder(win, folder, func(path string) { ... })
package overlay

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/storage"
)

// rim is what is left of the window around a dialog, both sides together.
const rim = 40

// Size is a size for a dialog, as far as the window has room for it.
func Size(win fyne.Window, width, height float32) fyne.Size {
	size := win.Canvas().Size()
	return fyne.NewSize(min(width, size.Width-rim), min(height, size.Height-rim))
}

// ShowFiles shows a file dialog as large as is of use. Fyne gives it a size only
// once it is shown, and puts it in the middle only when it is shown with that
// size.
func ShowFiles(win fyne.Window, ask *dialog.FileDialog) {
	ask.Show()
	ask.Resize(Size(win, 1000, 720))
	ask.Hide()
	ask.Show()
}

// AskFolder asks for a folder, beginning with the one at from.
func AskFolder(win fyne.Window, from string, chosen func(path string)) {
	ask := dialog.NewFolderOpen(func(folder fyne.ListableURI, err error) {
		if err == nil && folder != nil {
			chosen(folder.Path())
		}
	}, win)
	if at, err := storage.ListerForURI(storage.NewFileURI(from)); err == nil {
		ask.SetLocation(at)
	}
	ShowFiles(win, ask)
}
