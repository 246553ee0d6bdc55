package cases

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"ogive/geometry/hand"
	"ogive/imaging/appraisal"
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
	s.index.search.SetText("nothing such")
	s.until("nothing is found", func() bool { return len(s.index.found) == 0 })
	if !s.index.none.Visible() || !strings.Contains(s.index.none.Text, "nothing such") || s.empty.Visible() {
		t.Errorf("it says %q", s.index.none.Text)
	}
}

func TestWhatTheFormRefusesIsSaidAtItsField(t *testing.T) {
	s := newScene(t, opened(t))
	f := newForm(casebook.Case{})
	s.writeCase("New case", f, func(b *casebook.Casebook, c casebook.Case) (int64, error) { return b.AddCase(c) })
	f.code.SetText("Anna Berger")
	if !f.wrongCode.Visible() || !strings.Contains(f.wrongCode.Text, "looks like a name") {
		t.Errorf("at the code it says %q", f.wrongCode.Text)
	}
	f.born.SetText("2021-07-14")
	if !f.wrongBorn.Visible() || !strings.Contains(f.wrongBorn.Text, "give the month, 2021-07") {
		t.Errorf("at the month of birth it says %q", f.wrongBorn.Text)
	}
	test.Tap(f.save)
	if !f.wrongHands.Visible() {
		t.Error("nothing is said of the missing hand")
	}
	s.settle()
	if found, _ := s.book.Cases(""); len(found) != 0 {
		t.Errorf("it was kept: %v", found)
	}
	f.code.SetText("S-9")
	f.born.SetText("2021-07")
	f.hands.Choose(0)
	if f.wrongCode.Visible() || f.wrongBorn.Visible() || f.wrongHands.Visible() {
		t.Error("what has been mended is still called wrong")
	}
	web := f.joins[1]
	web.joined.SetChecked(true)
	web.kind.Choose(1)
	web.day.SetText("14.3.2023")
	if !web.wrong.Visible() {
		t.Error("nothing is said of the date")
	}
	web.day.SetText("2023-03-14")
	test.Tap(f.save)
	s.until("the case is shown", func() bool { return s.page.shown.about.Code == "S-9" })
	want := casebook.Join{Hand: hand.Left, Web: hand.SecondWeb, Kind: casebook.Complex, Operated: "2023-03-14"}
	if got := s.page.shown.about.Joins; len(got) != 1 || got[0] != want {
		t.Errorf("kept %+v", got)
	}
}

func TestEditingACaseLosesNothing(t *testing.T) {
	s, _ := withCase(t)
	c, ok := newForm(s.page.shown.about).read()
	was := s.page.shown.about
	if !ok || c.Code != was.Code || c.Born != was.Born || c.Hand != was.Hand || c.Findings != was.Findings || len(c.Joins) != 1 || c.Joins[0] != was.Joins[0] {
		t.Errorf("the form makes %+v of %+v", c, was)
	}
}

func TestOneAnswerTellsTheHandOfManyPhotographs(t *testing.T) {
	s, id := withCase(t)
	if s.page.asking.panel.Visible() {
		t.Error("it asks though all is said")
	}
	folder := t.TempDir()
	var ids []int64
	for n := range 3 {
		ids = append(ids, brought(t, s.book, id, casebook.Item{Path: picture(t, folder, 60+n), Date: "2026-03-30"}))
	}
	s.Refresh()
	s.until("it asks", s.page.asking.panel.Visible)
	if got := s.page.asking.chosen(); len(got) != 1 || got[0] != ids[0] {
		t.Errorf("at first the answer is for %v", got)
	}
	test.Tap(s.page.asking.thumbs[ids[1]])
	s.page.asking.tiles[3].Tapped(nil) // right palm
	s.until("two are answered", func() bool { return len(s.page.asking.order) == 1 })
	for n, want := range []string{"right palmar", "right palmar", " "} {
		p, err := s.book.Photograph(ids[n])
		if err != nil || p.Hand+" "+p.View != want {
			t.Errorf("photograph %d shows %q, want %q (%v)", n, p.Hand+" "+p.View, want, err)
		}
	}
	if got := s.page.asking.chosen(); len(got) != 1 || got[0] != ids[2] {
		t.Errorf("then the answer is for %v", got)
	}
}

