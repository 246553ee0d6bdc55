package cases

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"ogive/imaging/casebook"
)

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

func TestKeysStayWithThePhotographWhenItsCaseIsReadAnew(t *testing.T) {
	s, _ := withCase(t)
	id := s.page.shown.photographs[3].ID
	test.Tap(s.page.thumbs[id])
	old := s.page.thumbs[id]
	s.Marked = func(int64) []string { return []string{"AB"} }
	s.Refresh()
	s.until("the case is read anew", func() bool { return s.page.thumbs[id] != old })
	now := s.page.thumbs[id]
	if s.at.Canvas().Focused() != fyne.Focusable(now) || !now.chosen || now.words[1] != "marked by AB" {
		t.Errorf("focused %v, chosen %t, %q", s.at.Canvas().Focused(), now.chosen, now.words[1])
	}
}
