package marking

import (
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/geometry/scale"
	"ogive/imaging/measure"
	"ogive/imaging/phantom"
)

func TestTheNextStepRunsFromScaleOverJointsToWebs(t *testing.T) {
	w := blank(t)
	if err := w.SetHand(hand.Right, hand.Dorsal); err != nil {
		t.Fatal(err)
	}
	var steps []Step
	for i := 0; ; i++ {
		spot, more := w.State().Next()
		if !more {
			break
		}
		if len(steps) == 0 || steps[len(steps)-1] != spot.Step() {
			steps = append(steps, spot.Step())
		}
		if err := w.Place(spot, plane.Pt(plane.Pixel(5+3*i), plane.Pixel(4+i))); err != nil {
			t.Fatal(err)
		}
	}
	if len(steps) != 3 || steps[0] != Scale || steps[1] != Joints || steps[2] != Webs {
		t.Errorf("the steps came as %v", steps)
	}
}

func TestASkippedJointIsNotAskedForAgainAndComesBackWithTheMarks(t *testing.T) {
	w := blank(t)
	ringPIP := Spot{Kind: JointPoint, Digit: hand.Ring, Joint: hand.PIP}
	must(t, w.SetHand(hand.Left, hand.Dorsal))
	must(t, w.Skip(ringPIP))
	again := reopen(t, w)
	if !again.State().Skipped[ringPIP] {
		t.Error("the skipped joint is asked for again after reopening")
	}
	must(t, again.Place(ringPIP, plane.Pt[plane.Pixel](10, 10)))
	if again.State().Skipped[ringPIP] {
		t.Error("a placed joint still counts as skipped")
	}
}

func TestEveryGestureIsOnTheDisk(t *testing.T) {
	w := blank(t)
	must(t, w.SetHand(hand.Right, hand.Dorsal))
	gestures := []func() error{
		func() error { return w.Place(Spot{Kind: ScalePoint, N: 0}, plane.Pt[plane.Pixel](3, 90)) },
		func() error { return w.SetLength(40) },
		func() error { return w.Place(Spot{Kind: ScalePoint, N: 1}, plane.Pt[plane.Pixel](93, 90)) },
		func() error {
			return w.Place(Spot{Kind: SeedPoint, Web: hand.ThirdWeb, N: 1}, plane.Pt[plane.Pixel](50, 50))
		},
		func() error {
			return w.Place(Spot{Kind: JointPoint, Digit: hand.Ring, Joint: hand.MCP}, plane.Pt[plane.Pixel](60, 70))
		},
		func() error {
			return w.Nudge(Spot{Kind: JointPoint, Digit: hand.Ring, Joint: hand.MCP}, plane.Vec[plane.Pixel](1, 0))
		},
		func() error {
			w.Drag(Spot{Kind: ScalePoint, N: 0}, plane.Pt[plane.Pixel](4, 91))
			return w.Drop("move scale point 1")
		},
		func() error { return w.Undo() },
		func() error { return w.SetMethod(scale.ByCard, BankCard) },
	}
	for i, gesture := range gestures {
		must(t, gesture())
		got, want := reopen(t, w).State(), w.State()
		if len(got.Points) != len(want.Points) || got.Method != want.Method || got.Length != want.Length {
			t.Fatalf("after gesture %d the disk holds %v, the screen %v", i, got, want)
		}
		for spot, p := range want.Points {
			if got.Points[spot] != p {
				t.Errorf("after gesture %d %v lies at %v on the disk, at %v on the screen", i, spot, got.Points[spot], p)
			}
		}
	}
}

func TestUndoTakesBackEveryGestureAndRedoMakesItAgain(t *testing.T) {
	w := blank(t)
	must(t, w.SetHand(hand.Right, hand.Dorsal))
	spot := Spot{Kind: JointPoint, Digit: hand.Ring, Joint: hand.PIP}
	must(t, w.Place(spot, plane.Pt[plane.Pixel](20, 30)))
	w.Drag(spot, plane.Pt[plane.Pixel](22, 30))
	w.Drag(spot, plane.Pt[plane.Pixel](25, 30))
	must(t, w.Drop("move "+spot.Name(hand.Dorsal)))
	if got := w.UndoName(); got != "move ring PIP" {
		t.Errorf("the last gesture is called %q", got)
	}
	must(t, w.Undo())
	if at := w.State().Points[spot]; at != plane.Pt[plane.Pixel](20, 30) {
		t.Errorf("undoing a whole drag leaves the joint at %v", at)
	}
	must(t, w.Redo())
	if at := w.State().Points[spot]; at != plane.Pt[plane.Pixel](25, 30) {
		t.Errorf("redoing leaves the joint at %v", at)
	}
	for w.UndoName() != "" {
		must(t, w.Undo())
	}
	if len(w.State().Points) != 0 || w.State().Side != 0 {
		t.Errorf("undoing everything leaves %v", w.State())
	}
}

