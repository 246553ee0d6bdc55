package window

import (
	"math/rand/v2"
	"os"
	"path/filepath"
	"sync"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/geometry/scale"
	"ogive/imaging/phantom"
	"ogive/ui/language"
	"ogive/ui/marking"
)

// scene is a window under test. What comes back from beside the window waits in
// a queue until the test runs it, so that a test is one goroutine.
type scene struct {
	*Window
	t     *testing.T
	queue chan func()
}

func newScene(t *testing.T) *scene {
	t.Helper()
	queue := make(chan func(), 1000)
	app := queued{test.NewTempApp(t), queue}
	fyne.SetCurrentApp(app)
	if err := language.Load(); err != nil {
		t.Fatal(err)
	}
	app.Preferences().SetString(shadeKey, "light")
	w, err := New(app)
	if err != nil {
		t.Fatal(err)
	}
	s := &scene{Window: w, t: t, queue: queue}
	w.do = func(f func()) { s.queue <- f }
	w.win.Show()
	w.win.Resize(fyne.NewSize(1024, 700))
	w.keyboard.take()
	return s
}

// until runs what comes back until something holds.
func (s *scene) until(what string, holds func() bool) {
	s.t.Helper()
	deadline := time.After(2 * time.Minute) // the processors may be busy
	for !holds() {
		select {
		case f := <-s.queue:
			f()
		case <-deadline:
			s.t.Fatalf("waited in vain until %s; said: %q", what, s.notices.texts())
		}
	}
	s.drain()
}

// drain runs what is waiting now.
func (s *scene) drain() {
	for {
		select {
		case f := <-s.queue:
			f()
		default:
			return
		}
	}
}

// settled waits until nothing is measured any more.
func (s *scene) settled() {
	s.t.Helper()
	s.until("the reading has settled", func() bool { return !s.measuring })
}

// opened opens the hand of the tests in a folder of its own.
func (s *scene) opened() (path string, truth phantom.Truth) {
	s.t.Helper()
	picture := aHand(s.t)
	path = filepath.Join(s.t.TempDir(), "hand.jpg")
	write(s.t, path, picture.JPEG)
	s.Open(path)
	s.until("the photograph is open", func() bool { return s.work != nil && s.work.Path == path })
	s.settled()
	return path, picture.Truth
}

func (s *scene) press(name fyne.KeyName) { s.keyboard.TypedKey(&fyne.KeyEvent{Name: name}) }

// finished marks everything as an observer would who misses by a pixel.
func (s *scene) finished(truth phantom.Truth) {
	s.t.Helper()
	s.tellHand(truth.Side, truth.View)
	marks, reference := truth.Marks(1, rand.New(rand.NewPCG(3, 4)))
	switch r := reference.(type) {
	case scale.Ruler:
		s.tellLength(r.Length)
	case scale.Card:
		s.tellMethod(scale.ByCard, marking.CardSize{Width: r.Width, Height: r.Height})
	}
	s.refused = true // the observer clicks every web
	places := map[marking.Spot]plane.PixelPoint{}
	for n, p := range reference.Points() {
		places[marking.Spot{Kind: marking.ScalePoint, N: n}] = p
	}
	for _, d := range hand.Digits {
		for _, j := range hand.Joints {
			if p, ok := marks.Joint(d, j); ok {
				places[marking.Spot{Kind: marking.JointPoint, Digit: d, Joint: j}] = p
			}
		}
	}
	for _, web := range marks.Webs {
		for n, p := range web.Seeds {
			places[marking.Spot{Kind: marking.SeedPoint, Web: web.Web, N: n}] = p
		}
	}
	for {
		spot, more := s.wanted()
		if !more {
			break
		}
		at, known := places[spot]
		if !known {
			s.t.Fatalf("the window asks for %v, which the observer does not know", spot)
		}
		s.board.OnPlace(at)
	}
	s.settled()
}

// aHand is a small artificial photograph with its truth, made once.
var handOnce = sync.OnceValues(func() (phantom.Picture, error) {
	c := firstExample().Case
	c.Width, c.Height = 1200, 900
	return c.Render()
})

func aHand(t testing.TB) phantom.Picture {
	t.Helper()
	p, err := handOnce()
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func write(t testing.TB, path string, data []byte) {
	t.Helper()
	if err := os.WriteFile(path, data, 0o644); err != nil {
		t.Fatal(err)
	}
}
