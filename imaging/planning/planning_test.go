package planning

import (
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"github.com/google/go-cmp/cmp"

	"ogive/geometry/arch"
	"ogive/geometry/flap"
	"ogive/geometry/hand"
	"ogive/geometry/plan"
	"ogive/geometry/plane"
	"ogive/imaging/marksfile"
	"ogive/imaging/measure"
	"ogive/imaging/phantom"
	"ogive/imaging/photo"
	"ogive/imaging/planfile"
)

// small is a hand on a smallish photograph, made once for all tests.
var small = sync.OnceValues(func() (phantom.Picture, error) {
	return phantom.Case{
		Seed: 3, Width: 1120, Height: 840, Size: 40,
		Webs: map[hand.Web]phantom.WebShape{
			hand.SecondWeb: {Shape: arch.U, Index: 0.5, Span: 11, Flat: 0.4},
			hand.ThirdWeb:  {Shape: arch.Gothic, Index: 0.56, Span: 9, Turn: plane.Degrees(60)},
			hand.FourthWeb: {Shape: arch.U, Index: 0.5, Span: 11, Flat: 0.4},
		},
	}.Render()
})

func settings(t testing.TB) measure.Settings {
	t.Helper()
	s, err := measure.Defaults()
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// subject is the small photograph with its third web unmarked, as if joined.
func subject(t testing.TB) (measure.Subject, phantom.Truth) {
	t.Helper()
	picture, err := small()
	if err != nil {
		t.Fatal(err)
	}
	p, err := photo.Decode(picture.JPEG)
	if err != nil {
		t.Fatal(err)
	}
	m, reference := picture.Truth.Marks(0.5, rand.New(rand.NewPCG(1, 2)))
	m.Webs = []hand.WebMarks{m.Webs[0], m.Webs[2]}
	return measure.Subject{Photograph: p, Marks: marksfile.File{Photograph: "hand.jpg", Marks: m, Reference: reference}}, picture.Truth
}

func here(t testing.TB) (Hand, phantom.Truth) {
	t.Helper()
	s, truth := subject(t)
	h, err := Prepare(s, settings(t))
	if err != nil {
		t.Fatal(err)
	}
	return h, truth
}

func begun(t testing.TB, h Hand) planfile.File {
	t.Helper()
	b, err := Begin(h, nil)
	if err != nil {
		t.Fatal(err)
	}
	return b.File
}

func TestAPlanIsBegunForTheWebThatIsJoined(t *testing.T) {
	h, _ := here(t)
	b, err := Begin(h, nil)
	if err != nil || len(b.File.Webs) != 1 || b.File.Webs[0].Web != hand.ThirdWeb || len(b.Proposals) != 1 || len(b.Notes) != 1 || !strings.Contains(b.Notes[0], "drag it to where the fingers part") {
		t.Fatalf("%v: %+v", err, b)
	}
	if p := b.Proposals[0].Proposal; p.Origin != plan.FellowWebs || len(p.Reasons) == 0 {
		t.Errorf("%+v", p)
	}
	p := Of(b.File, h, nil)
	w := p.Webs[0]
	if w.Chosen != 0 || w.ThirdsRule != "" {
		t.Fatalf("chosen %d, thirds rule %q", w.Chosen, w.ThirdsRule)
	}
	a := w.Alternatives[0]
	if a.Arch == nil || a.Flap == nil || a.Dorsal == nil || a.Palmar == nil || w.Join == nil || len(a.Notes) != 0 {
		t.Fatalf("%+v", a)
	}
	if got, want := a.Arch.Figures.Index.Value, b.Proposals[0].Proposal.Index.Value; math.Abs(float64(got-want)) > 1e-6 {
		t.Errorf("index %v, proposed %v", got, want)
	}
	if a.Flap.Flap.Kind != flap.DorsalFlap {
		t.Errorf("a %v flap", a.Flap.Flap.Kind)
	}
}

// Every outline lies on the photograph where its millimetres lie on the plane.
func TestPixelsAndMillimetresOfAnOutlineBelongTogether(t *testing.T) {
	h, _ := here(t)
	a := Of(begun(t, h), h, nil).Webs[0].Alternatives[0]
	for name, pair := range map[string]struct {
		mm []plane.Position
		px []plane.PixelPoint
	}{
		"arch": {a.Arch.Curve, a.Arch.Pixels}, "flap": {a.Flap.Flap.Outline, a.Flap.Pixels},
		"dorsal zigzag": {a.Dorsal.Zigzag.Points, a.Dorsal.Pixels}, "palmar zigzag": {a.Palmar.Zigzag.Points, a.Palmar.Pixels},
	} {
		if len(pair.mm) == 0 || len(pair.mm) != len(pair.px) {
			t.Fatalf("%s: %d mm, %d px", name, len(pair.mm), len(pair.px))
		}
		for i, q := range pair.px {
			if d := h.Ground.Fit.Best.Position(q).Distance(pair.mm[i]); d > 1e-6 {
				t.Errorf("%s: point %d lies %v mm off", name, i, d)
			}
		}
	}
}

func TestTheFirstZigzagReachesTheMiddleOfEachDigitWithTipsNearSixtyDegrees(t *testing.T) {
	h, _ := here(t)
	a := Of(begun(t, h), h, nil).Webs[0].Alternatives[0]
	frame, _ := h.Ground.Frame(hand.ThirdWeb)
	want := (frame.Apart() + frame.PIP[1].Sub(frame.PIP[0]).Dot(frame.Across())) / 2
	if got := a.Dorsal.Zigzag.Reach(); math.Abs(float64(got-want)) > 1e-6 {
		t.Errorf("the reach is %v mm, want %v", got, want)
	}
	if tip := a.Dorsal.Figures.Flaps[0].TipAngle.Value.Degrees(); tip < 45 || tip > 80 {
		t.Errorf("the tips have %v degrees", tip)
	}
}

func TestTheFirstZigzagBeginsWhereTheFlapEnds(t *testing.T) {
	h, _ := here(t)
	w := Of(begun(t, h), h, nil).Webs[0]
	a := w.Alternatives[0]
	axis := w.Join.Line.To.Sub(w.Join.Line.From).Direction()
	level := func(p plane.Position) float64 { return float64(p.Sub(w.Join.Line.From).Dot(axis)) }
	tip := math.Inf(-1)
	for _, p := range a.Flap.Flap.Outline {
		tip = math.Max(tip, level(p))
	}
	if first := level(a.Dorsal.Zigzag.Points[0]); math.Abs(first-tip) > 1e-6 || tip <= 0 {
		t.Errorf("the zigzag begins at %v mm, the flap ends at %v mm along the join", first, tip)
	}
	if last := level(a.Dorsal.Zigzag.Points[len(a.Dorsal.Zigzag.Points)-1]); math.Abs(last-float64(w.Join.Line.Length())) > 1e-6 {
		t.Errorf("the zigzag ends at %v mm of %v", last, w.Join.Line.Length())
	}
}

func TestTheSkinBudgetTakesTheFlapOff(t *testing.T) {
	h, _ := here(t)
	f := begun(t, h)
	f.Webs[0].Girths = &planfile.Girths{Radial: planfile.Girth{Taped: 58}, Ulnar: planfile.Girth{Width: 17}}
	w := Of(f, h, nil).Webs[0]
	if w.Skin == nil {
		t.Fatalf("no budget: %q", w.Remarks)
	}
	b := w.Skin.Budget
	if b.Flaps != w.Alternatives[0].Flap.Figures.Area || b.Join != w.Join.Length {
		t.Errorf("%+v", b)
	}
	if !strings.Contains(strings.Join(w.Skin.Remarks, " "), "told from the width") {
		t.Errorf("remarks %q", w.Skin.Remarks)
	}
	f.Webs[0].Join = nil
	if w := Of(f, h, nil).Webs[0]; w.Skin != nil || len(w.Remarks) != 1 || !strings.Contains(w.Remarks[0], "mark the two ends of the join") {
		t.Errorf("%+v", w)
	}
	f = begun(t, h)
	f.Webs[0].Girths = &planfile.Girths{Radial: planfile.Girth{Taped: 58}}
	if w := Of(f, h, nil).Webs[0]; w.Skin != nil || !strings.Contains(strings.Join(w.Remarks, " "), "girths.ulnar: is missing") {
		t.Errorf("%+v", w)
	}
}

// With a PIP joint missing the thirds rule is withdrawn, the reason is said, and
// the flap is taken from the arch.
func TestWithoutAPIPJointTheFlapIsTakenFromTheArch(t *testing.T) {
	h, truth := here(t)
	delete(h.Ground.Marks.Joints[hand.Ring], hand.PIP)
	h.Ground.Absent = map[hand.Digit]map[hand.Joint]bool{hand.Ring: {hand.PIP: true}}
	b, err := Begin(h, nil)
	if err != nil || len(b.Notes) != 1 || !strings.Contains(b.Notes[0], "place the arch by hand") {
		t.Fatalf("%v: %+v", err, b)
	}
	byHand := plan.Form{Shape: arch.Gothic, Span: 9, Turn: plane.Degrees(60)}.Placed(h.Ground.Fit.Best.Position(truth.Webs[1].Crown), plane.Vec[plane.Millimetre](0, -1))
	kept, reason := h.BeginFlap(hand.ThirdWeb, byHand, false, nil)
	if kept.Kind != flap.PalmarFlap || !strings.Contains(reason, "Thirds rule withdrawn: the PIP joint of the ring finger is said not to be there") {
		t.Errorf("a %v flap, %q", kept.Kind, reason)
	}
	b.File.Webs[0].Alternatives = []planfile.Alternative{{Name: "by hand", Arch: planfile.ArchOn(byHand, h.Ground.Fit.Best), Flap: kept}}
	w := Of(b.File, h, nil).Webs[0]
	if !strings.Contains(w.ThirdsRule, "withdrawn") || w.Alternatives[0].Arch.Figures.Index != nil || w.Alternatives[0].Flap.Figures.Area.Value <= 0 {
		t.Errorf("%q, %+v", w.ThirdsRule, w.Alternatives[0])
	}
}

func TestInThePalmTheFlapIsPalmar(t *testing.T) {
	h, truth := here(t)
	h.Ground.Marks.View = hand.Palmar
	a := plan.Form{Shape: arch.U, Span: 10, Flat: 0.4}.Placed(h.Ground.Fit.Best.Position(truth.Webs[1].Crown), plane.Vec[plane.Millimetre](0, -1))
	kept, reason := h.BeginFlap(hand.ThirdWeb, a, false, &planfile.Girths{Radial: planfile.Girth{Taped: 50}, Ulnar: planfile.Girth{Taped: 50}})
	if kept.Kind != flap.PalmarFlap || !strings.Contains(reason, "shows the palm") {
		t.Errorf("a %v flap, %q", kept.Kind, reason)
	}
	// At the middle of the band of slopes, 42.5 degrees, through a digit of 50 / pi mm.
	f := flap.Flap{Outline: h.Ground.Fit.Best.Positions(kept.Outline)}
	if want := 50 / math.Pi / math.Sin(42.5*math.Pi/180); math.Abs(float64(f.Length())-want) > 1e-6 {
		t.Errorf("the flap is %v mm long, want %v", f.Length(), want)
	}
}

func TestAJoinWithoutAJointToEndAtRunsAlongTheAxis(t *testing.T) {
	h, truth := here(t)
	a := plan.Form{Shape: arch.U, Span: 10, Flat: 0.4}.Placed(h.Ground.Fit.Best.Position(truth.Webs[1].Crown), plane.Vec[plane.Millimetre](0, -1))
	h.Ground.Marks.Joints = nil
	j := h.joinOf(*h.BeginJoin(hand.ThirdWeb, a))
	if math.Abs(float64(j.Length.Value)-usualJoin) > 1e-6 || j.Line.From.Distance(a.Crown) > 1e-6 {
		t.Errorf("%+v", j)
	}
	z := h.BeginZigzag(hand.ThirdWeb, j.Pixels)
	if len(z.Dorsal) < 3 || len(z.Dorsal) != len(z.Palmar) {
		t.Errorf("%d and %d points", len(z.Dorsal), len(z.Palmar))
	}
}

func TestAPlanOnThePhotographIsReadBackFromItsFile(t *testing.T) {
	picture, err := small()
	if err != nil {
		t.Fatal(err)
	}
	folder := t.TempDir()
	s, _ := subject(t)
	marks := filepath.Join(folder, "hand.marks.json")
	if err := os.WriteFile(filepath.Join(folder, "hand.jpg"), picture.JPEG, 0o600); err != nil {
		t.Fatal(err)
	}
	if err := s.Marks.Save(marks); err != nil {
		t.Fatal(err)
	}
	o, err := Open(marks, "", settings(t))
	if err != nil || len(o.Begun.Proposals) != 1 {
		t.Fatalf("%v: %+v", err, o.Begun)
	}
	path := planfile.PathFor(marks)
	if err := o.Begun.File.Save(path); err != nil {
		t.Fatal(err)
	}
	again, err := Open(path, "", settings(t))
	if err != nil {
		t.Fatal(err)
	}
	a, b := o.Plan().Webs[0].Alternatives[0].Arch.Figures, again.Plan().Webs[0].Alternatives[0].Arch.Figures
	if math.Abs(float64(a.Index.Value-b.Index.Value)) > 1e-9 || math.Abs(float64(a.Span.Value-b.Span.Value)) > 1e-9 {
		t.Errorf("%+v became %+v", a, b)
	}
	if diff := cmp.Diff(again.Plan().Webs, again.Plan().Webs); diff != "" {
		t.Errorf("the same plan has other figures: %s", diff)
	}
	if _, err := Open(path, marks, settings(t)); err == nil || !strings.Contains(err.Error(), "give the marks of the other hand") {
		t.Errorf("a hand is its own other hand: %v", err)
	}
	if _, err := Open(filepath.Join(folder, "none.json"), "", settings(t)); err == nil || !strings.Contains(err.Error(), "none.json: there is no such file") {
		t.Errorf("%v", err)
	}
}

func TestWithoutAScaleNothingIsPlanned(t *testing.T) {
	s, _ := subject(t)
	s.Marks.Reference = nil
	if _, err := Prepare(s, settings(t)); err == nil || !strings.Contains(err.Error(), "scale: is missing; mark a ruler") {
		t.Errorf("%v", err)
	}
}

func TestTwoFacesThatDoNotMeetAreRemarkedOn(t *testing.T) {
	h, _ := here(t)
	f := begun(t, h)
	z := f.Webs[0].Alternatives[0].Zigzag
	z.Palmar = z.Dorsal
	if notes := Of(f, h, nil).Webs[0].Alternatives[0].Notes; len(notes) != 1 || !strings.Contains(notes[0], "do not interdigitate") {
		t.Errorf("notes %q", notes)
	}
}

func TestAPlanOfAnotherHandIsNoticed(t *testing.T) {
	h, _ := here(t)
	f := begun(t, h)
	f.Side = f.Side.Other()
	if p := Of(f, h, nil); !strings.Contains(strings.Join(p.Warnings, " "), "check that they belong together") {
		t.Errorf("warnings %q", p.Warnings)
	}
}

// A gesture: everything that follows from a plan of one web with its flap and
// zigzags, and a skin budget.
func BenchmarkOf(b *testing.B) {
	h, _ := here(b)
	f := begun(b, h)
	f.Webs[0].Girths = &planfile.Girths{Radial: planfile.Girth{Taped: 58}, Ulnar: planfile.Girth{Taped: 55}}
	f.Webs[0].Alternatives[0].Zigzag = h.Zigzag(*f.Webs[0].Join, 8, 18, false)
	if n := len(f.Webs[0].Alternatives[0].Zigzag.Dorsal); n != 10 {
		b.Fatalf("%d points", n)
	}
	for b.Loop() {
		if Of(f, h, nil).Webs[0].Skin == nil {
			b.Fatal("no budget")
		}
	}
}
