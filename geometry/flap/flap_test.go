package flap

import (
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/integrate"
	"pgregory.net/rapid"

	"ogive/geometry/arch"
	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/geometry/scale"
	"ogive/geometry/webframe"
)

// frame is two digits of 40 mm from MCP to PIP, 20 mm apart, pointing up.
var frame = webframe.Frame{
	MCP: [2]plane.Position{{X: 60, Y: 90}, {X: 80, Y: 90}},
	PIP: [2]plane.Position{{X: 60, Y: 50}, {X: 80, Y: 50}},
}

func near(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s is %v, want %v", what, got, want)
	}
}

// By hand: from a tenth proximal of the MCP joints to two thirds of 40 mm is
// 30.667 mm; a trapezium of that height with sides of 12 and 10 mm.
func TestTheThirdsRuleReachesTwoThirdsOfTheWayToThePIPJoints(t *testing.T) {
	f := Dorsal(frame, WidthsFor(10, false))
	near(t, "tip", float64(f.Outline[1].Y), 90-40*2.0/3, 1e-9)
	near(t, "base", float64(f.Outline[0].Y), 94, 1e-9)
	near(t, "length", float64(f.Length()), 92.0/3, 1e-9)
	near(t, "base width", float64(f.Base()), 12, 1e-9)
	near(t, "middle width", float64(f.Width(0.5)), 11, 1e-9)
	near(t, "tip width", float64(f.Width(1)), 10, 1e-9)
	near(t, "area", float64(f.Area()), 11*92.0/3, 1e-9)
	if f.Outline[0].X > f.Outline[3].X {
		t.Error("the outline does not begin on the radial side")
	}
}

func TestAnHourglassIsNarrowestInItsMiddle(t *testing.T) {
	f := Dorsal(frame, WidthsFor(10, true))
	near(t, "waist", float64(f.Width(0.5)), 8, 1e-9)
	near(t, "area", float64(f.Area()), 92.0/6*(12+8)/2+92.0/6*(8+10)/2, 1e-9)
	if len(f.Outline) != 6 {
		t.Errorf("%d points", len(f.Outline))
	}
}

// The mirror image of the frame, as for a left hand, gives the mirror image.
func TestTheFlapIsDrawnAlikeOnBothHands(t *testing.T) {
	mirrored := webframe.Frame{MCP: [2]plane.Position{frame.MCP[1], frame.MCP[0]}, PIP: [2]plane.Position{frame.PIP[1], frame.PIP[0]}}
	a, b := Dorsal(frame, WidthsFor(10, true)), Dorsal(mirrored, WidthsFor(10, true))
	for i := range a.Outline {
		near(t, "x", float64(a.Outline[i].X)+float64(b.Outline[i].X), 140, 1e-9)
		near(t, "y", float64(a.Outline[i].Y), float64(b.Outline[i].Y), 1e-9)
	}
}

// Green's theorem, area = half the integral of x dy - y dx round the outline,
// here integrated numerically along each side by gonum's Simpson rule.
func TestTheAreaAgreesWithGreensTheoremIntegratedNumerically(t *testing.T) {
	green := func(ps []plane.Position) float64 {
		sum := 0.0
		for i, p := range ps {
			q := ps[(i+1)%len(ps)]
			var at, value []float64
			for k := range 41 {
				s := float64(k) / 40
				x, y := float64(p.X)+s*float64(q.X-p.X), float64(p.Y)+s*float64(q.Y-p.Y)
				at, value = append(at, s), append(value, x*float64(q.Y-p.Y)-y*float64(q.X-p.X))
			}
			sum += integrate.Simpsons(at, value)
		}
		return math.Abs(sum) / 2
	}
	rapid.Check(t, func(t *rapid.T) {
		a := arch.Arch{Shape: arch.U, Crown: plane.Pt[plane.Millimetre](70, 70), Axis: plane.Vec[plane.Millimetre](0.6, -0.8), Turn: plane.RightAngle,
			Radius: plane.Millimetre(rapid.Float64Range(1, 9).Draw(t, "radius")), Flat: plane.Millimetre(rapid.Float64Range(1, 9).Draw(t, "flat"))}
		for _, f := range []Flap{
			Palmar(a, plane.Millimetre(rapid.Float64Range(1, 40).Draw(t, "length")), 8),
			Dorsal(frame, WidthsFor(plane.Millimetre(rapid.Float64Range(2, 20).Draw(t, "span")), true)),
		} {
			if d := float64(f.Area()) - green(f.Outline); math.Abs(d) > 1e-9*float64(f.Area()) {
				t.Fatalf("%v flap: the areas differ by %v mm²", f.Kind, d)
			}
		}
	})
}

