// Package shots keeps pictures of windows under test, for people to look at. Only
// tests use it. A test that calls Keep takes a flag for the folder:
//
//	go test ./ui/plan -shots /tmp/plan
//
// Without the flag nothing is kept.
package shots

import (
	"flag"
	"image/png"
	"os"
	"path/filepath"
	"testing"

	"fyne.io/fyne/v2"
)

var folder = flag.String("shots", "", "a folder for pictures of what is tested, to be looked at")

// Wanted reports whether pictures are kept.
func Wanted() bool { return *folder != "" }

// Keep keeps a picture of the window as name.png.
func Keep(t testing.TB, w fyne.Window, name string) {
	t.Helper()
	if !Wanted() {
		return
	}
	f, err := os.Create(filepath.Join(*folder, name+".png"))
	if err != nil {
		t.Fatal(err)
	}
	if err := png.Encode(f, w.Canvas().Capture()); err != nil {
		t.Fatal(err)
	}
	if err := f.Close(); err != nil {
		t.Fatal(err)
	}
}
