package cases

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"

	"ogive/geometry/hand"
	"ogive/imaging/casebook"
	"ogive/ui/look"
)

var variants = map[string]fyne.ThemeVariant{"light": theme.VariantLight, "dark": theme.VariantDark}

func TestTheRoomHasRoomInTheSmallestWindowInLightAndDark(t *testing.T) {
	book := opened(t)
	id := filled(t, book)
	for n, code := range []string{"S-003", "S-007", "K-2", "S-021"} {
		add(t, book, casebook.Case{Code: code, Hand: allHands[n%3]})
	}
	folder := t.TempDir()
	for n := range 3 {
		brought(t, book, id, casebook.Item{Path: picture(t, folder, 40+n), Date: "2026-03-30"})
	}
	for name, variant := range variants {
		s := newScene(t, book)
		fyne.CurrentApp().Settings().SetTheme(look.Theme(variant))
		s.until("the case is shown", func() bool { return len(s.page.shown.photographs) > 0 })
		for _, size := range []fyne.Size{{Width: 1024, Height: 700}, {Width: 1600, Height: 1000}} {
			s.at.Resize(size)
			if least := s.Object().MinSize(); least.Width > 1024 || least.Height > 640 {
				t.Errorf("%s: the room needs %v", name, least)
			}
			s.keep(name + "-" + map[bool]string{true: "small", false: "large"}[size.Width < 1100])
			s.page.choose(s.page.shown.photographs[2].ID)
			s.page.scroll.ScrollToBottom()
			s.keep(name + "-chosen-" + map[bool]string{true: "small", false: "large"}[size.Width < 1100])
			s.page.choose(0)
			s.page.scroll.ScrollToTop()
		}
	}
	for _, p := range unsaid(t, book, id) {
		if err := book.SetHandAndView(p.ID, hand.Right, hand.WebView); err != nil {
			t.Fatal(err)
		}
	}
}

func unsaid(t *testing.T, book *casebook.Casebook, id int64) []casebook.Photograph {
	t.Helper()
	all, err := book.Photographs(id)
	if err != nil {
		t.Fatal(err)
	}
	var out []casebook.Photograph
	for _, p := range all {
		if p.Hand == "" {
			out = append(out, p)
		}
	}
	return out
}
