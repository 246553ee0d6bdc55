package cases

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2/test"

	"ogive/imaging/casebook"
)

func TestPhotographsDroppedAreBroughtInAndWhatBecameOfThemIsSaid(t *testing.T) {
	s, id := withCase(t)
	folder := t.TempDir()
	there, err := s.book.Photographs(id)
	if err != nil {
		t.Fatal(err)
	}
	data, err := os.ReadFile(s.book.Path(there[0]))
	if err != nil {
		t.Fatal(err)
	}
	write(t, folder, 1, data)
	write(t, folder, 2, []byte("no photograph"))
	picture(t, folder, 80)
	picture(t, folder, 81)
	if err := os.WriteFile(filepath.Join(folder, "notes.txt"), nil, 0o644); err != nil {
		t.Fatal(err)
	}
	s.Import([]string{folder})
	if !s.errand.going.Visible() {
		t.Error("nothing shows that photographs are being brought in")
	}
	s.until("the import is done", func() bool { return !s.errand.running })
	for _, want := range []string{"No photograph was brought into S-012.", "1 photograph was there already:", "IMG_0001.jpg is in case S-012, 13 Mar 2023", "1 photograph could not be brought in:", "IMG_0002.jpg"} {
		if !strings.Contains(s.errand.words.Text, want) {
			t.Errorf("%q is not said in\n%s", want, s.errand.words.Text)
		}
	}
	if want := "2 photographs do not tell when they were taken (IMG_0080.jpg, IMG_0081.jpg). On which day?"; s.errand.undated.Text != want || !s.errand.dating.Visible() {
		t.Errorf("it asks %q", s.errand.undated.Text)
	}
	s.errand.day.SetText("yesterday")
	test.Tap(s.errand.dated)
	if !strings.Contains(s.errand.undated.Text, "2026-03-01") || s.errand.running {
		t.Errorf("it says %q", s.errand.undated.Text)
	}
	s.errand.day.SetText("2026-05-04")
	test.Tap(s.errand.dated)
	s.until("they are brought in", func() bool { return !s.errand.running })
	s.until("they are shown", func() bool { return len(s.page.shown.photographs) == len(there)+2 })
	if s.errand.words.Text != "2 photographs were brought into S-012." || s.errand.dating.Visible() {
		t.Errorf("it says %q", s.errand.words.Text)
	}
}

func TestAnImportCanBeStoppedAndSaysSo(t *testing.T) {
	s, id := withCase(t)
	folder := t.TempDir()
	var paths []string
	for n := range 12 {
		paths = append(paths, picture(t, folder, 90+n))
	}
	s.bringIn(destination{id, "S-012"}, paths, "2026-05-04")
	test.Tap(s.errand.halt)
	s.until("it has stopped", func() bool { return !s.errand.running })
	if !strings.Contains(s.errand.words.Text, "not looked at any more") {
		t.Errorf("it says %q", s.errand.words.Text)
	}
}

func TestALeftCasebookCanBeClosedAmidAnImportAndAnotherOneFilled(t *testing.T) {
	s, id := withCase(t)
	folder := t.TempDir()
	var paths []string
	for n := range 40 {
		paths = append(paths, picture(t, folder, 120+n))
	}
	s.bringIn(destination{id, "S-012"}, paths, "2026-05-04")
	s.Finish()
	if err := s.book.Check(t.Context()); err != nil {
		t.Errorf("the casebook is left unwell: %v", err)
	}
	there, err := s.book.Photographs(id)
	if err != nil || len(there) == 17+40 {
		t.Errorf("%d photographs are there after the import was cut short (%v)", len(there), err)
	}
	other := opened(t)
	add(t, other, casebook.Case{Code: "B-1", Hand: casebook.RightHand})
	s.Show(other)
	s.until("the other casebook is shown", func() bool { return s.page.shown.about.Code == "B-1" })
	if s.errand.running || s.errand.object.Visible() {
		t.Error("the import into the first casebook is still shown")
	}
	s.Import(paths[:1])
	s.until("it is brought in", func() bool { return !s.errand.running })
}
