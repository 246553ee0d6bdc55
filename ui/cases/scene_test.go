package cases

import (
	"bytes"
	"context"
	"fmt"
	"image"
	"image/color"
	"image/jpeg"
	"os"
	"path/filepath"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ogive/geometry/hand"
	"ogive/imaging/casebook"
	"ogive/imaging/phantom"
	"ogive/ui/look"
	"ogive/ui/shots"
)

// scene is the room under test. What comes back from beside it waits in a queue
// until the test runs it, so that a test is one goroutine.
type scene struct {
	*Room
	t     testing.TB
	book  *casebook.Casebook
	queue chan func()
	at    fyne.Window
}

func newScene(t testing.TB, book *casebook.Casebook) *scene {
	t.Helper()
	test.NewTempApp(t).Settings().SetTheme(look.Theme(theme.VariantLight))
	w := test.NewTempWindow(t, widget.NewLabel(""))
	w.Resize(fyne.NewSize(1024, 700))
	s := &scene{Room: New(w), t: t, book: book, queue: make(chan func(), 10000), at: w}
	s.do = func(f func()) { s.queue <- f }
	s.OnOpen = func(casebook.Photograph) {}
	s.OnBeside = func(a, b casebook.Photograph) {}
	s.OnOverTime = func(int64) {}
	w.SetContent(s.Object())
	s.Show(book)
	return s
}

// until runs what comes back until something holds.
func (s *scene) until(what string, holds func() bool) {
	s.t.Helper()
	deadline := time.After(20 * time.Second)
	for !holds() {
		select {
		case f := <-s.queue:
			f()
		case <-deadline:
			s.t.Fatalf("waited in vain until %s; said: %q", what, s.notice.label.Text)
		}
	}
}

// settle runs what comes back until nothing has come for a while.
func (s *scene) settle() {
	for {
		select {
		case f := <-s.queue:
			f()
		case <-time.After(150 * time.Millisecond):
			return
		}
	}
}

// keep writes a picture of the window if pictures are asked for.
func (s *scene) keep(name string) {
	if !shots.Wanted() {
		return
	}
	s.settle()
	shots.Keep(s.t, s.at, name)
}

func opened(t testing.TB) *casebook.Casebook {
	t.Helper()
	book, err := casebook.Open(t.TempDir())
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = book.Close() })
	return book
}

// child is an invented case, operated on the left third web.
func child() casebook.Case {
	return casebook.Case{Code: "S-012", Born: "2022-02", Hand: casebook.LeftHand, Findings: "nail of ring and middle finger joined",
		Joins: []casebook.Join{{Hand: hand.Left, Web: hand.ThirdWeb, Kind: casebook.Simple, Extent: casebook.Complete, Operated: "2023-03-14"}}}
}

// child with sittings before, at and after the operation.
func filled(t testing.TB, book *casebook.Casebook) int64 {
	t.Helper()
	id := add(t, book, child())
	folder := t.TempDir()
	n := 0
	bring := func(day casebook.Date, side hand.Side, view hand.View) int64 {
		n++
		return brought(t, book, id, casebook.Item{Path: picture(t, folder, n), Hand: side, View: view, Date: day})
	}
	for _, day := range []casebook.Date{"2023-03-13", "2023-03-14", "2023-06-20", "2024-04-02", "2026-03-30"} {
		bring(day, hand.Left, hand.Dorsal)
		if day != "2023-03-14" {
			bring(day, hand.Left, hand.Palmar)
			bring(day, hand.Right, hand.Dorsal)
		}
		if day > "2024" {
			bring(day, hand.Right, hand.Palmar)
			bring(day, hand.Left, hand.WebView)
		}
	}
	return id
}

func add(t testing.TB, book *casebook.Casebook, c casebook.Case) int64 {
	t.Helper()
	id, err := book.AddCase(c)
	if err != nil {
		t.Fatal(err)
	}
	return id
}

func brought(t testing.TB, book *casebook.Casebook, id int64, it casebook.Item) int64 {
	t.Helper()
	results, err := book.Import(context.Background(), id, []casebook.Item{it}, nil)
	if err != nil || results[0].Err != nil || results[0].Twice != nil {
		t.Fatal(err, results)
	}
	return results[0].Photograph
}

var hands = map[int][]byte{}

// picture is an invented photograph, no two numbers alike.
func picture(t testing.TB, folder string, n int) string {
	t.Helper()
	if shots.Wanted() {
		return hand20(t, folder, n)
	}
	m := image.NewRGBA(image.Rect(0, 0, 96, 72))
	for i := range m.Pix {
		m.Pix[i] = uint8(n * 37)
	}
	m.Set(n%96, 3, color.White)
	var out bytes.Buffer
	if err := jpeg.Encode(&out, m, nil); err != nil {
		t.Fatal(err)
	}
	return write(t, folder, n, out.Bytes())
}

func write(t testing.TB, folder string, n int, data []byte) string {
	t.Helper()
	path := filepath.Join(folder, fmt.Sprintf("IMG_%04d.jpg", n))
	if err := os.WriteFile(path, data, 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}

// hand20 is an artificial hand, for pictures to be looked at.
func hand20(t testing.TB, folder string, n int) string {
	t.Helper()
	if hands[n] == nil {
		c := phantom.Random(uint64(n))
		c.Width, c.Height = 640, 480
		p, err := c.Render()
		if err != nil {
			t.Fatal(err)
		}
		hands[n] = p.JPEG
	}
	return write(t, folder, n, hands[n])
}

// press taps the button with that text, wherever in the window it is.
func (s *scene) press(text string) {
	s.t.Helper()
	b := s.button(text)
	if b == nil {
		s.t.Fatalf("there is no button %q", text)
	}
	test.Tap(b)
}

func (s *scene) button(text string) *widget.Button {
	tops := append([]fyne.CanvasObject{s.at.Content()}, s.at.Canvas().Overlays().List()...)
	for i := len(tops) - 1; i >= 0; i-- {
		for _, o := range test.LaidOutObjects(tops[i]) {
			if b, ok := o.(*widget.Button); ok && b.Text == text && b.Visible() {
				return b
			}
		}
	}
	return nil
}
