package deviation_test

import (
	"math"
	"testing"

	"ogive/geometry/deviation"
	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/geometry/scale"
)

// bent is a ring finger pointing up the photograph whose distal part leans to
// the right by the given degrees, both parts 400 px long.
func bent(side hand.Side, view hand.View, degrees float64) hand.Marks {
	lean := plane.Vec[plane.Pixel](0, -400).Turned(plane.Degrees(degrees))
	pip := plane.Pt[plane.Pixel](1000, 1000)
	return hand.Marks{Side: side, View: view, ClickSD: 2, Joints: map[hand.Digit]map[hand.Joint]plane.PixelPoint{
		hand.Ring: {hand.MCP: plane.Pt[plane.Pixel](1000, 1400), hand.PIP: pip, hand.Tip: pip.Add(lean)},
	}}
}

func flat() scale.Fit {
	return scale.Fit{Best: scale.Map{H: [9]float64{0.1, 0, 0, 0, 0.1, 0, 0, 0, 1}}}
}

// On the back of a right hand with its fingers up the thumb is at the left, so
// the right of the photograph is the ulnar side; a palm or a left hand turns it.
func TestADigitThatLeansAwayFromTheThumbIsUlnar(t *testing.T) {
	for _, c := range []struct {
		side hand.Side
		view hand.View
		want float64
		to   deviation.Direction
	}{
		{hand.Right, hand.Dorsal, 12, deviation.Ulnar},
		{hand.Left, hand.Dorsal, -12, deviation.Radial},
		{hand.Right, hand.Palmar, -12, deviation.Radial},
		{hand.Left, hand.Palmar, 12, deviation.Ulnar},
	} {
		all := deviation.Of(bent(c.side, c.view, 12), flat())
		if len(all) != 1 {
			t.Fatalf("%d digits are told", len(all))
		}
		if got := all[0].Angle.Value.Degrees(); math.Abs(got-c.want) > 1e-9 || all[0].Towards() != c.to {
			t.Errorf("%v %v: %v degrees towards %v, want %v", c.side, c.view, got, all[0].Towards(), c.want)
		}
	}
}

// Each direction of 400 px between two clicks of 2 px errs by 2 sqrt(2)/400 rad;
// PIP counts in both, against each other: the variance of the angle is
// (2² + 4 x 2² + 2²)/400², its 95 per cent 1.96 times the root.
func TestTheUncertaintyIsThatOfThreeClicks(t *testing.T) {
	got := deviation.Of(bent(hand.Right, hand.Dorsal, 0), flat())[0]
	want := 1.96 * math.Sqrt(4+16+4) / 400 * 180 / math.Pi
	if u := got.Angle.U95.Degrees(); math.Abs(u-want) > 0.15*want {
		t.Errorf("uncertainty is %v degrees, want about %v", u, want)
	}
	if got.Towards() != deviation.NoneTold {
		t.Error("a straight digit is said to bend")
	}
}

func TestATiltThatTheScaleDoesNotSeeWidensTheUncertainty(t *testing.T) {
	fit := flat()
	for i := range 40 {
		k := 0.1 * (1 - 0.002*float64(i-20))
		fit.Likely = append(fit.Likely, scale.Map{H: [9]float64{0.1, 0.2 * (k - 0.1), 0, 0, k, 0, 0, 0, 1}})
	}
	m := bent(hand.Right, hand.Dorsal, 20)
	if tilted, level := deviation.Of(m, fit)[0], deviation.Of(m, flat())[0]; tilted.Angle.U95 <= level.Angle.U95 {
		t.Errorf("tilted ± %v is no wider than level ± %v", tilted.Angle.U95.Degrees(), level.Angle.U95.Degrees())
	}
}

func TestWhatIsNotMarkedOrNotSeenFlatHasNoDeviation(t *testing.T) {
	m := bent(hand.Right, hand.Dorsal, 5)
	delete(m.Joints[hand.Ring], hand.Tip)
	if got := deviation.Of(m, flat()); len(got) != 0 {
		t.Errorf("without a tip %v is told", got)
	}
	if got := deviation.Of(bent(hand.Right, hand.WebView, 5), flat()); len(got) != 0 {
		t.Errorf("in the web view %v is told", got)
	}
	m = bent(hand.Right, hand.Dorsal, 5)
	m.Joints[hand.Ring][hand.Tip] = m.Joints[hand.Ring][hand.PIP]
	if got := deviation.Of(m, flat()); len(got) != 0 {
		t.Errorf("with tip and PIP in one place %v is told", got)
	}
}

func TestTheSameMarksGiveTheSameFigure(t *testing.T) {
	m := bent(hand.Right, hand.Dorsal, 7)
	if a, b := deviation.Of(m, flat())[0], deviation.Of(m, flat())[0]; a != b {
		t.Errorf("%v and then %v", a, b)
	}
}