func TestTilesShowTheHandThatTheyName(t *testing.T) {
	s := newScene(t, opened(t))
	n := 0
	for _, view := range views {
		for _, side := range sides {
			var told string
			tile := newTile(side, view, func() { told = side.String() + view.String() })
			tile.TypedKey(&fyne.KeyEvent{Name: fyne.KeySpace})
			if told != side.String()+view.String() {
				t.Errorf("tile %d tells %q", n, told)
			}
			n++
		}
	}
	if len(s.page.asking.tiles) != n {
		t.Errorf("%d tiles for %d answers", len(s.page.asking.tiles), n)
	}
}

func TestPhotographsAreChosenAndOpenedByPointerAndByKey(t *testing.T) {
	s, _ := withCase(t)
	var openedIDs []int64
	s.OnOpen = func(p casebook.Photograph) { openedIDs = append(openedIDs, p.ID) }
	first, second := s.page.shown.photographs[0], s.page.shown.photographs[1]
	test.Tap(s.page.thumbs[first.ID])
	if s.page.chosen != first.ID || len(openedIDs) != 0 || !s.page.foot.buttons.Visible() {
		t.Errorf("one tap chose %d and opened %v", s.page.chosen, openedIDs)
	}
	test.Tap(s.page.thumbs[first.ID])
	s.page.thumbs[second.ID].TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	test.Tap(s.page.foot.open)
	if len(openedIDs) != 3 || openedIDs[0] != first.ID || openedIDs[1] != second.ID || openedIDs[2] != second.ID {
		t.Errorf("opened %v", openedIDs)
	}
	if s.page.foot.plan.Visible() {
		t.Error("a plan is offered though nobody plans")
	}
}

func TestTwoPhotographsAreComparedWithTheOperatedHandFirst(t *testing.T) {
	s, _ := withCase(t)
	var a, b casebook.Photograph
	s.OnBeside = func(x, y casebook.Photograph) { a, b = x, y }
	for _, p := range s.page.shown.photographs {
		if p.Date == "2024-04-02" && p.Hand == "right" && p.View == "palmar" {
			s.page.choose(p.ID)
		}
	}
	test.Tap(s.page.foot.beside)
	var offered []*thumb
	for _, o := range test.LaidOutObjects(s.at.Canvas().Overlays().Top()) {
		if th, ok := o.(*thumb); ok {
			offered = append(offered, th)
		}
	}
	if len(offered) != 5 || offered[0].words[0] != "same day" {
		t.Fatalf("%d are offered", len(offered))
	}
	test.Tap(offered[0])
	if a.Hand != "left" || b.Hand != "right" || a.Date != b.Date || b.ID != s.page.chosen {
		t.Errorf("compared %+v with %+v", a, b)
	}
}

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

func TestACaseIsRemovedOnlyAfterItsCodeWasTyped(t *testing.T) {
	s, id := withCase(t)
	for _, want := range []string{"5 sittings", "17 photographs"} {
		if got := lossText(s.page.shown); !strings.Contains(got, want) {
			t.Errorf("the loss of %s is not said: %s", want, got)
		}
	}
	s.removeCase()
	if b := s.button("Remove for good"); b == nil || !b.Disabled() {
		t.Fatal("it can be removed before the code is typed")
	}
	typed := s.at.Canvas().Focused()
	for _, letter := range "S-012" {
		typed.TypedRune(letter)
	}
	s.press("Remove for good")
	s.until("no case is left", s.empty.Visible)
	if _, err := s.book.Case(id); err == nil {
		t.Error("the case is still there")
	}
}

