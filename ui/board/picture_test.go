package board

import (
	"image"
	"image/color"
	"math/rand/v2"
	"os"
	"path/filepath"
	"sync"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/software"
	"fyne.io/fyne/v2/test"

	"ogive/geometry/arch"
	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/geometry/reading"
	"ogive/imaging/measure"
	"ogive/imaging/phantom"
	"ogive/imaging/photo"
	"ogive/ui/marking"
)

// marked is a phantom with all that can be marked on it, and its reading.
type marked struct {
	photograph *photo.Photograph
	state      marking.State
	reading    marking.Reading
}

var markedHand = sync.OnceValues(func() (marked, error) {
	picture, err := phantom.Random(7).Render()
	if err != nil {
		return marked{}, err
	}
	dir, err := os.MkdirTemp("", "board")
	if err != nil {
		return marked{}, err
	}
	defer os.RemoveAll(dir)
	path := filepath.Join(dir, "hand.jpg")
	if err := os.WriteFile(path, picture.JPEG, 0o600); err != nil {
		return marked{}, err
	}
	work, err := marking.Open(path, measure.Settings{})
	if err != nil {
		return marked{}, err
	}
	marks, ref := picture.Truth.Marks(2, rand.New(rand.NewPCG(1, 1)))
	gestures := []error{work.SetHand(marks.Side, marks.View), work.SetLength(50)}
	for n, at := range ref.Points()[:2] {
		gestures = append(gestures, work.Place(marking.Spot{Kind: marking.ScalePoint, N: n}, at))
	}
	for _, d := range hand.Digits {
		for _, j := range []hand.Joint{hand.MCP, hand.PIP} {
			if at, ok := marks.Joint(d, j); ok {
				gestures = append(gestures, work.Place(marking.Spot{Kind: marking.JointPoint, Digit: d, Joint: j}, at))
			}
		}
	}
	for _, web := range marks.Webs {
		for n, at := range web.Seeds {
			gestures = append(gestures, work.Place(marking.Spot{Kind: marking.SeedPoint, Web: web.Web, N: n}, at))
		}
	}
	for _, err := range gestures {
		if err != nil {
			return marked{}, err
		}
	}
	return marked{work.Photograph, work.State(), work.Measure(work.State())}, nil
})

// newMarkedBoard is a board of the given size with the marked phantom on it.
func newMarkedBoard(t testing.TB, size fyne.Size, scale float32) (*Board, fyne.Window, Scene) {
	t.Helper()
	m, err := markedHand()
	if err != nil {
		t.Fatal(err)
	}
	b := New()
	b.apart = func(work func()) { work() }
	w := test.NewWindow(b)
	t.Cleanup(w.Close)
	w.SetPadded(false)
	w.Canvas().(software.WindowlessCanvas).SetScale(scale)
	w.Resize(size)
	b.ShowPhotograph(m.photograph)
	s := Scene{
		View: m.state.View, Placed: m.state.Placed(), Reading: m.reading, Selected: &ringPIP,
		Proposed: map[hand.Web]bool{hand.SecondWeb: true},
	}
	b.Draw(s)
	w.Canvas().Capture()
	return b, w, s
}

