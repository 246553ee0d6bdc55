package webframe

import (
	"math"
	"testing"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/geometry/scale"
)

var square = scale.Map{H: [9]float64{0.1, 0, 0, 0, 0.1, 0, 0, 0, 1}}

// spread is two digits of 40 and 30 mm that part by 2 x 10 degrees.
func spread() hand.Marks {
	s, c := math.Sincos(10 * math.Pi / 180)
	at := func(x, y, length, side float64) map[hand.Joint]plane.PixelPoint {
		return map[hand.Joint]plane.PixelPoint{
			hand.MCP: plane.Pt(plane.Pixel(x), plane.Pixel(y)),
			hand.PIP: plane.Pt(plane.Pixel(x+side*10*length*s), plane.Pixel(y-10*length*c)),
		}
	}
	return hand.Marks{Joints: map[hand.Digit]map[hand.Joint]plane.PixelPoint{
		hand.Middle: at(400, 900, 40, -1), hand.Ring: at(600, 900, 30, 1),
	}}
}

func TestTheAxisHalvesTheAngleBetweenTheDigits(t *testing.T) {
	f, ok := Of(spread(), square, hand.ThirdWeb)
	if !ok {
		t.Fatal("no frame")
	}
	if d := f.Axis().AngleTo(plane.Vec[plane.Millimetre](0, -1)).Degrees(); d > 1e-9 {
		t.Errorf("the axis is %v degrees off", d)
	}
	for what, pair := range map[string][2]float64{"apart": {float64(f.Apart()), 20}, "phalanx": {float64(f.Phalanx()), 35}} {
		if math.Abs(pair[0]-pair[1]) > 1e-9 {
			t.Errorf("%s is %v, want %v", what, pair[0], pair[1])
		}
	}
	if f.Across().Dot(plane.Vec[plane.Millimetre](1, 0)) < 1-1e-12 {
		t.Errorf("across points to %v, want the ulnar digit", f.Across())
	}
}

// By the formula: with the crown half way between the MCP joints and 15 mm distal
// of them, its part along each digit is 15 cos 10 - 10 sin 10 (10 mm aside, the
// digit leaning away), over 40 and over 30.
func TestTheIndexIsTheMeanOverBothDigits(t *testing.T) {
	f, _ := Of(spread(), square, hand.ThirdWeb)
	crown := plane.Pt[plane.Millimetre](50, 75)
	along := 15*math.Cos(math.Pi/18) - 10*math.Sin(math.Pi/18)
	if got, want := float64(f.Index(crown)), (along/40+along/30)/2; math.Abs(got-want) > 1e-12 {
		t.Errorf("index %v, want %v", got, want)
	}
	if got, want := float64(f.Depth(crown)), 35*math.Cos(math.Pi/18)-15; math.Abs(got-want) > 1e-9 {
		t.Errorf("depth %v, want %v", got, want)
	}
}

func TestTheMiddleOfAnIndexHasThatIndex(t *testing.T) {
	f, _ := Of(spread(), square, hand.ThirdWeb)
	for _, want := range []plane.Ratio{0, 0.3, 0.56, 1} {
		if got := f.Index(f.Middle(want)); math.Abs(float64(got-want)) > 1e-12 {
			t.Errorf("index %v, want %v", got, want)
		}
	}
}

func TestACrownIsShiftedAlongTheAxisToItsIndex(t *testing.T) {
	f, _ := Of(spread(), square, hand.ThirdWeb)
	from := plane.Pt[plane.Millimetre](52, 75)
	to := f.Shifted(from, 0.3)
	if math.Abs(float64(f.Index(to))-0.3) > 1e-12 || math.Abs(float64(to.X-from.X)) > 1e-9 {
		t.Errorf("index %v at %v", f.Index(to), to)
	}
}

func TestThereIsNoFrameWithoutAllFourJoints(t *testing.T) {
	m := spread()
	delete(m.Joints[hand.Ring], hand.MCP)
	if _, ok := Of(m, square, hand.ThirdWeb); ok {
		t.Error("a frame without the ring finger's MCP joint")
	}
	m = spread()
	m.Joints[hand.Ring][hand.PIP] = m.Joints[hand.Ring][hand.MCP]
	if _, ok := Of(m, square, hand.ThirdWeb); ok {
		t.Error("a frame with a digit of no length")
	}
	if _, ok := Of(spread(), square, hand.Web(9)); ok {
		t.Error("a frame of no web")
	}
}
