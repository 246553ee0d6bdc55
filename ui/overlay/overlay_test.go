package overlay

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"
)

func TestADialogLeavesARimOfTheWindow(t *testing.T) {
	test.NewTempApp(t)
	w := test.NewTempWindow(t, widget.NewLabel(""))
	w.Resize(fyne.NewSize(640, 480))
	if got := Size(w, 520, 260); got != fyne.NewSize(520, 260) {
		t.Errorf("where there is room it is %v", got)
	}
	if got := Size(w, 1000, 720); got.Width >= 640 || got.Height >= 480 || got.Width < 560 || got.Height < 400 {
		t.Errorf("in a window of 640 by 480 it is %v", got)
	}
}

func TestAFolderIsAskedForOverTheWindow(t *testing.T) {
	test.NewTempApp(t)
	w := test.NewTempWindow(t, widget.NewLabel(""))
	w.Resize(fyne.NewSize(1024, 700))
	AskFolder(w, t.TempDir(), func(string) { t.Error("a folder is told before one was chosen") })
	if n := len(w.Canvas().Overlays().List()); n != 1 {
		t.Errorf("%d questions lie over the window", n)
	}
}