// drawnScene is a plain picture of two fingers on a drape with all kinds of marks
// on it, none of them found or fitted, so that the picture changes only if the
// drawing does.
func drawnScene() (*image.RGBA, Scene) {
	img := image.NewRGBA(image.Rect(0, 0, 900, 640))
	crown := plane.Pt[plane.Pixel](450, 430)
	depth := func(x float64) float64 { return 430 - (x-450)*(x-450)/40 }
	for y := range 640 {
		for x := range 900 {
			c := color.RGBA{120, 126, 134, 255}
			if y > int(depth(float64(x)+0.5)) || x < 310 || x > 590 {
				c = color.RGBA{176, 128, 104, 255}
			}
			img.SetRGBA(x, y, c)
		}
	}
	var edge []plane.PixelPoint
	for x := 345.0; x <= 555; x += 2 {
		edge = append(edge, plane.Pt(plane.Pixel(x), plane.Pixel(depth(x))))
	}
	s := Scene{View: hand.Dorsal, Selected: &ringPIP, Proposed: map[hand.Web]bool{}}
	put := func(spot marking.Spot, x, y plane.Pixel) {
		s.Placed = append(s.Placed, marking.Placed{Spot: spot, At: plane.Pt(x, y)})
	}
	put(marking.Spot{Kind: marking.ScalePoint}, 60, 600)
	put(marking.Spot{Kind: marking.ScalePoint, N: 1}, 420, 604)
	for i, d := range []hand.Digit{hand.Middle, hand.Ring} {
		x := plane.Pixel(250 + 400*i)
		put(marking.Spot{Kind: marking.JointPoint, Digit: d, Joint: hand.MCP}, x, 540)
		put(marking.Spot{Kind: marking.JointPoint, Digit: d, Joint: hand.PIP}, x, 270)
		put(marking.Spot{Kind: marking.JointPoint, Digit: d, Joint: hand.DIP}, x, 140)
		put(marking.Spot{Kind: marking.JointPoint, Digit: d, Joint: hand.Tip}, x, 50)
	}
	put(marking.Spot{Kind: marking.SeedPoint, Web: hand.ThirdWeb}, edge[0].X, edge[0].Y)
	put(marking.Spot{Kind: marking.SeedPoint, Web: hand.ThirdWeb, N: 1}, 454, 426)
	put(marking.Spot{Kind: marking.SeedPoint, Web: hand.ThirdWeb, N: 2}, edge[len(edge)-1].X, edge[len(edge)-1].Y)
	for n := range 3 {
		put(marking.Spot{Kind: marking.JunctionPoint, Web: hand.FourthWeb, N: n}, plane.Pixel(740+30*n), plane.Pixel(420+25*n))
	}
	put(marking.Spot{Kind: marking.AxisPoint, Web: hand.FourthWeb}, 740, 150)
	put(marking.Spot{Kind: marking.AxisPoint, Web: hand.FourthWeb, N: 1}, 840, 330)
	s.Reading.Edges = map[hand.Web][]plane.PixelPoint{hand.ThirdWeb: edge}
	s.Reading.Webs = []reading.Web{{
		Web: hand.ThirdWeb, Shape: arch.Gothic, Index: &plane.Estimate[plane.Ratio]{Value: 0.4},
		Crown: crown, Springing: [2]plane.PixelPoint{edge[20], edge[len(edge)-21]}, Edge: edge, Curve: edge[6 : len(edge)-6],
	}}
	return img, s
}

func TestTheBoardOfAMarkedHand(t *testing.T) {
	b, w := newTestBoard(t, 1)
	img, s := drawnScene()
	b.ShowPhotograph(photo.From(img))
	b.Draw(s)
	test.AssertImageMatches(t, "placed.png", w.Canvas().Capture())

	s.Proposed[hand.ThirdWeb] = true
	s.Wanted = &marking.Spot{Kind: marking.SeedPoint, Web: hand.FourthWeb, N: 1}
	b.Draw(s)
	crown := s.Reading.Webs[0].Crown
	b.see(b.view.ZoomedTo(1.5, b.view.Screen(crown)).Reveal(crown))
	hover(b, b.position(b.view.Screen(crown)))
	test.AssertImageMatches(t, "proposed.png", w.Canvas().Capture())
}

// How long the marks of a whole hand take to be painted into a frame of 1920 x
// 1080, and the loupe:
//
//	go test -run '^$' -bench Marks ./ui/board
func BenchmarkMarks(b *testing.B) {
	test.NewTempApp(b)
	board, _, s := newMarkedBoard(b, fyne.NewSize(1920, 1080), 1)
	for name, zoom := range map[string]float64{"whole": 0, "800 per cent": 8} {
		crown := s.Reading.Webs[1].Crown
		if zoom > 0 {
			board.see(board.view.ZoomedTo(zoom, board.view.Screen(crown)).Reveal(crown))
		}
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				board.frame.unmarked = true
				board.paint(1920, 1080)
			}
		})
	}
	b.Run("loupe", func(b *testing.B) {
		for b.Loop() {
			board.lens.paint(190, 190)
		}
	})
	b.Run("drag event to both", func(b *testing.B) {
		at := plane.Pt[plane.Pixel](700, 700)
		begin := time.Now()
		n := 0
		for b.Loop() {
			s.Placed[3].At = at.Add(plane.Vec(plane.Pixel(n%50), 0))
			board.Draw(s)
			board.paint(1920, 1080)
			board.lens.paint(190, 190)
			n++
		}
		b.ReportMetric(float64(time.Since(begin).Microseconds())/1000/float64(n), "ms")
	})
}
