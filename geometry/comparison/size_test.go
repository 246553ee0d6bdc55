package comparison

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"ogive/geometry/arch"
	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/geometry/reading"
	"ogive/geometry/scale"
)

func TestADigitLongerThanItsFellowIsAReminderToLookAgain(t *testing.T) {
	operated := right()
	operated.Marks.Joints[hand.Middle][hand.Tip] = plane.PixelPoint{X: 470, Y: 60} // 4 mm
	c := compared(t, operated, mirrored())
	if len(c.Reminders) != 1 || !strings.HasPrefix(c.Reminders[0], "The middle digit of the operated hand is longer from MCP to tip by 4.0 ± ") ||
		!strings.HasSuffix(c.Reminders[0], "than on the other hand: it may be a slight overgrowth; look again before any separation.") {
		t.Errorf("reminders %q", c.Reminders)
	}
	operated.Marks.Joints[hand.Middle][hand.Tip] = plane.PixelPoint{X: 470, Y: 95} // half a millimetre
	if c := compared(t, operated, mirrored()); len(c.Reminders) != 0 {
		t.Errorf("half a millimetre, within uncertainty, is reminded of: %q", c.Reminders)
	}
}

func TestADigitShorterThanItsFellowIsNotCalledOvergrown(t *testing.T) {
	operated := right()
	operated.Marks.Joints[hand.Middle][hand.PIP] = plane.PixelPoint{X: 482, Y: 560} // 6 mm
	operated.Marks.Joints[hand.Middle][hand.Tip] = plane.PixelPoint{X: 474, Y: 160}
	c := compared(t, operated, mirrored())
	if len(c.Reminders) != 1 || !strings.HasPrefix(c.Reminders[0], "The middle digit of the other hand is longer from MCP to PIP by ") ||
		!strings.Contains(c.Reminders[0], "short growth of its fellow") {
		t.Errorf("reminders %q", c.Reminders)
	}
}

// A ruler that shows no tilt leaves lengths unknown by some per cent, but those of
// all digits alike.
func TestOneLargeDigitIsToldByItsProportionWhereTheScaleIsPoor(t *testing.T) {
	loose := func(k float64) scale.Fit {
		fit := square(k)
		for i := range fit.Likely {
			fit.Likely[i].H[0] += (fit.Likely[i].H[0] - k) * 9
			fit.Likely[i].H[4] += (fit.Likely[i].H[4] - k) * 9
		}
		return fit
	}
	operated, other := between(hand.Right, 16, 0.1), between(hand.Left, 16, 0.1)
	operated.Scale, other.Scale = loose(0.104), loose(0.1)
	if c := compared(t, operated, other); len(c.Reminders) != 0 {
		t.Errorf("of a hand that may be as large as its fellow: %q", c.Reminders)
	}
	ring := operated.Marks.Joints[hand.Ring]
	ring[hand.PIP] = ring[hand.MCP].Towards(ring[hand.PIP], 1.1)
	c := compared(t, operated, other)
	if len(c.Reminders) != 1 || !strings.HasPrefix(c.Reminders[0], "The ring digit of the operated hand is longer from MCP to PIP by 10 ± 2 per cent in proportion to the other digits than on the other hand: ") {
		t.Errorf("reminders %q", c.Reminders)
	}
}

func TestAHandThatIsLargerThroughoutSendsOneToTheRuler(t *testing.T) {
	operated, other := threeDigits(right(), 1), threeDigits(mirrored(), 2)
	operated.Scale = square(1.2 * perPixel)
	c := compared(t, operated, other)
	if len(c.Reminders) != 4 || !strings.Contains(c.Reminders[0], "length of the ruler or the card") {
		t.Errorf("reminders %q", c.Reminders)
	}
}

// threeDigits adds a little finger of the same length on both, and the fourth web.
func threeDigits(p Photograph, enlarged plane.Pixel) Photograph {
	p.Marks.Joints[hand.Little] = map[hand.Joint]plane.PixelPoint{hand.MCP: {X: 0, Y: 0}, hand.PIP: {X: 0, Y: 350 * enlarged}}
	w := p.Reading.Webs[0]
	w.Web = hand.FourthWeb
	p.Reading.Webs = append(p.Reading.Webs, w)
	return p
}

