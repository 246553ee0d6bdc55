package marksfile

import (
	"bytes"
	"math"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/geometry/scale"
)

func TestWhatIsSavedIsReadBack(t *testing.T) {
	for _, path := range sampleFiles(t, "*.json") {
		f, err := Read(path)
		if err != nil {
			t.Fatal(err)
		}
		again := filepath.Join(t.TempDir(), "again.json")
		if err := f.Save(again); err != nil {
			t.Fatal(err)
		}
		g, err := Read(again)
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(f, g); diff != "" {
			t.Errorf("%s: %s", path, diff)
		}
	}
}

func TestASavedFileHasALineForEveryDigitAndWeb(t *testing.T) {
	f, err := Parse([]byte(sample(t, carded)))
	if err != nil {
		t.Fatal(err)
	}
	data, err := f.Encode()
	if err != nil {
		t.Fatal(err)
	}
	for _, line := range []string{
		`  "photograph": "sitting 2/left palm.heic",`,
		`    "ring": {"mcp": [930,1400], "pip": null}`,
	} {
		if !strings.Contains(string(data), line+"\n") {
			t.Errorf("no line %s in\n%s", line, data)
		}
	}
}

func TestMarksThatCouldNotBeReadAgainAreNotSaved(t *testing.T) {
	sound := File{Photograph: "a.jpg", Marks: hand.Marks{Side: hand.Left, View: hand.Dorsal, ClickSD: 2}}
	path := filepath.Join(t.TempDir(), "marks.json")
	if err := sound.Save(path); err != nil {
		t.Fatal(err)
	}
	before, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	nan := plane.Pixel(math.NaN())
	for says, spoil := range map[string]func(*File){
		"hand:":                         func(f *File) { f.Marks.Side = 0 },
		"photograph:":                   func(f *File) { f.Photograph = "" },
		"webs[0].seeds: holds 1":        func(f *File) { f.Marks.Webs = []hand.WebMarks{{Web: 3, Seeds: make([]plane.PixelPoint, 1)}} },
		"scale.length_mm: is 0":         func(f *File) { f.Reference = scale.Ruler{To: plane.PixelPoint{X: 9}} },
		"the marks hold what is no num": func(f *File) { f.Reference = scale.Ruler{To: plane.PixelPoint{X: nan}, Length: 5} },
	} {
		f := sound
		spoil(&f)
		if err := f.Save(path); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%v, want %q", err, says)
		}
	}
	after, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(before, after) {
		t.Error("a refused file replaced a sound one")
	}
}

func TestThePhotographIsSoughtFromTheFolderOfTheMarks(t *testing.T) {
	marks := filepath.Join("case", "marks.json")
	for name, want := range map[string]string{
		"a.jpg":         filepath.Join("case", "a.jpg"),
		"photos/a.jpg":  filepath.Join("case", "photos", "a.jpg"),
		`photos\a.jpg`:  filepath.Join("case", "photos", "a.jpg"),
		"../a.jpg":      "a.jpg",
		"/photos/a.jpg": "/photos/a.jpg",
	} {
		if runtime.GOOS == "windows" && strings.HasPrefix(name, "/") {
			continue
		}
		if got := (File{Photograph: name}).PhotographPath(marks); got != want {
			t.Errorf("%s: %s, want %s", name, got, want)
		}
	}
}
