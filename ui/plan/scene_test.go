package plan

import (
	"image"
	"math/rand/v2"
	"sync"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ogive/geometry/arch"
	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/imaging/marksfile"
	"ogive/imaging/measure"
	"ogive/imaging/phantom"
	"ogive/imaging/photo"
	"ogive/imaging/planfile"
	"ogive/imaging/planning"
	"ogive/ui/look"
	"ogive/ui/shots"
)

// pair is a right hand whose third web is joined and its left fellow.
type pair struct {
	photograph  *photo.Photograph
	here, other planning.Hand
}

// prepared is a phantom, measured; the webs left out of keep are unmarked.
func prepared(c phantom.Case, keep ...hand.Web) (*photo.Photograph, planning.Hand, error) {
	picture, err := c.Render()
	if err != nil {
		return nil, planning.Hand{}, err
	}
	p, err := photo.Decode(picture.JPEG)
	if err != nil {
		return nil, planning.Hand{}, err
	}
	settings, err := measure.Defaults()
	if err != nil {
		return nil, planning.Hand{}, err
	}
	m, reference := picture.Truth.Marks(0.7, rand.New(rand.NewPCG(9, c.Seed)))
	var webs []hand.WebMarks
	for _, w := range m.Webs {
		for _, k := range keep {
			if w.Web == k {
				webs = append(webs, w)
			}
		}
	}
	m.Webs = webs
	h, err := planning.Prepare(measure.Subject{Photograph: p, Marks: marksfile.File{Photograph: "hand.jpg", Marks: m, Reference: reference}}, settings)
	return p, h, err
}

// hands are made once for all tests.
var hands = sync.OnceValues(func() (out pair, err error) {
	u := phantom.WebShape{Shape: arch.U, Index: 0.5, Span: 10, Flat: 0.4}
	third := func(index plane.Ratio) phantom.WebShape {
		return phantom.WebShape{Shape: arch.Gothic, Index: index, Span: 8.5, Turn: plane.Degrees(60)}
	}
	webs := func(index plane.Ratio) map[hand.Web]phantom.WebShape {
		return map[hand.Web]phantom.WebShape{hand.SecondWeb: u, hand.ThirdWeb: third(index), hand.FourthWeb: u}
	}
	const wide, high = 1120, 840
	out.photograph, out.here, err = prepared(phantom.Case{Seed: 5, Size: 40, Width: wide, Height: high, Reference: phantom.IDCard, Webs: webs(0.8)}, hand.SecondWeb, hand.FourthWeb)
	if err != nil {
		return out, err
	}
	_, out.other, err = prepared(phantom.Case{Seed: 6, Size: 40, Width: wide, Height: high, Side: hand.Left, Reference: phantom.IDCard, Webs: webs(0.55)}, hand.SecondWeb, hand.ThirdWeb, hand.FourthWeb)
	return out, err
})

// model is the plan as it is begun for the joined third web.
func model(t testing.TB) Model {
	t.Helper()
	h, err := hands()
	if err != nil {
		t.Fatal(err)
	}
	b, err := planning.Begin(h.here, &h.other)
	if err != nil {
		t.Fatal(err)
	}
	return Model{Title: "EXAMPLE-1", Photograph: h.photograph, Here: h.here, Other: &h.other, File: b.File, Notes: b.Notes}
}

// room is a room in a window, that does everything at once.
func room(t testing.TB, v fyne.ThemeVariant, size fyne.Size) (*Room, fyne.Window) {
	t.Helper()
	a := test.NewApp()
	t.Cleanup(a.Quit)
	a.Settings().SetTheme(look.Theme(v))
	w := test.NewWindow(nil)
	t.Cleanup(w.Close)
	r := New(w)
	r.apart, r.do = func(work func()) { work() }, func(work func()) { work() }
	w.SetPadded(false)
	w.SetContent(r.Object())
	w.Resize(size)
	return r, w
}

func small700() fyne.Size { return fyne.NewSize(1024, 700) }

// shown is a room with the plan of the joined third web.
func shown(t testing.TB) *Room {
	t.Helper()
	r, _ := room(t, theme.VariantLight, small700())
	// A board prepares a photograph apart; a preview it has at once.
	r.plate.put = func(p *photo.Photograph) {
		r.plate.ShowPreview(image.NewRGBA(image.Rect(0, 0, 8, 6)), p.Size())
	}
	r.Show(model(t))
	if !r.plate.seen {
		t.Fatal("the photograph is not on the board")
	}
	return r
}

// settle waits until the board has its photograph.
func settle(r *Room) {
	for i := 0; i < 200 && !r.plate.seen; i++ {
		time.Sleep(10 * time.Millisecond)
	}
}

// lookedAt keeps a picture of the window where pictures are wanted.
func lookedAt(t *testing.T, w fyne.Window, name string) {
	t.Helper()
	if shots.Wanted() {
		time.Sleep(300 * time.Millisecond) // the board prepares its photograph apart
		shots.Keep(t, w, name)
	}
}

func TestTheRoomIsLookedAt(t *testing.T) {
	if !shots.Wanted() {
		return
	}
	for name, v := range map[string]fyne.ThemeVariant{"light": theme.VariantLight, "dark": theme.VariantDark} {
		for size, s := range map[string]fyne.Size{"1024": small700(), "1600": fyne.NewSize(1600, 1000)} {
			r, w := room(t, v, s)
			for _, title := range []string{"Skin", "Colour", "Family", "Sheet"} {
				r.AddPanel(title, look.IconPlan, widget.NewLabel("the "+title+" panel"), nil)
			}
			r.Show(model(t))
			settle(r)
			for i, tab := range []string{"arch", "flap", "zigzag"} {
				r.column.open(i)
				r.walk(1)
				r.walk(1)
				r.walk(1)
				lookedAt(t, w, tab+"-"+name+"-"+size)
			}
		}
	}
	r, w := room(t, theme.VariantLight, small700())
	m := model(t)
	m.File.Webs = nil
	r.Show(m)
	settle(r)
	lookedAt(t, w, "no-web")
	m.File.Webs = []planfile.Web{{Web: hand.ThirdWeb}}
	r.Show(m)
	lookedAt(t, w, "no-arch")
	crowded(t)
}

// crowded looks at several alternatives, narrow tips and a rule withdrawn.
func crowded(t *testing.T) {
	t.Helper()
	r, w := room(t, theme.VariantDark, small700())
	m := model(t)
	joints := map[hand.Digit]map[hand.Joint]plane.PixelPoint{}
	for d, js := range m.Here.Ground.Marks.Joints {
		joints[d] = map[hand.Joint]plane.PixelPoint{}
		for j, at := range js {
			if d != hand.Ring || j != hand.PIP {
				joints[d][j] = at
			}
		}
	}
	m.Here.Ground.Marks.Joints = joints
	m.Here.Ground.Absent = map[hand.Digit]map[hand.Joint]bool{hand.Ring: {hand.PIP: true}}
	r.Show(m)
	settle(r)
	r.copyAlternative()
	r.rename("a shade deeper, rounder, and quite a long name for it")
	r.column.open(flapTab)
	r.drawPalmar()
	lookedAt(t, w, "withdrawn")
	r.column.open(zigzagTab)
	for range 9 {
		r.count(1)
	}
	r.walk(1)
	r.walk(1)
	r.walk(1)
	lookedAt(t, w, "narrow")
	r.walk(2)
	lookedAt(t, w, "narrow-tip")
	r.column.scroll.ScrollToBottom()
	lookedAt(t, w, "narrow-end")
}
