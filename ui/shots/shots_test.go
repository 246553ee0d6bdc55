package shots

import (
	"image/png"
	"os"
	"path/filepath"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"
)

func TestAPictureIsKeptOnlyWhereAFolderIsNamed(t *testing.T) {
	test.NewTempApp(t)
	w := test.NewTempWindow(t, widget.NewLabel("content"))
	w.Resize(fyne.NewSize(120, 80))
	given := *folder
	t.Cleanup(func() { *folder = given })
	into := t.TempDir()
	*folder = ""
	Keep(t, w, "window")
	*folder = into
	if names, err := filepath.Glob(filepath.Join(into, "*")); err != nil || len(names) != 0 {
		t.Fatalf("without a folder there are %q (%v)", names, err)
	}
	Keep(t, w, "window")
	f, err := os.Open(filepath.Join(into, "window.png"))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	if p, err := png.DecodeConfig(f); err != nil || p.Width != 120 || p.Height != 80 {
		t.Errorf("kept is a picture of %d by %d (%v)", p.Width, p.Height, err)
	}
}
