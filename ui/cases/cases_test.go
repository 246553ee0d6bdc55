package cases

import (
	"fmt"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"ogive/imaging/casebook"
)

// withCase is a room on a casebook with one filled case, which is shown.
func withCase(t *testing.T) (*scene, int64) {
	t.Helper()
	book := opened(t)
	id := filled(t, book)
	s := newScene(t, book)
	s.until("the case is shown", func() bool { return s.page.shown.about.Code == "S-012" })
	return s, id
}

func TestAnEmptyCasebookOffersANewCase(t *testing.T) {
	s := newScene(t, opened(t))
	s.until("the offer is made", s.empty.Visible)
	test.Tap(s.first)
	if s.at.Canvas().Overlays().Top() == nil {
		t.Fatal("no form opens")
	}
	f := newForm(casebook.Case{})
	s.writeCase("New case", f, func(b *casebook.Casebook, c casebook.Case) (int64, error) { return b.AddCase(c) })
	f.code.SetText("S-3")
	f.hands.Choose(1)
	test.Tap(f.save)
	s.until("the new case is shown", func() bool { return s.page.shown.about.Code == "S-3" })
	if s.empty.Visible() || !s.rooms.Visible() || !s.page.bare.Visible() {
		t.Error("the new case does not offer to import photographs")
	}
}

func TestTheCasePhotographedLastIsOpenAtOnce(t *testing.T) {
	s, id := withCase(t)
	add(t, s.book, casebook.Case{Code: "A-1", Hand: casebook.RightHand})
	s.Show(s.book)
	s.until("a case is shown", func() bool { return s.page.id != 0 })
	if s.page.id != id {
		t.Errorf("case %d is open, want %d", s.page.id, id)
	}
}

func TestEveryKeystrokeSearches(t *testing.T) {
	s, _ := withCase(t)
	for n := range 30 {
		add(t, s.book, casebook.Case{Code: fmt.Sprintf("K-%02d", n), Hand: allHands[n%3]})
	}
	s.Refresh()
	s.until("all cases are listed", func() bool { return len(s.index.found) == 31 })
	for i, want := range []int{30, 30, 10} { // K, K-, K-1
		test.Type(s.index.search, "K-1"[i:i+1])
		s.until(fmt.Sprintf("%q is searched", s.index.search.Text), func() bool { return len(s.index.found) == want })
	}
	s.index.search.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	s.until("Enter opens the first that is found", func() bool { return s.page.shown.about.Code == "K-10" })
	s.index.search.SetText("nothing such")
	s.until("nothing is found", func() bool { return len(s.index.found) == 0 })
	if !s.index.none.Visible() || !strings.Contains(s.index.none.Text, "nothing such") || s.empty.Visible() {
		t.Errorf("it says %q", s.index.none.Text)
	}
}

func TestACasebookForReadingSaysWhyAndWritesNothing(t *testing.T) {
	s, _ := withCase(t)
	second, err := casebook.Open(s.book.Folder())
	if err != nil {
		t.Fatal(err)
	}
	defer func() { _ = second.Close() }()
	s.Show(second)
	s.until("the case is shown", func() bool { return len(s.page.shown.photographs) > 0 })
	if !s.notice.object.Visible() || !strings.HasPrefix(s.notice.label.Text, "For reading only: ") {
		t.Errorf("it says %q", s.notice.label.Text)
	}
	for _, text := range []string{"New case", "Bring a case in…", "Import photographs…", "Edit…"} {
		if b := s.button(text); b == nil || !b.Disabled() {
			t.Errorf("%q can be tapped", text)
		}
	}
	if s.index.search.Disabled() || s.page.head.overTime.Disabled() {
		t.Error("reading is switched off too")
	}
	s.Import([]string{"/a/b.jpg"})
	if s.errand.running {
		t.Error("an import begins")
	}
}

func TestWhatWasSaidGoesWithTheNextCaseAndWhatHoldsStays(t *testing.T) {
	s, _ := withCase(t)
	other := add(t, s.book, casebook.Case{Code: "A-1", Hand: casebook.RightHand})
	s.notice.show("The case is exported.")
	s.ShowCase(other)
	if s.notice.object.Visible() {
		t.Errorf("it still says %q", s.notice.label.Text)
	}
	s.notice.stand("For reading only: another window has it.")
	s.notice.show("Something else.")
	s.ShowCase(s.page.id + 100)
	if s.notice.label.Text != "For reading only: another window has it." || s.notice.close.Visible() {
		t.Errorf("it says %q", s.notice.label.Text)
	}
}
