package round

import (
	"flag"
	"image/png"
	"os"
	"path/filepath"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"

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
	out   int // what has not come back yet
}

func newScene(t *testing.T, folder string, v fyne.ThemeVariant, size fyne.Size) *scene {
	t.Helper()
	test.NewTempApp(t).Settings().SetTheme(look.Theme(v))
	w := test.NewTempWindow(t, nil)
	s := &scene{Room: New(w), t: t, win: w, queue: make(chan func(), 100)}
	s.beside = func(work func() func()) { s.out++; go func() { s.queue <- work() }() }
	s.soon = func(work func()) { work() }
	s.now = func() time.Time { return time.Date(2026, 3, 1, 12, 0, 0, 0, time.UTC) }
	s.making = func(rounds.Setup, measure.Settings) *rounds.First { return nil } // each test makes its own pictures
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

// came waits until everything has come back from beside the window.
func (s *scene) came() {
	s.t.Helper()
	for s.out > 0 {
		select {
		case then := <-s.queue:
			s.out--
			if then != nil {
				then()
			}
		case <-time.After(time.Minute):
			s.t.Fatal("nothing came back")
		}
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

// truth is what is true of the picture in hand, as the round itself scores it.
func (s *scene) truth() map[rounds.Asked]string {
	s.t.Helper()
	r := s.taking.round
	probe, err := rounds.Begin(s.t.TempDir(), "probe", r.Setup, s.settings.Norms, s.now())
	if err != nil {
		s.t.Fatal(err)
	}
	probe.Order = r.Order[len(r.Results):]
	f, err := probe.Answer(s.taking.picture, rounds.Answer{}, s.settings, s.now())
	if err != nil {
		s.t.Fatal(err)
	}
	out := map[rounds.Asked]string{}
	for _, j := range f.Result.Judged {
		out[j.Of] = j.True
	}
	return out
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

// key is the key that gives an answer, 0 for none.
func key(q rounds.Question, value string) rune {
	for i, c := range q.Choices {
		if c.Value == value {
			return rune('1' + i)
		}
	}
	return 0
}
