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
	p.OnRecent = func(path string) { done[path]++ }
	var paths []string
	for n := range 6 {
		paths = append(paths, fmt.Sprintf("/cases/%d/right-dorsal.jpg", n))
	}
	p.ShowRecents(paths)
	w := test.NewTempWindow(t, p.Room())
	w.Resize(fyne.NewSize(1024, 700))
	for _, o := range test.LaidOutObjects(p.Room()) {
		if b, ok := o.(*widget.Button); ok {
			test.Tap(b)
		}
	}
	for _, what := range []string{"open", "example", "how", paths[0], paths[3]} {
		if done[what] != 1 {
			t.Errorf("tapping every button once did %q %d times", what, done[what])
		}
	}
	if done[paths[4]] != 0 {
		t.Errorf("more than %d photographs are offered again", mostRecents)
	}
	if least := p.Room().MinSize(); least.Width > 1024 || least.Height > 640 {
		t.Errorf("the page needs %v", least)
	}
}

func TestALongNameIsShortenedAtItsBeginning(t *testing.T) {
	got := short("/cases/a-folder-with-a-name-that-goes-on-and-on-and-on/right-dorsal.jpg")
	if n := len([]rune(got)); n != 48 || got[len(got)-16:] != "right-dorsal.jpg" {
		t.Errorf("%q has %d letters", got, n)
	}
}
