package guide

import (
	"image/color"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/geometry/scale"
	"ogive/ui/look"
	"ogive/ui/marking"
)

// begun is work on a photograph of which the first n spots are placed.
func begun(side hand.Side, view hand.View, n int) marking.State {
	s := marking.State{
		Side: side, View: view, Method: scale.ByRuler, Length: 50, Card: marking.BankCard,
		Points: map[marking.Spot]plane.PixelPoint{}, Skipped: map[marking.Spot]bool{}, Proposed: map[hand.Web]bool{},
	}
	for i, spot := range s.Order() {
		if i < n {
			s.Points[spot] = plane.Pt(plane.Pixel(10*i), plane.Pixel(5*i*i))
		}
	}
	return s
}

// all is more spots than any view asks for.
const all = 99

func shown(g *Guide, s marking.State) {
	spot, more := s.Next()
	g.Show(s, spot, more)
}

func inWindow(t *testing.T, v fyne.ThemeVariant) (*Guide, fyne.Window) {
	t.Helper()
	test.NewTempApp(t).Settings().SetTheme(look.Theme(v))
	g := New()
	w := test.NewTempWindow(t, container.NewPadded(g.Content()))
	w.Resize(fyne.NewSize(330, 560))
	return g, w
}

func TestStatesLookAsTheyDid(t *testing.T) {
	card := begun(hand.Left, hand.Dorsal, 0)
	card.Method = scale.ByCard
	for _, c := range []struct {
		name  string
		v     fyne.ThemeVariant
		state marking.State
	}{
		{"crease-light", theme.VariantLight, begun(hand.Right, hand.Palmar, 4)},
		{"card-dark", theme.VariantDark, card},
		{"joint-dark", theme.VariantDark, begun(hand.Right, hand.Dorsal, 5)},
		{"crown-light", theme.VariantLight, begun(hand.Left, hand.Dorsal, 14)},
		{"junction-dark", theme.VariantDark, begun(hand.Right, hand.WebView, 5)},
		{"done-light", theme.VariantLight, begun(hand.Right, hand.Dorsal, all)},
	} {
		g, w := inWindow(t, c.v)
		shown(g, c.state)
		test.AssertRendersToImage(t, c.name+".png", w.Canvas())
	}
}

func TestAStationChosenLeadsToItsStep(t *testing.T) {
	g, _ := inWindow(t, theme.VariantLight)
	shown(g, begun(hand.Right, hand.Dorsal, 4))
	var chosen []marking.Step
	g.OnStep = func(s marking.Step) { chosen = append(chosen, s) }
	for i := len(g.stations) - 1; i >= 0; i-- {
		test.Tap(g.stations[i])
	}
	want := []marking.Step{marking.Junction, marking.Webs, marking.Joints, marking.Scale}
	if len(chosen) != len(want) {
		t.Fatalf("chose %v, want %v", chosen, want)
	}
	for i := range want {
		if chosen[i] != want[i] {
			t.Errorf("choice %d led to %v, want %v", i, chosen[i], want[i])
		}
	}
}

func TestStationsTellHowFarTheWorkHasCome(t *testing.T) {
	g, _ := inWindow(t, theme.VariantLight)
	for _, c := range []struct {
		state marking.State
		want  [4]string
	}{
		{marking.State{}, [4]string{}},
		{begun(hand.Left, hand.Dorsal, 1), [4]string{"1 / 2", "0 / 8", "0 / 9", "other view"}},
		{begun(hand.Left, hand.Palmar, 12), [4]string{"done", "done", "2 / 9", "other view"}},
		{begun(hand.Left, hand.WebView, 4), [4]string{"done", "other view", "other view", "2 / 6"}},
		{begun(hand.Left, hand.Dorsal, all), [4]string{"done", "done", "done", "other view"}},
	} {
		shown(g, c.state)
		for i, st := range g.stations {
			if st.count.Text != c.want[i] {
				t.Errorf("under %s stands %q, want %q", st.name.Text, st.count.Text, c.want[i])
			}
		}
	}
}

func TestSkippingIsOfferedWithItsKeyOnlyWhileAPointIsWanted(t *testing.T) {
	g, _ := inWindow(t, theme.VariantLight)
	skipped := 0
	g.OnSkip = func() { skipped++ }
	g.SkipKey = "F8"
	shown(g, begun(hand.Right, hand.Dorsal, 6))
	if !g.skip.Visible() || !strings.Contains(g.skip.Text, "(F8)") {
		t.Errorf("the button says %q, visible %v", g.skip.Text, g.skip.Visible())
	}
	test.Tap(g.skip)
	if skipped != 1 {
		t.Errorf("skipped %d times", skipped)
	}
	shown(g, begun(hand.Right, hand.Dorsal, all))
	if g.skip.Visible() {
		t.Error("with nothing wanted, skipping is still offered")
	}
}