func TestACaseGoesOutLockedAndComesInElsewhere(t *testing.T) {
	s, _ := withCase(t)
	f := s.newExportForm("S/012")
	if !strings.Contains(f.hint.Text, "Without a passphrase anyone") || f.save.Disabled() || filepath.Base(f.path()) != "S-012.ogive-case" {
		t.Errorf("it warns %q, saves as %s", f.hint.Text, f.path())
	}
	f.pass.SetText("crown and span")
	if !f.save.Disabled() || !strings.Contains(f.hint.Text, "not the same") {
		t.Errorf("one passphrase is enough: %q", f.hint.Text)
	}
	f.again.SetText("crown and span")
	if f.save.Disabled() {
		t.Errorf("it can't be saved: %q", f.hint.Text)
	}
	path := filepath.Join(t.TempDir(), "out.ogive-case")
	if err := s.book.Export(s.page.id, path, "crown and span"); err != nil {
		t.Fatal(err)
	}
	other := newScene(t, opened(t))
	other.until("it is empty", other.empty.Visible)
	other.receiveFrom(path, "", func(string) {})
	other.until("the passphrase is asked for", func() bool { return other.at.Canvas().Overlays().Top() != nil })
	pass := other.at.Canvas().Focused()
	for _, letter := range "crown and span" {
		pass.TypedRune(letter)
	}
	other.press("Open")
	other.until("the case is shown", func() bool { return other.page.shown.about.Code == "S-012" })
	if got := len(other.page.shown.photographs); got != 17 || other.at.Canvas().Overlays().Top() != nil {
		t.Errorf("%d photographs came in", got)
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

func TestAnAppraisalIsKeptInTheCasebookAtOnce(t *testing.T) {
	s, id := withCase(t)
	s.Observer = func() string { return "AB" }
	last := s.page.shown.sittings[4]
	s.appraise(last)
	s.until("the page is open", s.appraising.object.Visible)
	if s.rooms.Visible() || s.appraising.title.Text != "S-012, appraisal on 30 Mar 2026" {
		t.Errorf("it is called %q", s.appraising.title.Text)
	}
	var a appraisal.Appraisal
	a.Observer = "AB"
	a.Set(appraisal.Given{Finding: appraisal.Feel, Place: appraisal.Web(hand.Left, hand.ThirdWeb), Choice: "thickened"})
	if err := s.appraising.form.OnSave(a); err != nil {
		t.Fatal(err)
	}
	s.press("Back to the case")
	s.until("the case tells of it", func() bool { return len(s.page.shown.appraised[last.ID]) == 1 })
	all, err := s.book.Appraisals(id)
	if err != nil || len(all) != 1 || all[0].Sitting != last.ID || all[0].Appraisal.Observer != "AB" || !s.rooms.Visible() {
		t.Errorf("kept %+v (%v)", all, err)
	}
}

func TestASittingBearsANoteAndCanBeCorrected(t *testing.T) {
	s, id := withCase(t)
	last := s.page.shown.sittings[4]
	s.writeNote(last)
	for _, letter := range "splint at night" {
		s.at.Canvas().Focused().TypedRune(letter)
	}
	s.press("Keep")
	s.until("the note is shown", func() bool { return s.page.shown.sittings[4].Note == "splint at night" })
	for _, item := range s.page.ofSitting(last) {
		if item.Label == "This is: at operation" {
			item.Action()
		}
	}
	s.until("the stage is shown", func() bool { return s.page.shown.sittings[4].Stage == casebook.AtOperation })
	s.newSitting()
	for _, letter := range "2026-06-01" {
		s.at.Canvas().Focused().TypedRune(letter)
	}
	s.press("Keep")
	s.until("there is another sitting", func() bool { return len(s.page.shown.sittings) == 6 })
	if all, err := s.book.Sittings(id); err != nil || all[5].Date != "2026-06-01" {
		t.Errorf("kept %+v (%v)", all, err)
	}
}
