package cases

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"ogive/imaging/casebook"
	"ogive/ui/look"
)

func TestEveryPageFitsIntoTheSmallestWindow(t *testing.T) {
	book := opened(t)
	filled(t, book)
	for name, variant := range variants {
		s := newScene(t, book)
		fyne.CurrentApp().Settings().SetTheme(look.Theme(variant))
		s.until("the case is shown", func() bool { return len(s.page.shown.photographs) > 0 })
		s.page.choose(s.page.shown.photographs[1].ID)
		s.settle()
		for page, open := range map[string]func(){
			"new": s.newCase, "edit": s.editCase, "export": s.export, "remove": s.removeCase, "beside": s.chooseBeside,
			"photograph": func() { s.removePhotograph(s.page.shown.photographs[0]) }, "passphrase": func() { s.askPassphrase("/a/S-012.ogive-case") },
			"folder": s.importFolder, "more": func() { test.Tap(s.page.foot.more) }, "import": func() { test.Tap(s.page.head.bring) },
		} {
			open()
			top := s.at.Canvas().Overlays().Top()
			if top == nil {
				t.Errorf("%s opens no page", page)
				continue
			}
			if least := top.MinSize(); least.Width > 1024 || least.Height > 700 {
				t.Errorf("the page %s needs %v", page, least)
			}
			s.keep("page-" + page + "-" + name)
			for ; top != nil; top = s.at.Canvas().Overlays().Top() {
				s.at.Canvas().Overlays().Remove(top)
			}
		}
		s.appraise(s.page.shown.sittings[3])
		s.until("the appraisal is open", s.appraising.object.Visible)
		s.keep("appraising-" + name)
		if least := s.Object().MinSize(); least.Width > 1024 || least.Height > 640 {
			t.Errorf("appraising needs %v", least)
		}
	}
	empty := newScene(t, opened(t))
	empty.settle()
	empty.keep("empty")
	bare := opened(t)
	add(t, bare, casebook.Case{Code: "S-1", Hand: casebook.BothHands})
	s := newScene(t, bare)
	s.settle()
	s.errand.end(destination{1, "S-1"}, harvest{code: "S-1", all: 9, in: 4, twice: []string{"IMG_2.jpg is in case S-012, 3 Mar 2024"}, bad: []string{"IMG_3.jpg is damaged: it ends too early"}, undated: []string{"/a/IMG_8.jpg", "/a/IMG_9.jpg"}})
	s.keep("bare")
	s.newSitting()
	s.keep("new-sitting")
	s.errand.start(func() {})
	s.errand.progress(3, 9, "IMG_0003.jpg")
	s.keep("running")
}