// between is a hand with a middle finger along the y axis, 40 mm from MCP to PIP,
// between two traced webs; the finger is wide mm wide, k mm a pixel.
func between(side hand.Side, wide, k float64) Photograph {
	px := func(x, y float64) plane.PixelPoint {
		if side == hand.Left {
			x = -x
		}
		return plane.PixelPoint{X: plane.Pixel(1000 + x/k), Y: plane.Pixel(900 - y/k)}
	}
	p := Photograph{Scale: square(k)}
	p.Marks = hand.Marks{Side: side, View: hand.Dorsal, ClickSD: 2, Joints: map[hand.Digit]map[hand.Joint]plane.PixelPoint{
		hand.IndexFinger: {hand.MCP: px(-24, 0), hand.PIP: px(-24, 40)},
		hand.Middle:      {hand.MCP: px(0, 0), hand.PIP: px(0, 40)},
		hand.Ring:        {hand.MCP: px(24, 0), hand.PIP: px(24, 40)},
	}}
	p.Reading = reading.Reading{Side: side, View: hand.Dorsal, PerPixel: plane.Estimate[plane.Millimetre]{Value: plane.Millimetre(k), U95: plane.Millimetre(k / 100)}}
	for i, sign := range []float64{-1, 1} {
		near, far := sign*wide/2, sign*(24-wide/2)
		w := reading.Web{Web: hand.SecondWeb + hand.Web(i), Shape: arch.U, Index: &plane.Estimate[plane.Ratio]{Value: 0.5, U95: 0.01},
			Crown: px(sign*12, 18), Springing: [2]plane.PixelPoint{px(far, 22), px(near, 22)}}
		for y := 36.0; y >= 20; y-- {
			w.Edge = append(w.Edge, px(far, y))
		}
		w.Edge = append(w.Edge, w.Crown)
		for y := 20.0; y <= 34+sign; y++ {
			w.Edge = append(w.Edge, px(near, y))
		}
		p.Reading.Webs = append(p.Reading.Webs, w)
	}
	return p
}

func widthOf(t *testing.T, c Comparison) Size {
	t.Helper()
	var found []Size
	for _, s := range c.Sizes {
		if s.Of == Width {
			found = append(found, s)
		}
	}
	if len(found) != 1 {
		t.Fatalf("widths %+v, want that of the middle finger alone", found)
	}
	return found[0]
}

func TestTheWidthOfADigitIsTakenBetweenItsTwoWebs(t *testing.T) {
	s := widthOf(t, compared(t, between(hand.Right, 16, 0.1), between(hand.Left, 16, 0.07)))
	if s.Digit != hand.Middle || math.Abs(float64(s.Operated.Value)-16) > 1e-6 || math.Abs(float64(s.Other.Value)-16) > 1e-6 || s.Beyond {
		t.Errorf("%+v", s)
	}
	// Distal to the springings at 22 mm, as far as the shorter trace at 33 mm.
	if math.Abs(float64(s.From)-0.55) > 1e-9 || math.Abs(float64(s.To)-33.0/40) > 1e-9 {
		t.Errorf("taken from %v to %v of the phalanx", s.From, s.To)
	}
	if u := s.Operated.U95; u < 0.1 || u > 0.3 {
		t.Errorf("uncertain by %v mm", u)
	}
}

func TestADigitWiderThanItsFellowIsAReminderToLookAgain(t *testing.T) {
	c := compared(t, between(hand.Right, 17.6, 0.1), between(hand.Left, 16, 0.07))
	if s := widthOf(t, c); !s.Beyond {
		t.Errorf("%+v", s)
	}
	if len(c.Reminders) != 1 || !strings.HasPrefix(c.Reminders[0], "The middle digit of the operated hand is wider by 1.6 ± ") {
		t.Errorf("reminders %q", c.Reminders)
	}
}

func TestWithoutBothBordersADigitHasNoWidth(t *testing.T) {
	p := between(hand.Right, 16, 0.1)
	p.Reading.Webs = p.Reading.Webs[:1]
	for _, s := range compared(t, p, between(hand.Left, 16, 0.1)).Sizes {
		if s.Of == Width {
			t.Errorf("%+v", s)
		}
	}
}

// Digits of equal hands, clicked with the noise that is allowed for, are told
// apart in no more than one pair in twenty, however many sizes are compared.
func TestEqualHandsAreSeldomRemindedOf(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 7))
	const pairs = 120
	reminded := 0
	for range pairs {
		a, b := between(hand.Right, 16, 0.1), between(hand.Left, 16, 0.1)
		for _, p := range []*Photograph{&a, &b} {
			p.Scale = square(0.1 * (1 + 0.005*rng.NormFloat64()))
			for _, digit := range hand.Digits {
				joints := p.Marks.Joints[digit]
				for _, j := range []hand.Joint{hand.MCP, hand.PIP} {
					if at, marked := joints[j]; marked {
						joints[j] = at.Add(missedBy(p.Marks.ClickSD, rng))
					}
				}
			}
		}
		if c := compared(t, a, b); len(c.Reminders) > 0 {
			reminded++
		}
	}
	if reminded > pairs/20 {
		t.Errorf("%d of %d equal pairs are reminded of", reminded, pairs)
	}
	t.Logf("%d of %d equal pairs are reminded of", reminded, pairs)
}
