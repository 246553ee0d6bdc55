package marking

import (
	"errors"
	"image"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/imaging/marksfile"
	"ogive/imaging/photo"
)

func TestMarksKeptElsewhereLeaveNothingBesideThePhotograph(t *testing.T) {
	path := filepath.Join(t.TempDir(), "plain.jpg")
	shelf := &shelf{}
	w := shelved(t, path, shelf)
	must(t, w.SetHand(hand.Right, hand.Dorsal))
	spot := Spot{Kind: JointPoint, Digit: hand.Ring, Joint: hand.PIP}
	must(t, w.Place(spot, plane.Pt[plane.Pixel](20, 30)))
	if at := shelved(t, path, shelf).State().Points[spot]; at != plane.Pt[plane.Pixel](20, 30) {
		t.Errorf("taken up again the joint lies at %v", at)
	}
	if w.KeptIn() != shelf.Name() {
		t.Errorf("the marks are said to be in %q", w.KeptIn())
	}
	if left, err := os.ReadDir(filepath.Dir(path)); err != nil || len(left) != 0 {
		t.Errorf("beside the photograph lies %v (%v)", left, err)
	}
}

func TestMarksOutsideThePhotographAreRefusedWhereverTheyWereKept(t *testing.T) {
	shelf := &shelf{full: true, file: marksfile.File{Marks: hand.Marks{Side: hand.Left, View: hand.Dorsal,
		Joints: map[hand.Digit]map[hand.Joint]plane.PixelPoint{hand.Ring: {hand.PIP: plane.Pt[plane.Pixel](20, 900)}}}}}
	_, err := KeptBy("plain.jpg", shelf, plain(), settings(t))
	var refusal *marksfile.Refusal
	if !errors.As(err, &refusal) || !strings.Contains(err.Error(), shelf.Name()) {
		t.Errorf("a joint below the photograph gave %v", err)
	}
}

func TestAFailureToKeepIsReportedAndTheMarkStaysOnTheScreen(t *testing.T) {
	shelf := &shelf{broken: errors.New("the shelf is broken")}
	w := shelved(t, "plain.jpg", shelf)
	if err := w.SetHand(hand.Right, hand.Dorsal); !errors.Is(err, shelf.broken) {
		t.Errorf("keeping failed with %v", err)
	}
	if w.State().Side != hand.Right {
		t.Error("the hand was forgotten")
	}
	shelf.broken = nil
	must(t, w.Save())
	if !shelf.full {
		t.Error("saved again, the shelf is still empty")
	}
}

func TestTheMarksOfABlindRoundCanBeTakenWithoutMeasuring(t *testing.T) {
	w := shelved(t, "round-3.jpg", &shelf{})
	must(t, w.SetHand(hand.Right, hand.Dorsal))
	at := plane.Pt[plane.Pixel](20, 30)
	must(t, w.Place(Spot{Kind: JointPoint, Digit: hand.Ring, Joint: hand.PIP}, at))
	f := w.File()
	if p, ok := f.Marks.Joint(hand.Ring, hand.PIP); !ok || p != at || f.Photograph != "round-3.jpg" {
		t.Errorf("the marks taken are %+v", f)
	}
}

// shelf keeps marks in memory.
type shelf struct {
	file   marksfile.File
	full   bool
	broken error
}

func (s *shelf) Load() (marksfile.File, bool, error) { return s.file, s.full, nil }

func (s *shelf) Save(f marksfile.File) error {
	if s.broken != nil {
		return s.broken
	}
	s.file, s.full = f, true
	return nil
}

func (s *shelf) Name() string { return "the shelf" }

func shelved(t *testing.T, path string, s *shelf) *Work {
	t.Helper()
	w, err := KeptBy(path, s, plain(), settings(t))
	must(t, err)
	return w
}

func plain() *photo.Photograph { return photo.From(image.NewRGBA(image.Rect(0, 0, 300, 200))) }
