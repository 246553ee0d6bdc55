package photographing

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"ogive/ui/drawing"
)

func TestEveryRuleIsDrawnAndTheDrawingIsOfThatRule(t *testing.T) {
	test.NewTempApp(t)
	drawn := map[drawing.Name]bool{}
	for _, r := range rules() {
		drawn[r.picture] = true
		if r.name == "" || len(r.text) < 60 {
			t.Errorf("%s has the name %q and says %q", r.picture, r.name, r.text)
		}
	}
	for _, wanted := range []drawing.Name{drawing.Square, drawing.Height, drawing.Drape, drawing.Fingers, drawing.Views} {
		if !drawn[wanted] {
			t.Errorf("the page does not draw %s", wanted)
		}
	}
}

func TestThePageFitsIntoASmallWindow(t *testing.T) {
	test.NewTempApp(t)
	w := test.NewTempWindow(t, nil)
	w.Resize(fyne.NewSize(1024, 700))
	Show(w)
	page := w.Canvas().Overlays().Top()
	if page == nil {
		t.Fatal("no page is shown")
	}
	if least := page.MinSize(); least.Width > 1024 || least.Height > 700 {
		t.Errorf("the page needs %v", least)
	}
}
