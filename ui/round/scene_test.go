package round

import (
	"flag"
	"image/png"
	"math"
	"os"
	"path/filepath"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"

	"ogive/geometry/plane"
	"ogive/imaging/measure"
	"ogive/imaging/rounds"
	"ogive/ui/look"
)

var keep = flag.String("keep", "", "folder in which pictures of the room are kept, to be looked at")

// scene is a room in a window. What comes back from beside the window waits until
// the test runs it, so that a test is one goroutine.
type scene struct {
	*Room
	t     *testing.T
	win   fyne.Window
	queue chan func()
}

func newScene(t *testing.T, folder string, v fyne.ThemeVariant, size fyne.Size) *scene {
	t.Helper()
	test.NewTempApp(t).Settings().SetTheme(look.Theme(v))
	w := test.NewTempWindow(t, nil)
	s := &scene{Room: New(w), t: t, win: w, queue: make(chan func(), 100)}
	s.beside = func(work func() func()) { go func() { s.queue <- work() }() }
	s.soon = func(work func()) { work() }
	s.now = func() time.Time { return time.Date(2026, 3, 1, 12, 0, 0, 0, time.UTC) }
	w.SetPadded(false)
	w.SetContent(s.Object())
	w.Resize(size)
	settings, err := measure.Defaults()
	if err != nil {
		t.Fatal(err)
	}
	s.Show(folder, "AB", settings)
	s.came()
	t.Cleanup(s.stop)
	return s
}

func small() fyne.Size { return fyne.NewSize(1024, 700) }

// came waits for one thing to come back from beside the window.
func (s *scene) came() {
	s.t.Helper()
	select {
	case then := <-s.queue:
		if then != nil {
			then()
		}
	case <-time.After(time.Minute):
		s.t.Fatal("nothing came back")
	}
}

func (s *scene) press(name fyne.KeyName) { s.keyboard.TypedKey(&fyne.KeyEvent{Name: name}) }

// click is what Fyne reports of a click on the photograph.
func (s *scene) click(at plane.PixelPoint) {
	s.t.Helper()
	b := s.table.board
	for range 200 { // the board takes a photograph over apart
		if p := b.PositionOf(plane.Pt[plane.Pixel](600, 450)); p.X > 10 && p.X < b.Size().Width {
			break
		}
		time.Sleep(5 * time.Millisecond)
	}
	p := b.PositionOf(at)
	e := fyne.PointEvent{Position: p}
	b.MouseDown(&desktop.MouseEvent{PointEvent: e, Button: desktop.MouseButtonPrimary})
	time.Sleep(8 * time.Millisecond) // no hand is quicker
	b.MouseUp(&desktop.MouseEvent{PointEvent: e, Button: desktop.MouseButtonPrimary})
	b.Tapped(&e)
}

// truthful is the right answer to a question, and where a normal crown lies.
func truthful(p *rounds.Picture, of rounds.Asked, l rounds.Limits) string {
	web, _ := p.Truth.Web(p.Web)
	within := func(x float64, band [2]float64, low, high string) string {
		switch {
		case x < band[0]:
			return low
		case x > band[1]:
			return high
		}
		return "within limits"
	}
	switch of {
	case rounds.Place:
		return within(float64(web.Index.Value), l.Index, "too deep", "too shallow")
	case rounds.Slope:
		return within(web.Slope.Value.Degrees(), l.Slope, "too flat", "too steep")
	case rounds.Shape:
		return web.Shape.String()
	}
	return ""
}

// middle is where a crown of that index lies between both digits.
func middle(p *rounds.Picture, index float64) plane.PixelPoint {
	radial, ulnar := p.Web.Digits()
	a, b := p.Truth.Joints[radial], p.Truth.Joints[ulnar]
	return a[1].Towards(a[2], index).Mid(b[1].Towards(b[2], index))
}

// lookedAt keeps a picture of the window where a folder is given.
func (s *scene) lookedAt(name string) {
	s.t.Helper()
	if *keep == "" {
		return
	}
	time.Sleep(300 * time.Millisecond) // the board prepares the photograph apart
	f, err := os.Create(filepath.Join(*keep, name+".png"))
	if err != nil {
		s.t.Fatal(err)
	}
	defer f.Close()
	if err := png.Encode(f, s.win.Canvas().Capture()); err != nil {
		s.t.Fatal(err)
	}
}

func near(a, b float64) bool { return math.Abs(a-b) < 1e-9 }

var _ = theme.VariantLight
