package marking

import (
	"errors"
	"io/fs"
	"path/filepath"
	"testing"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/geometry/scale"
	"ogive/imaging/marksfile"
)

// A disc and a share of somebody else cannot be written to, and on Linux not even
// the superuser writes files into /sys.
func TestMarksOfAPhotographThatLiesWhereNothingMayBeWrittenAreKeptAside(t *testing.T) {
	f := marksfile.File{Photograph: "a.jpg", Marks: hand.Marks{Side: hand.Left, View: hand.Dorsal, ClickSD: 2},
		Reference: scale.Ruler{From: plane.Pt[plane.Pixel](1, 1), To: plane.Pt[plane.Pixel](90, 1), Length: 10}}
	own := filepath.Join(t.TempDir(), "marks")
	k, err := BesideOrIn("/sys/a.jpg", own)
	if err != nil {
		t.Fatal(err)
	}
	if err := k.Save(f); err != nil {
		t.Fatal(err)
	}
	again, there, err := k.Load()
	if err != nil || !there || again.Marks.Side != hand.Left || filepath.Dir(k.Name()) != own {
		t.Errorf("%v %v, kept in %s: %v", again.Marks.Side, there, k.Name(), err)
	}
}

func TestMarksAreKeptAsideForNoOtherReason(t *testing.T) {
	k, err := BesideOrIn(filepath.Join(t.TempDir(), "nowhere", "a.jpg"), filepath.Join(t.TempDir(), "marks"))
	if err != nil {
		t.Fatal(err)
	}
	if err := k.Save(marksfile.File{Photograph: "a.jpg", Marks: hand.Marks{Side: hand.Left, View: hand.Dorsal, ClickSD: 2}}); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("a folder that is gone was taken for one that may not be written to: %v", err)
	}
}