func TestDamagedMarksAreReportedAndLeftAsTheyAre(t *testing.T) {
	w := blank(t)
	must(t, os.WriteFile(w.KeptIn(), []byte(`{"ogive": 1, "photograph`), 0o644))
	_, err := With(w.Path, w.Photograph, settings(t))
	if err == nil || !strings.Contains(err.Error(), filepath.Base(w.KeptIn())) {
		t.Errorf("damaged marks gave %v, want an error that names the file", err)
	}
	if data, _ := os.ReadFile(w.KeptIn()); string(data) != `{"ogive": 1, "photograph` {
		t.Errorf("the damaged file now holds %q", data)
	}
}

func TestAPhantomMarkedLikeByAnObserverIsReadRight(t *testing.T) {
	c := phantom.Random(4)
	picture, err := c.Render()
	must(t, err)
	path := filepath.Join(t.TempDir(), "hand.jpg")
	must(t, os.WriteFile(path, picture.JPEG, 0o644))
	w, err := Open(path, settings(t))
	must(t, err)
	marks, reference := picture.Truth.Marks(1, rand.New(rand.NewPCG(1, 2)))
	must(t, w.SetHand(marks.Side, marks.View))
	switch r := reference.(type) {
	case scale.Ruler:
		must(t, w.SetLength(r.Length))
	case scale.Card:
		must(t, w.SetMethod(scale.ByCard, CardSize{r.Width, r.Height}))
	}
	for n, p := range reference.Points() {
		must(t, w.Place(Spot{Kind: ScalePoint, N: n}, p))
	}
	for _, d := range hand.Digits {
		for _, j := range hand.Joints {
			if p, ok := marks.Joint(d, j); ok {
				must(t, w.Place(Spot{Kind: JointPoint, Digit: d, Joint: j}, p))
			}
		}
	}
	for _, web := range marks.Webs {
		for n, p := range web.Seeds {
			must(t, w.Place(Spot{Kind: SeedPoint, Web: web.Web, N: n}, p))
		}
	}
	if spot, more := w.State().Next(); more {
		t.Errorf("everything is placed, yet %v is wanted", spot)
	}
	r := w.Measure(w.State())
	if !r.Scaled || len(r.Webs) != 3 {
		t.Fatalf("%d webs read (scaled %v): %v", len(r.Webs), r.Scaled, r.Problems)
	}
	if f := r.Marks; f.Photograph != "hand.jpg" || f.Reference == nil || len(f.Marks.Webs) != 3 || len(f.Marks.Webs[0].Edge) == 0 {
		t.Errorf("the marks that were read are %+v", f)
	}
	for i, web := range r.Webs {
		if truth := picture.Truth.Webs[i]; !web.Index.Holds(truth.Index) {
			t.Errorf("%v: index %v, the truth is %.4f", web.Web, *web.Index, truth.Index)
		}
	}
}

// blank is work on a plain picture in a folder of its own.
func blank(t *testing.T) *Work {
	t.Helper()
	path := filepath.Join(t.TempDir(), "plain.jpg")
	w, err := With(path, plain(), settings(t))
	must(t, err)
	return w
}

// reopen is the work as another window would find it now.
func reopen(t *testing.T, w *Work) *Work {
	t.Helper()
	again, err := With(w.Path, w.Photograph, settings(t))
	must(t, err)
	return again
}

func settings(t *testing.T) measure.Settings {
	t.Helper()
	s, err := measure.Defaults()
	must(t, err)
	return s
}

func must(t *testing.T, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

// One tick alone is no scale: who skipped it and then clicks one wants the other.
func TestAPointOfAScaleThatWasSkippedWantsTheOthersAgain(t *testing.T) {
	s := newState()
	s.Side, s.View = hand.Right, hand.Dorsal
	first, second := Spot{Kind: ScalePoint, N: 0}, Spot{Kind: ScalePoint, N: 1}
	s.Skipped[first], s.Skipped[second] = true, true
	if !s.PassedOver(Scale) {
		t.Error("a scale that was skipped counts as marked")
	}
	s.put(first, plane.Pt[plane.Pixel](10, 10))
	if next, more := s.NextIn(Scale); !more || next != second {
		t.Errorf("after the first tick %v (%v) is wanted, not the second", next, more)
	}
}
