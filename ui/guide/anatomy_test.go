package guide

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"

	"ogive/geometry/hand"
	"ogive/geometry/scale"
	"ogive/ui/look"
	"ogive/ui/marking"
)

// Fingers up, the thumb of a right hand seen from the back points to the left,
// and so does that of a left palm (anatomy; common knowledge).
func TestTheThumbLiesOnItsSide(t *testing.T) {
	for _, c := range []struct {
		side hand.Side
		view hand.View
		left bool
	}{
		{hand.Right, hand.Dorsal, true}, {hand.Left, hand.Dorsal, false},
		{hand.Right, hand.Palmar, false}, {hand.Left, hand.Palmar, true},
	} {
		p := picture{state: begun(c.side, c.view, 0)}
		f := p.frame(fyne.NewSize(300, 300))
		thumb, little := f.at(fingers[hand.Thumb].at(1, 0)), f.at(fingers[hand.Little].at(1, 0))
		if got := thumb.x < little.x; got != c.left {
			t.Errorf("%v hand, %v: the thumb is left of the little finger: %v", c.side, c.view, got)
		}
	}
}

// The web's edge lies about the middle (Bae DS, Release of simple syndactyly) to
// two thirds of the proximal phalanx (Kozin SH. J Am Soc Surg Hand 2001;1:1-13).
func TestTheDrawnWebLiesWhereAWebLies(t *testing.T) {
	for _, w := range []hand.Web{hand.SecondWeb, hand.ThirdWeb, hand.FourthWeb} {
		radial, ulnar := w.Digits()
		three := webPlaces(w)
		index := 0.0
		for _, d := range []hand.Digit{radial, ulnar} {
			mcp, pip := fingers[d].at(0, 0), fingers[d].at(pipAt, 0)
			along, to := pip.sub(mcp), three[1].sub(mcp)
			index += (to.x*along.x + to.y*along.y) / (along.x*along.x + along.y*along.y) / 2
		}
		if index < 0.45 || index > 0.67 {
			t.Errorf("%v: its drawn index is %.2f", w, index)
		}
		if three[0].x >= three[1].x || three[1].x >= three[2].x {
			t.Errorf("%v: border, crown and border lie at %v", w, three)
		}
		if three[1].y <= three[0].y || three[1].y <= three[2].y {
			t.Errorf("%v: the crown is not the most proximal of %v", w, three)
		}
	}
}

// everyState is every hand, view and kind of scale.
func everyState() []marking.State {
	var all []marking.State
	for _, side := range []hand.Side{hand.Left, hand.Right} {
		for _, view := range []hand.View{hand.Dorsal, hand.Palmar, hand.WebView} {
			for _, m := range []scale.Method{scale.ByRuler, scale.ByCard} {
				s := begun(side, view, 0)
				s.Method = m
				all = append(all, s)
			}
		}
	}
	return all
}

func TestEveryWantedPointLiesInThePictureOfIt(t *testing.T) {
	size := fyne.NewSize(300, 300)
	for _, s := range everyState() {
		for _, spot := range s.Order() {
			p := picture{state: s, wanted: &spot}
			at := p.frame(size).at(place(s, spot))
			if at.x < ringRadius || at.y < ringRadius || at.x > 300-ringRadius || at.y > 300-ringRadius {
				t.Errorf("%v %v: %s lies at (%.0f, %.0f) of 300", s.Side, s.View, spot.Name(s.View), at.x, at.y)
			}
		}
	}
}

func TestEveryPointHasWordsOfItsOwn(t *testing.T) {
	test.NewTempApp(t).Settings().SetTheme(look.Theme(theme.VariantLight))
	for _, s := range everyState() {
		heads := map[string]marking.Spot{}
		for _, spot := range s.Order() {
			w := sayWanted(s, spot)
			if w.head == "" || w.how == "" || strings.ContainsAny(w.head+w.how, "{}<>") {
				t.Errorf("%s is said as %q, %q", spot.Name(s.View), w.head, w.how)
			}
			if !strings.HasSuffix(w.how, ".") {
				t.Errorf("%q is no sentence", w.how)
			}
			if other, taken := heads[w.head]; taken {
				t.Errorf("%s and %s are both called %q", spot.Name(s.View), other.Name(s.View), w.head)
			}
			heads[w.head] = spot
		}
	}
}

func TestWordsNameTheFingerTheWebAndTheView(t *testing.T) {
	test.NewTempApp(t).Settings().SetTheme(look.Theme(theme.VariantLight))
	dorsal, palmar := begun(hand.Right, hand.Dorsal, 0), begun(hand.Right, hand.Palmar, 0)
	for _, c := range []struct {
		s    marking.State
		spot marking.Spot
		want string
	}{
		{dorsal, marking.Spot{Kind: marking.JointPoint, Digit: hand.Ring, Joint: hand.MCP}, "Ring MCP"},
		{palmar, marking.Spot{Kind: marking.JointPoint, Digit: hand.Ring, Joint: hand.MCP}, "Ring finger basal crease"},
		{palmar, marking.Spot{Kind: marking.JointPoint, Digit: hand.Little, Joint: hand.PIP}, "Little finger PIP crease"},
		{dorsal, marking.Spot{Kind: marking.SeedPoint, Web: hand.ThirdWeb, N: 0}, "Third web border, middle finger"},
		{dorsal, marking.Spot{Kind: marking.SeedPoint, Web: hand.ThirdWeb, N: 2}, "Third web border, ring finger"},
		{dorsal, marking.Spot{Kind: marking.SeedPoint, Web: hand.FirstWeb, N: 1}, "First web crown"},
	} {
		if got := sayWanted(c.s, c.spot).head; got != c.want {
			t.Errorf("said %q, want %q", got, c.want)
		}
	}
	if name := (marking.Spot{Kind: marking.SeedPoint, Web: hand.ThirdWeb, N: 2}).Name(hand.Dorsal); name != "third web border, ring finger" {
		t.Errorf("the guide and the history name one border differently: %q", name)
	}
	how := sayWanted(dorsal, marking.Spot{Kind: marking.SeedPoint, Web: hand.ThirdWeb, N: 2}).how
	if !strings.Contains(how, "faces the middle finger") {
		t.Errorf("the ring finger's edge is said to lie %q", how)
	}
}
