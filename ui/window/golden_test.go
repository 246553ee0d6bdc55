package window

import (
	"bytes"
	"flag"
	"fmt"
	"image"
	"image/png"
	"os"
	"path/filepath"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"golang.org/x/image/draw"

	"ogive/geometry/hand"
	"ogive/geometry/scale"
	"ogive/ui/marking"
)

var (
	update = flag.Bool("update", false, "write the golden pictures anew")
	shots  = flag.String("shots", "", "a folder for pictures of the window at full size, to be looked at")
)

func TestTheWindowLooksAsItDid(t *testing.T) {
	for _, shade := range []string{"light", "dark"} {
		t.Run(shade, func(t *testing.T) {
			s := newScene(t)
			s.app.Preferences().SetString(shadeKey, shade)
			s.applyShade()
			s.looksAs("empty-" + shade)
			_, truth := s.opened()
			s.looksAs("asking-" + shade)
			s.tellHand(truth.Side, truth.View)
			s.board.OnPlace(truth.Ruler.From)
			s.board.OnPlace(truth.Ruler.To)
			s.tellLength(truth.Ruler.Length)
			s.until("webs are proposed", s.proposed)
			for _, j := range []hand.Joint{hand.MCP, hand.PIP} {
				s.board.OnPlace(truth.Joints[hand.IndexFinger][j])
			}
			s.settled()
			s.looksAs("marking-" + shade)
			s.accept()
			for {
				spot, more := s.wanted()
				if !more || spot.Kind != marking.JointPoint {
					break
				}
				s.board.OnPlace(truth.Joints[spot.Digit][spot.Joint])
			}
			s.deselect()
			s.settled()
			s.looksAs("finished-" + shade)
		})
	}
}

func TestEveryWindowSizeHasRoomForEverything(t *testing.T) {
	s := newScene(t)
	_, truth := s.opened()
	s.finished(truth)
	s.tellMethod(scale.ByCard, marking.CardSize{Width: 123.45, Height: 67.89}) // the widest bar
	for _, size := range []fyne.Size{{Width: 1024, Height: 700}, {Width: 1600, Height: 1000}, {Width: 2560, Height: 1440}} {
		s.win.Resize(size)
		least := s.win.Content().MinSize()
		if least.Width > size.Width || least.Height > size.Height {
			t.Errorf("the window needs %v, it has %v", least, size)
		}
		if board := s.board.Size(); board.Width < 0.6*size.Width || board.Height < 0.75*size.Height {
			t.Errorf("of %v the photograph has only %v", size, board)
		}
		if *shots != "" {
			s.keep(s.still(), fmt.Sprintf("size-%.0f", size.Width))
		}
	}
}

// looksAs compares the window with a golden picture of half its size.
func (s *scene) looksAs(name string) {
	s.t.Helper()
	seen := s.still()
	s.keep(seen, name)
	small := image.NewRGBA(image.Rect(0, 0, seen.Bounds().Dx()/2, seen.Bounds().Dy()/2))
	draw.ApproxBiLinear.Scale(small, small.Bounds(), seen, seen.Bounds(), draw.Src, nil)
	path := filepath.Join("testdata", name+".png")
	if *update {
		writePicture(s.t, path, small)
		return
	}
	golden := readPicture(s.t, path)
	if golden.Bounds() != small.Bounds() {
		s.t.Errorf("%s is %v, the window %v", path, golden.Bounds(), small.Bounds())
		return
	}
	if share := differing(golden, small); share > 0.01 {
		was := filepath.Join(s.t.ArtifactDir(), name+"-now.png")
		writePicture(s.t, was, small)
		s.t.Errorf("%.1f %% of the window differ from %s; look at %s, and if it is right, run go test ./ui/window -run Looks -update", 100*share, path, was)
	}
}

// still is the window when nothing moves any more.
func (s *scene) still() image.Image {
	s.t.Helper()
	last := s.win.Canvas().Capture()
	for range 40 {
		time.Sleep(120 * time.Millisecond)
		s.drain()
		now := s.win.Canvas().Capture()
		if differing(last, now) == 0 {
			return now
		}
		last = now
	}
	s.t.Fatal("the window does not come to rest")
	return nil
}

// differing is the share of pixels that differ so much that an eye sees it.
func differing(a, b image.Image) float64 {
	const seen = 24 << 8
	if first, ok := a.(*image.NRGBA); ok {
		if second, also := b.(*image.NRGBA); also && bytes.Equal(first.Pix, second.Pix) {
			return 0
		}
	}
	n, of := 0, 0
	r := a.Bounds().Intersect(b.Bounds())
	for y := r.Min.Y; y < r.Max.Y; y++ {
		for x := r.Min.X; x < r.Max.X; x++ {
			of++
			r1, g1, b1, _ := a.At(x, y).RGBA()
			r2, g2, b2, _ := b.At(x, y).RGBA()
			if apart(r1, r2) > seen || apart(g1, g2) > seen || apart(b1, b2) > seen {
				n++
			}
		}
	}
	return float64(n) / float64(max(of, 1))
}

func apart(a, b uint32) uint32 { return max(a, b) - min(a, b) }

func (s *scene) keep(p image.Image, name string) {
	if *shots != "" {
		writePicture(s.t, filepath.Join(*shots, name+".png"), p)
	}
}

func writePicture(t *testing.T, path string, p image.Image) {
	t.Helper()
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		t.Fatal(err)
	}
	f, err := os.Create(path)
	if err != nil {
		t.Fatal(err)
	}
	if err := png.Encode(f, p); err != nil {
		t.Fatal(err)
	}
	if err := f.Close(); err != nil {
		t.Fatal(err)
	}
}

func readPicture(t *testing.T, path string) image.Image {
	t.Helper()
	f, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	p, err := png.Decode(f)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func TestEveryPageFitsIntoTheSmallestWindow(t *testing.T) {
	s := newScene(t)
	_, truth := s.opened()
	s.finished(truth)
	for name, open := range map[string]func(){
		"how": s.welcome.OnHow, "keys": s.showKeys, "about": s.showAbout, "preferences": s.showPreferences,
		"values": s.showValues, "picture": s.askForPicture, "open": s.askForPhotograph, "caution": s.cautionOnce,
	} {
		open()
		page := s.win.Canvas().Overlays().Top()
		if page == nil {
			t.Errorf("%s opens no page", name)
			continue
		}
		if least := page.MinSize(); least.Width > 1024 || least.Height > 700 {
			t.Errorf("the page %s needs %v", name, least)
		}
		if *shots != "" {
			s.keep(s.still(), "page-"+name)
		}
		for top := s.win.Canvas().Overlays().Top(); top != nil; top = s.win.Canvas().Overlays().Top() {
			s.win.Canvas().Overlays().Remove(top)
		}
	}
}