func TestTheHandStandsAboveThePicture(t *testing.T) {
	g, _ := inWindow(t, theme.VariantLight)
	shown(g, marking.State{})
	if g.picture.Visible() || g.skip.Visible() || strings.Contains(g.head.Text+g.how.Text, "?") {
		t.Errorf("while the panel over the photograph asks for the hand the guide says %q", g.head.Text)
	}
	shown(g, begun(hand.Left, hand.Palmar, 0))
	if !g.picture.Visible() || g.whose.Text != "Left hand, palm" {
		t.Errorf("above the picture stands %q", g.whose.Text)
	}
}

func TestARulerWithoutALengthIsNotDone(t *testing.T) {
	g, _ := inWindow(t, theme.VariantLight)
	s := begun(hand.Right, hand.Dorsal, 3)
	s.Length = 0
	shown(g, s)
	if got := g.stations[0].count.Text; got != "length?" {
		t.Errorf("under Scale stands %q", got)
	}
	s.Length = 50
	shown(g, s)
	if got := g.stations[0].count.Text; got != "done" {
		t.Errorf("with a length, under Scale stands %q", got)
	}
}

func TestProposalsAreAskedAbout(t *testing.T) {
	g, _ := inWindow(t, theme.VariantLight)
	s := begun(hand.Right, hand.Dorsal, all)
	s.Proposed[hand.SecondWeb] = true
	shown(g, s)
	if g.head.Text != "Are these webs right?" {
		t.Errorf("beside proposed webs it says %q", g.head.Text)
	}
	delete(s.Proposed, hand.SecondWeb)
	shown(g, s)
	if g.head.Text != "All is placed" {
		t.Errorf("after accepting it says %q", g.head.Text)
	}
}

func TestTheEndSaysWhatIsStillMissing(t *testing.T) {
	g, _ := inWindow(t, theme.VariantLight)
	lacking := begun(hand.Right, hand.Dorsal, all)
	lacking.Length = 0
	skipped := begun(hand.Right, hand.Dorsal, 5)
	unscaled := begun(hand.Right, hand.Dorsal, 0)
	for _, spot := range skipped.Order()[5:] {
		skipped.Skipped[spot] = true
	}
	for _, spot := range unscaled.Order() {
		unscaled.Skipped[spot] = true
	}
	for _, c := range []struct {
		state marking.State
		want  string
	}{
		{begun(hand.Right, hand.Dorsal, all), "All is placed"},
		{skipped, "All is placed but what you skipped"},
		{lacking, "There is no scale yet"},
		{unscaled, "There is no scale yet"},
	} {
		shown(g, c.state)
		if g.head.Text != c.want {
			t.Errorf("it says %q, want %q", g.head.Text, c.want)
		}
	}
}

func TestTheWantedPointIsRingedInTheAccent(t *testing.T) {
	g, w := inWindow(t, theme.VariantLight)
	s := begun(hand.Right, hand.Dorsal, 7)
	shown(g, s)
	spot, _ := s.Next()
	at := g.picture.frame(g.picture.Size()).at(place(s, spot))
	corner := fyne.CurrentApp().Driver().AbsolutePositionForObject(g.picture)
	shot := w.Canvas().Capture()
	ringed := 0
	for _, by := range [][2]float64{{ringRadius, 0}, {-ringRadius, 0}, {0, ringRadius}, {0, -ringRadius}} {
		x, y := float64(corner.X)+at.x+by[0], float64(corner.Y)+at.y+by[1]
		if color.NRGBAModel.Convert(shot.At(int(x), int(y))) == look.Colour(look.Accent) {
			ringed++
		}
	}
	if ringed != 4 {
		t.Errorf("the accent lies on %d of 4 places around the wanted point", ringed)
	}
}

// While a point is dragged, the state differs and nothing in the guide does.
func TestADragLeavesThePictureAsItIs(t *testing.T) {
	g, _ := inWindow(t, theme.VariantLight)
	s := begun(hand.Right, hand.Dorsal, 6)
	shown(g, s)
	before := g.picture.drawn
	for spot, at := range s.Points {
		s.Points[spot] = plane.Pt(at.X+1, at.Y)
	}
	shown(g, s)
	if g.picture.drawn != before {
		t.Error("the picture was drawn again")
	}
	s.Skipped[s.Order()[6]] = true
	shown(g, s)
	if g.picture.drawn == before {
		t.Error("a skipped point is not seen in the picture")
	}
}

func TestTheGuideTakesTheColoursOfAnotherTheme(t *testing.T) {
	g, w := inWindow(t, theme.VariantLight)
	shown(g, begun(hand.Right, hand.Dorsal, 5))
	fyne.CurrentApp().Settings().SetTheme(look.Theme(theme.VariantDark))
	test.AssertRendersToImage(t, "joint-dark.png", w.Canvas())
}

func BenchmarkShow(b *testing.B) {
	test.NewTempApp(b).Settings().SetTheme(look.Theme(theme.VariantLight))
	g := New()
	w := test.NewTempWindow(b, g.Content())
	w.Resize(fyne.NewSize(330, 560))
	s := begun(hand.Right, hand.Dorsal, 6)
	for b.Loop() {
		shown(g, s)
	}
}
