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

// answered is a guide whose every question is answered by someone.
func answered() *Guide {
	g := New()
	g.OnHand = func(hand.Side, hand.View) {}
	g.OnLength = func(plane.Millimetre) {}
	g.OnMethod = func(scale.Method, marking.CardSize) {}
	g.OnAccept, g.OnRefuse = func() {}, func() {}
	return g
}

func inWindow(t *testing.T, v fyne.ThemeVariant) (*Guide, fyne.Window) {
	t.Helper()
	test.NewTempApp(t).Settings().SetTheme(look.Theme(v))
	g := answered()
	w := test.NewTempWindow(t, container.NewPadded(g.Content()))
	w.Resize(fyne.NewSize(330, 690))
	return g, w
}

func TestStatesLookAsTheyDid(t *testing.T) {
	lacking := begun(hand.Right, hand.Dorsal, 2)
	lacking.Length = 0
	card := begun(hand.Left, hand.Dorsal, 0)
	card.Method = scale.ByCard
	proposed := begun(hand.Right, hand.Dorsal, all)
	proposed.Proposed[hand.ThirdWeb] = true
	for _, c := range []struct {
		name  string
		v     fyne.ThemeVariant
		state marking.State
	}{
		{"hand-light", theme.VariantLight, marking.State{}},
		{"card-dark", theme.VariantDark, card},
		{"length-light", theme.VariantLight, lacking},
		{"joint-dark", theme.VariantDark, begun(hand.Right, hand.Dorsal, 5)},
		{"crown-light", theme.VariantLight, begun(hand.Left, hand.Dorsal, 14)},
		{"junction-dark", theme.VariantDark, begun(hand.Right, hand.WebView, 5)},
		{"proposed-light", theme.VariantLight, proposed},
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

func TestTheHandIsAskedFirstAndCanBeChangedLater(t *testing.T) {
	g, _ := inWindow(t, theme.VariantLight)
	var side hand.Side
	var view hand.View
	g.OnHand = func(s hand.Side, v hand.View) { side, view = s, v }
	shown(g, marking.State{})
	if !g.choice.Visible() || g.picture.Visible() || g.change.Visible() {
		t.Fatal("hand and view are not asked first")
	}
	for _, o := range g.choice.options {
		test.Tap(o)
		if side != o.side || view != o.view {
			t.Errorf("%s was taken for %v %v", o.name.Text, side, view)
		}
	}
	shown(g, begun(hand.Left, hand.Palmar, 0))
	if g.choice.Visible() || g.whose.Text != "Left hand, palm" {
		t.Errorf("above the picture stands %q", g.whose.Text)
	}
	test.Tap(g.change)
	if !g.choice.Visible() {
		t.Fatal("the hand can't be changed")
	}
	for _, o := range g.choice.options {
		if want := o.side == hand.Left && o.view == hand.Palmar; o.chosen != want {
			t.Errorf("%s is marked as chosen: %v", o.name.Text, o.chosen)
		}
	}
}

func TestTheLengthOfTheRulerIsAskedUntilItIsKnown(t *testing.T) {
	g, _ := inWindow(t, theme.VariantLight)
	var got []plane.Millimetre
	g.OnLength = func(l plane.Millimetre) { got = append(got, l) }
	s := begun(hand.Right, hand.Dorsal, 3)
	s.Length = 0
	shown(g, s)
	if !g.measure.Visible() || g.stations[0].count.Text != "length?" {
		t.Fatalf("the length is not asked; under Scale stands %q", g.stations[0].count.Text)
	}
	for _, c := range []struct {
		typed string
		want  plane.Millimetre
	}{{"50", 50}, {"37,5", 37.5}, {" 10 ", 10}} {
		g.measure.length.SetText(c.typed)
		g.measure.length.OnSubmitted(c.typed)
		if len(got) == 0 || got[len(got)-1] != c.want {
			t.Errorf("%q was taken as %v", c.typed, got)
		}
	}
	before := len(got)
	for _, wrong := range []string{"", "abc", "0", "-5", "NaN", "Inf", "1e9"} {
		g.measure.length.OnSubmitted(wrong)
		if !g.measure.trouble.Visible() || len(got) != before {
			t.Errorf("%q was taken for a length", wrong)
		}
	}
	s.Length = 50
	shown(g, s)
	if g.measure.Visible() {
		t.Error("the length is still asked")
	}
	test.Tap(g.stations[0])
	if !g.measure.Visible() || g.measure.length.Text != "50" {
		t.Error("choosing Scale does not lead back to the length")
	}
}

func TestTheReferenceCanBeACard(t *testing.T) {
	g, _ := inWindow(t, theme.VariantLight)
	var method scale.Method
	var size marking.CardSize
	calls := 0
	g.OnMethod = func(m scale.Method, c marking.CardSize) { method, size, calls = m, c, calls+1 }
	s := begun(hand.Right, hand.Dorsal, 0)
	shown(g, s)
	if calls != 0 {
		t.Fatal("showing a state changed it")
	}
	g.measure.method.SetSelected("Card")
	if method != scale.ByCard || size != marking.BankCard {
		t.Errorf("chose %v of size %v", method, size)
	}
	s.Method = scale.ByCard
	shown(g, s)
	if calls != 1 {
		t.Errorf("one choice was reported %d times", calls)
	}
	g.measure.width.SetText("54")
	g.measure.height.OnSubmitted("85.6")
	g.measure.height.SetText("85.6")
	g.measure.height.OnSubmitted("85.6")
	if (size != marking.CardSize{Width: 85.6, Height: 54}) {
		t.Errorf("the long side comes first, got %v", size)
	}
}

func TestProposalsAreAcceptedOrTakenAway(t *testing.T) {
	g, _ := inWindow(t, theme.VariantLight)
	accepted, refused := 0, 0
	g.OnAccept, g.OnRefuse = func() { accepted++ }, func() { refused++ }
	s := begun(hand.Right, hand.Dorsal, all)
	s.Proposed[hand.SecondWeb] = true
	shown(g, s)
	test.Tap(g.accept)
	test.Tap(g.refuse)
	if accepted != 1 || refused != 1 {
		t.Errorf("accepted %d times, taken away %d times", accepted, refused)
	}
	delete(s.Proposed, hand.SecondWeb)
	shown(g, s)
	if g.accept.Visible() || g.refuse.Visible() || g.head.Text != "All is placed" {
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
