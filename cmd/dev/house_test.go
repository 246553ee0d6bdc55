package main

import (
	"os"
	"strings"
	"testing"
	"testing/fstest"
)

func file(imports ...string) *fstest.MapFile {
	text := "package p\n"
	for _, i := range imports {
		text += "import _ \"" + i + "\"\n"
	}
	return &fstest.MapFile{Data: []byte(text)}
}

func TestArrowsRunOneWay(t *testing.T) {
	for name, c := range map[string]struct {
		at, imports string
		refused     bool
	}{
		"imaging knows geometry":                 {"imaging/photo/a.go", "ogive/geometry/plane", false},
		"geometry knows no imaging":              {"geometry/plane/a.go", "ogive/imaging/photo", true},
		"nor do its tests":                       {"geometry/plane/a_test.go", "ogive/imaging/photo", true},
		"geometry opens no file":                 {"geometry/norms/a.go", "os", true},
		"its tests may read test data":           {"geometry/norms/a_test.go", "os", false},
		"geometry knows no image":                {"geometry/norms/a.go", "image/color", true},
		"imagine is no image":                    {"geometry/norms/a.go", "imagine", false},
		"geometry is given its table":            {"geometry/norms/a.go", "ogive/assets", true},
		"its tests may take the shipped one":     {"geometry/norms/a_test.go", "ogive/assets", false},
		"imaging has no window":                  {"imaging/photo/a.go", "fyne.io/fyne/v2", true},
		"imaging knows no ui":                    {"imaging/photo/a.go", "ogive/ui/canvas", true},
		"the window may use imaging":             {"ui/a.go", "ogive/imaging/photo", false},
		"the window knows no command":            {"ui/a.go", "ogive/cmd/ogive", true},
		"the window opens no connection":         {"ui/a.go", "net/http", true},
		"an address opens no connection":         {"ui/a.go", "net/url", false},
		"the batch program has no window":        {"cmd/ogive-batch/a.go", "ogive/ui", true},
		"the program with the window has one":    {"cmd/ogive/a.go", "ogive/ui", false},
		"test data is no code of the repository": {"geometry/testdata/a.go", "os", false},
	} {
		got, err := complaints(fstest.MapFS{c.at: file(c.imports)})
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		if refused := len(got) > 0; refused != c.refused {
			t.Errorf("%s: complaints %q", name, got)
		}
		if c.refused && (len(got) != 1 || !strings.HasPrefix(got[0], c.at+" imports "+c.imports)) {
			t.Errorf("%s: the complaint %q names neither file nor import", name, got)
		}
	}
}

func TestNothingElseLiesAtTheTopLevel(t *testing.T) {
	got, err := complaints(fstest.MapFS{
		"README.md": file(), ".ci/run": file(), "geometry/plane/plane.go": file(), "util/a.go": file(),
	})
	if err != nil || len(got) != 1 || !strings.HasPrefix(got[0], "util ") {
		t.Errorf("complaints %q, %v; want one, about util", got, err)
	}
}

func TestThisHouseIsInOrder(t *testing.T) {
	got, err := complaints(os.DirFS("../.."))
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range got {
		t.Error(c)
	}
}
