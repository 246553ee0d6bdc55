package beside

import (
	"math/rand/v2"
	"sync"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"

	"ogive/geometry/arch"
	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/imaging/marksfile"
	"ogive/imaging/phantom"
	"ogive/imaging/photo"
	"ogive/ui/look"
	"ogive/ui/shots"
)

// photographed is a phantom as it comes into the room.
func photographed(title string, c phantom.Case) (Side, error) {
	picture, err := c.Render()
	if err != nil {
		return Side{}, err
	}
	p, err := photo.Decode(picture.JPEG)
	if err != nil {
		return Side{}, err
	}
	m, reference := picture.Truth.Marks(0.7, rand.New(rand.NewPCG(9, c.Seed)))
	return Side{Title: title, Photograph: p, Marks: marksfile.File{Photograph: "hand.jpg", Marks: m, Reference: reference}}, nil
}

// handsOf is an operated right hand, whose third web lies too deep and whose
// second is a little narrow, its left fellow, and the right hand a year before,
// made once for all tests.
var handsOf = sync.OnceValues(func() (sides [3]Side, err error) {
	webs := func(third plane.Ratio, second plane.Millimetre) map[hand.Web]phantom.WebShape {
		return map[hand.Web]phantom.WebShape{
			hand.SecondWeb: {Shape: arch.U, Index: 0.5, Span: second, Flat: 0.4},
			hand.ThirdWeb:  {Shape: arch.Gothic, Index: third, Span: 9, Turn: plane.Degrees(60)},
			hand.FourthWeb: {Shape: arch.U, Index: 0.5, Span: 10, Flat: 0.35},
		}
	}
	for i, c := range []phantom.Case{
		{Seed: 5, Size: 40, Reference: phantom.IDCard, Webs: webs(0.44, 8.8)},
		{Seed: 6, Size: 40, Reference: phantom.IDCard, Side: hand.Left, Webs: webs(0.55, 10), Turn: plane.Degrees(8)},
		{Seed: 7, Size: 34, Reference: phantom.IDCard, Webs: webs(0.45, 8)},
	} {
		c.Width, c.Height = 1120, 840
		title := []string{"right hand, 3 March 2026", "left hand, 3 March 2026", "right hand, 12 May 2023"}[i]
		if sides[i], err = photographed(title, c); err != nil {
			return sides, err
		}
	}
	return sides, nil
})

// lengthened is the joints of a side with one digit a tenth longer.
func lengthened(s Side, d hand.Digit) map[hand.Digit]map[hand.Joint]plane.PixelPoint {
	out := map[hand.Digit]map[hand.Joint]plane.PixelPoint{}
	for digit, joints := range s.Marks.Marks.Joints {
		out[digit] = map[hand.Joint]plane.PixelPoint{}
		for j, at := range joints {
			if digit == d {
				at = joints[hand.MCP].Towards(at, 1.1)
			}
			out[digit][j] = at
		}
	}
	return out
}

func hands(t *testing.T) [3]Side {
	t.Helper()
	sides, err := handsOf()
	if err != nil {
		t.Fatal(err)
	}
	return sides
}

// room is a room in a window, that compares at once.
func room(t *testing.T, v fyne.ThemeVariant, size fyne.Size) (*Room, fyne.Window) {
	t.Helper()
	test.NewTempApp(t).Settings().SetTheme(look.Theme(v))
	w := test.NewTempWindow(t, nil)
	r := New(w)
	r.apart, r.soon = func(work func()) { work() }, func(work func()) { work() }
	w.SetPadded(false)
	w.SetContent(r.Object())
	w.Resize(size)
	return r, w
}

func small700() fyne.Size { return fyne.NewSize(1024, 700) }

// lookedAt keeps a picture of the window where pictures are wanted.
func lookedAt(t *testing.T, w fyne.Window, name string) {
	t.Helper()
	if shots.Wanted() {
		time.Sleep(400 * time.Millisecond) // the boards prepare photographs apart
		shots.Keep(t, w, name)
	}
}

func TestTheRoomIsLookedAt(t *testing.T) {
	if !shots.Wanted() {
		return
	}
	h := hands(t)
	for name, v := range map[string]fyne.ThemeVariant{"light": theme.VariantLight, "dark": theme.VariantDark} {
		for size, s := range map[string]fyne.Size{"1024": small700(), "1600": fyne.NewSize(1600, 1000)} {
			r, w := room(t, v, s)
			r.Show(h[0], h[1])
			lookedAt(t, w, "hands-"+name+"-"+size)
			r.sheet.scroll.ScrollToBottom()
			lookedAt(t, w, "hands-end-"+name+"-"+size)
		}
	}
	r, w := room(t, theme.VariantLight, small700())
	r.Show(h[0], h[2])
	lookedAt(t, w, "sittings")
	bare := h[1]
	bare.Marks.Marks.Webs = nil
	r.Show(h[0], bare)
	lookedAt(t, w, "unmarked")
	long := h[0]
	long.Marks.Marks.Joints = lengthened(h[0], hand.Ring)
	r.Show(long, h[1])
	r.reveal(hand.ThirdWeb)
	lookedAt(t, w, "longer")
	upright(t)
}

// upright looks at photographs that stand upright, beside a ruler that leaves
// much in doubt.
func upright(t *testing.T) {
	t.Helper()
	var sides [2]Side
	for i, side := range []hand.Side{hand.Right, hand.Left} {
		web := phantom.WebShape{Shape: arch.U, Index: 0.5 + 0.07*plane.Ratio(i), Span: 8.6 + 1.4*plane.Millimetre(i), Flat: 0.4}
		s, err := photographed(side.String()+" hand, 3 March 2026", phantom.Case{
			Seed: uint64(20 + i), Side: side, Size: 30, Width: 900, Height: 1200, Tilt: plane.Degrees(6),
			Webs: map[hand.Web]phantom.WebShape{hand.SecondWeb: web, hand.ThirdWeb: {Shape: arch.V, Index: 0.5, Flare: plane.Degrees(8)}},
		})
		if err != nil {
			t.Fatal(err)
		}
		sides[i] = s
	}
	r, w := room(t, theme.VariantDark, small700())
	r.Show(sides[0], sides[1])
	lookedAt(t, w, "upright")
	r, w = room(t, theme.VariantLight, fyne.NewSize(1600, 1000))
	r.Show(sides[0], sides[1])
	lookedAt(t, w, "upright-1600")
}
