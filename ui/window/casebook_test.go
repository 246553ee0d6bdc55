package window

import (
	"path/filepath"
	"testing"

	"fyne.io/fyne/v2"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/imaging/casebook"
	"ogive/imaging/casebook/example"
)

// exampleOpened is a window with the example casebook open, as from the start
// page.
func exampleOpened(t *testing.T) (*scene, []casebook.Photograph) {
	t.Helper()
	s := newScene(t)
	s.home = t.TempDir()
	s.openExampleCasebook()
	s.until("the example casebook is open", func() bool { return s.book != nil })
	found, err := s.book.Cases("")
	if err != nil || len(found) != 1 || found[0].Code != example.Code {
		t.Fatalf("the cases are %v (%v)", found, err)
	}
	photographs, err := s.book.Photographs(found[0].ID)
	if err != nil || len(photographs) != 10 {
		t.Fatalf("there are %d photographs (%v)", len(photographs), err)
	}
	t.Cleanup(func() { s.closeCasebook() })
	return s, photographs
}

func TestTheExampleCasebookLeadsThroughAllItsRoomsAndKeepsMarks(t *testing.T) {
	s, photographs := exampleOpened(t)
	if s.standing() != s.cases.Object() {
		t.Fatal("the casebook's room is not shown")
	}
	of, err := s.book.CaseOf(photographs[0])
	if err != nil {
		t.Fatal(err)
	}
	s.showOverTime(of.ID)
	s.until("the case is shown over time", func() bool { return s.overTime != nil && s.standing() == s.overTime.Object() })

	last := photographs[len(photographs)-2:]
	s.showBeside(last[0], last[1])
	s.until("two hands are shown beside each other", func() bool { return s.beside != nil && s.standing() == s.beside.Object() })

	s.openFromCase(last[0])
	s.until("the photograph is open", func() bool { return s.work != nil })
	s.settled()
	if len(s.reading.Webs) == 0 || s.inCase == nil {
		t.Errorf("%d webs are read, kept in a casebook: %v", len(s.reading.Webs), s.inCase != nil)
	}
	s.keepsMarks(last[0])
	s.showCases()
	if s.standing() != s.cases.Object() || s.work != nil {
		t.Error("there is no way back to the casebook")
	}
	s.leaveCasebook()
	if s.standing() != fyne.CanvasObject(s.welcome.Room()) || s.book != nil {
		t.Error("there is no way back to the start page")
	}
}

// keepsMarks changes the marks on the photograph that is open, and looks for them
// in the casebook.
func (s *scene) keepsMarks(p casebook.Photograph) {
	t := s.t
	was, _, err := s.book.Marks(p.ID, example.Observer)
	if err != nil {
		t.Fatal(err)
	}
	s.walk(1)
	s.nudge(plane.Vec[plane.Pixel](3, 0))
	s.settled()
	now, _, err := s.book.Marks(p.ID, example.Observer)
	if err != nil || now.Reference == was.Reference {
		t.Errorf("the nudge of the scale is not kept (%v)", err)
	}
	if p.Hand == hand.Left.String() {
		s.tellHand(hand.Right, hand.Dorsal)
	} else {
		s.tellHand(hand.Left, hand.Dorsal)
	}
	if s.notices.shown[aboutHand] == nil {
		t.Error("the side of a photograph that bears marks was swapped without a word")
	}
}

func TestAFolderWithOtherThingsInItDoesNotBecomeACasebook(t *testing.T) {
	s := newScene(t)
	path := filepath.Join(t.TempDir(), "somebody's photograph.jpg")
	write(t, path, []byte("a photograph"))
	s.openCasebook(filepath.Dir(path))
	if s.book != nil || s.notices.shown[aboutOpening] == nil {
		t.Error("a folder of photographs was taken for a casebook")
	}
}
