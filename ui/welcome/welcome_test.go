package welcome

import (
	"fmt"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"
)

func TestEveryOfferOfThePageDoesWhatItSays(t *testing.T) {
	test.NewTempApp(t)
	p := New()
	done := map[string]int{}
	p.OnOpen = func() { done["open"]++ }
	p.OnExample = func() { done["example"]++ }
	p.OnHow = func() { done["how"]++ }
	p.OnPlan = func() { done["plan"]++ }
	p.OnCasebook = func() { done["casebook"]++ }
	p.OnExampleCasebook = func() { done["example casebook"]++ }
	p.OnRound = func() { done["round"]++ }
	p.OnAgreement = func() { done["agreement"]++ }
	p.OnRecent = func(path string) { done[path]++ }
	p.OnRecentCasebook = func(path string) { done[path]++ }
	var paths []string
	for n := range 6 {
		paths = append(paths, fmt.Sprintf("/cases/%d/right-dorsal.jpg", n))
	}
	p.ShowRecents(paths, []string{"/books/of-2020"})
	w := test.NewTempWindow(t, p.Room())
	w.Resize(fyne.NewSize(1024, 700))
	for _, o := range test.LaidOutObjects(p.Room()) {
		if b, ok := o.(*widget.Button); ok {
			test.Tap(b)
		}
	}
	for _, what := range []string{"open", "example", "how", "plan", "casebook", "example casebook", "round", "agreement", paths[0], paths[2], "/books/of-2020"} {
		if done[what] != 1 {
			t.Errorf("tapping every button once did %q %d times", what, done[what])
		}
	}
	if done[paths[3]] != 0 {
		t.Errorf("more than %d photographs are offered again", mostRecents)
	}
	if least := p.Room().MinSize(); least.Width > 1024 || least.Height > 640 {
		t.Errorf("the page needs %v", least)
	}
}

func TestALongNameIsShortenedAtItsBeginning(t *testing.T) {
	got := short("/cases/a-folder-with-a-name-that-goes-on-and-on-and-on/right-dorsal.jpg")
	if n := len([]rune(got)); n != 32 || got[len(got)-16:] != "right-dorsal.jpg" {
		t.Errorf("%q has %d letters", got, n)
	}
}

func TestWhatThereIsNoWayToDoIsNotOffered(t *testing.T) {
	test.NewTempApp(t)
	p := New()
	p.OnOpen, p.OnExample, p.OnHow = func() {}, func() {}, func() {}
	for _, o := range test.LaidOutObjects(p.Room()) {
		if b, ok := o.(*widget.Button); ok && b.OnTapped == nil {
			t.Errorf("%q is offered and does nothing", b.Text)
		}
	}
}