func TestAPalmarFlapEndsInTheArchItself(t *testing.T) {
	a := arch.Arch{Shape: arch.Round, Crown: plane.Pt[plane.Millimetre](70, 70), Axis: plane.Vec[plane.Millimetre](0, -1), Turn: plane.RightAngle, Radius: 5}
	f := Palmar(a, 20, 8)
	near(t, "length", float64(f.Length()), 20, 1e-9)
	near(t, "base", float64(f.Base()), 10, 1e-9)
	near(t, "half way", float64(f.Width(0.5)), 10, 1e-9)
	if f.Outline[0] != plane.Pt[plane.Millimetre](65, 70) || f.Outline[len(f.Outline)-1] != plane.Pt[plane.Millimetre](75, 70) {
		t.Errorf("the base runs from %v to %v", f.Outline[0], f.Outline[len(f.Outline)-1])
	}
	// The rectangle below the tip and the half disc, whose chords lose a little.
	near(t, "area", float64(f.Area()), 15*10+math.Pi*25/2, 3)
	v := Palmar(arch.Arch{Shape: arch.V, Crown: a.Crown, Axis: a.Axis, Flare: plane.Degrees(20), Turn: plane.Degrees(20)}, 20, 8)
	near(t, "area of a triangle", float64(v.Area()), 80, 1e-9)
}

// At 45 degrees a floor is as long as the diagonal of the web's thickness.
func TestTheFloorOfAWebIsLongerThanItIsThick(t *testing.T) {
	near(t, "floor", float64(FloorLength(10, plane.Degrees(45))), 10*math.Sqrt2, 1e-9)
	near(t, "floor", float64(FloorLength(10, plane.Degrees(90))), 10, 1e-9)
}

func TestThePointsOfAFlapAreFreeToBeDragged(t *testing.T) {
	f := Dorsal(frame, WidthsFor(10, false))
	f.Outline[1] = f.Outline[1].Add(plane.Vec[plane.Millimetre](0, 6)) // one corner of the tip pulled back
	near(t, "length", float64(f.Length()), 92.0/3, 1e-9)
	// Half the movement times the distance between its two neighbours across it.
	near(t, "area", float64(f.Area()), 11*92.0/3-6*11/2, 1e-9)
	if f.Crossed() {
		t.Error("a dented outline counts as crossed")
	}
	f.Outline[1], f.Outline[2] = f.Outline[2], f.Outline[1]
	if !f.Crossed() || !strings.Contains(strings.Join(f.notes(), " "), "crosses itself") {
		t.Errorf("a crossed outline is not noticed: %q", f.notes())
	}
}

func TestALongFlapIsNotedAndAShortOneToo(t *testing.T) {
	for span, says := range map[plane.Millimetre]string{
		8: "3.2 to 1: long for its base", 10: "2.6 to 1: beyond 2 to 1 a flap lives on the vessels", 16: "1.6 to 1: not beyond 2 to 1",
	} {
		if got := strings.Join(Dorsal(frame, WidthsFor(span, false)).notes(), " "); !strings.Contains(got, says) {
			t.Errorf("a span of %v mm: %q, want %q", span, got, says)
		}
	}
}

func TestTheFiguresOfAFlapCarryTheDoubtOfTheScale(t *testing.T) {
	fit := scale.Fit{Best: scale.Map{H: [9]float64{0.1, 0, 0, 0, 0.1, 0, 0, 0, 1}}}
	for i := range 401 {
		k := 0.1 * (1 + 0.02*float64(i-200)/190)
		fit.Likely = append(fit.Likely, scale.Map{H: [9]float64{k, 0, 0, 0, k, 0, 0, 0, 1}})
	}
	f := Of(Dorsal(frame, WidthsFor(10, false)), fit)
	near(t, "U95 of the length", float64(f.Length.U95), 0.02*92/3, 0.02)
	near(t, "U95 of the area", float64(f.Area.U95), 0.04*11*92/3, 0.3)
	near(t, "U95 of length to base", float64(f.LengthToBase.U95), 0, 1e-9)
	near(t, "tip width", float64(f.Tip.Value), 10.2, 1e-9)
}

func TestTheThirdsRuleIsWithdrawnWhereAJointIsNotThere(t *testing.T) {
	joints := func() map[hand.Digit]map[hand.Joint]plane.PixelPoint {
		both := func() map[hand.Joint]plane.PixelPoint {
			return map[hand.Joint]plane.PixelPoint{hand.MCP: {X: 1}, hand.PIP: {Y: 1}}
		}
		return map[hand.Digit]map[hand.Joint]plane.PixelPoint{hand.Middle: both(), hand.Ring: both()}
	}
	m := hand.Marks{View: hand.Dorsal, Joints: joints()}
	if err := ThirdsRule(m, nil, hand.ThirdWeb); err != nil {
		t.Errorf("with all joints: %v", err)
	}
	delete(m.Joints[hand.Ring], hand.PIP)
	absent := map[hand.Digit]map[hand.Joint]bool{hand.Ring: {hand.PIP: true}}
	if err := ThirdsRule(m, absent, hand.ThirdWeb); err == nil || !strings.Contains(err.Error(), "the PIP joint of the ring finger is said not to be there") || !strings.Contains(err.Error(), "palmar flap from the arch") {
		t.Errorf("%v", err)
	}
	if err := ThirdsRule(m, nil, hand.ThirdWeb); err == nil || !strings.Contains(err.Error(), "the PIP joint of the ring finger is not marked") {
		t.Errorf("%v", err)
	}
}
