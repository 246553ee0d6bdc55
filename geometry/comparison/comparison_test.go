package comparison

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"ogive/geometry/arch"
	"ogive/geometry/hand"
	"ogive/geometry/norms"
	"ogive/geometry/plane"
	"ogive/geometry/reading"
	"ogive/geometry/scale"
)

var tolerance = norms.SpanTolerance{Least: 1, Fraction: 0.1}

// perPixel is the scale of these photographs, in mm.
const perPixel = 0.1

// square is the scale of a photograph taken square to the hand, k mm a pixel and
// known to a hundredth of it.
func square(k float64) scale.Fit {
	at := func(k float64) scale.Map { return scale.Map{H: [9]float64{k, 0, 0, 0, k, 0, 0, 0, 1}} }
	fit := scale.Fit{Method: scale.ByRuler, Best: at(k)}
	rng := rand.New(rand.NewPCG(4, 2))
	for range 200 {
		fit.Likely = append(fit.Likely, at(k*(1+0.005*rng.NormFloat64())))
	}
	return fit
}

// right is a right hand photographed square: two digits of 40 mm from MCP to PIP
// and the third web between them, its crown half way.
func right() Photograph {
	estimate := func(v, u float64) *plane.Estimate[plane.Millimetre] {
		return &plane.Estimate[plane.Millimetre]{Value: plane.Millimetre(v), U95: plane.Millimetre(u)}
	}
	return Photograph{
		Marks: hand.Marks{Side: hand.Right, View: hand.Dorsal, ClickSD: 2, Joints: map[hand.Digit]map[hand.Joint]plane.PixelPoint{
			hand.Middle: {hand.MCP: {X: 500, Y: 900}, hand.PIP: {X: 480, Y: 500}, hand.Tip: {X: 470, Y: 100}},
			hand.Ring:   {hand.MCP: {X: 700, Y: 920}, hand.PIP: {X: 740, Y: 520}},
		}},
		Scale: square(perPixel),
		Reading: reading.Reading{
			Side: hand.Right, View: hand.Dorsal, Method: scale.ByRuler,
			PerPixel: plane.Estimate[plane.Millimetre]{Value: perPixel, U95: perPixel / 100},
			Webs: []reading.Web{{
				Web: hand.ThirdWeb, Shape: arch.Gothic,
				Index: &plane.Estimate[plane.Ratio]{Value: 0.5, U95: 0.006},
				Depth: estimate(20, 0.4), Span: estimate(10, 0.3),
				CrownAngle: &plane.Estimate[plane.Angle]{Value: plane.Degrees(120), U95: plane.Degrees(3)},
				Crown:      plane.PixelPoint{X: 600, Y: 710},
				Curve:      []plane.PixelPoint{{X: 550, Y: 600}, {X: 600, Y: 710}, {X: 660, Y: 600}},
			}},
		},
	}
}

// mirrored is the same hand as the other one: mirrored, turned by 20 degrees,
// shifted and photographed at twice the size.
func mirrored() Photograph {
	p := right()
	moved := func(q plane.PixelPoint) plane.PixelPoint {
		return plane.PixelPoint{X: 3000, Y: 100}.Add(plane.Vec(-q.X, q.Y).Turned(plane.Degrees(20)).Scale(2))
	}
	for _, joints := range p.Marks.Joints {
		for j, q := range joints {
			joints[j] = moved(q)
		}
	}
	w := &p.Reading.Webs[0]
	w.Crown = moved(w.Crown)
	for i, q := range w.Curve {
		w.Curve[i] = moved(q)
	}
	p.Marks.Side, p.Reading.Side = hand.Left, hand.Left
	p.Scale = square(perPixel / 2)
	p.Reading.PerPixel.Value, p.Reading.PerPixel.U95 = perPixel/2, perPixel/200
	return p
}

func compared(t *testing.T, operated, other Photograph) Comparison {
	t.Helper()
	c, err := Compare(operated, other, tolerance)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func TestTheOtherHandsArchComesToLieOnItsMirrorImage(t *testing.T) {
	operated := right()
	c := compared(t, operated, mirrored())
	if c.RegistrationRMS > 1e-9 || c.TwoSittings() || len(c.Warnings) != 0 {
		t.Errorf("residual %v mm, warnings %q", c.RegistrationRMS, c.Warnings)
	}
	g, w := c.Webs[0].Ghost, operated.Reading.Webs[0]
	if d := g.CrownPixel.Distance(w.Crown); d > 1e-6 {
		t.Errorf("the crown lies %v px beside its mirror image", d)
	}
	if len(g.CurvePixel) != len(w.Curve) {
		t.Fatalf("the ghost has %d points of %d", len(g.CurvePixel), len(w.Curve))
	}
	for i, q := range g.CurvePixel {
		if d := q.Distance(w.Curve[i]); d > 1e-6 {
			t.Errorf("point %d lies %v px beside its mirror image", i, d)
		}
		if d := g.Curve[i].Distance(operated.Scale.Best.Position(w.Curve[i])); d > 1e-7 {
			t.Errorf("point %d lies %v mm off on the plane", i, d)
		}
	}
}

func TestEqualWebsDifferInNothingThatCanBeTold(t *testing.T) {
	w := compared(t, right(), mirrored()).Webs[0]
	if w.Index.Value != 0 || w.Depth.Value != 0 || w.Span.Value != 0 || w.CrownAngle.Value != 0 {
		t.Errorf("differences %v %v %v %v", w.Index, w.Depth, w.Span, w.CrownAngle)
	}
	if len(w.Verdicts) != 3 {
		t.Fatalf("verdicts %+v", w.Verdicts)
	}
	for _, v := range w.Verdicts {
		if v.Finding != norms.NoDifference || v.Certain || v.Against != "other hand" {
			t.Errorf("%+v", v)
		}
	}
}

// JCGM 100:2008, 5.1.2: independent errors of 0.3 and 0.4 make one of 0.5.
func TestDifferencesAreOperatedMinusOtherWithBothUncertainties(t *testing.T) {
	other := mirrored()
	*other.Reading.Webs[0].Span = plane.Estimate[plane.Millimetre]{Value: 12, U95: 0.4}
	w := compared(t, right(), other).Webs[0]
	if math.Abs(float64(w.Span.Value)+2) > 1e-12 || math.Abs(float64(w.Span.U95)-0.5) > 1e-12 {
		t.Errorf("span difference %+v, want -2 ± 0.5", *w.Span)
	}
	if v := w.Verdicts[2]; v.Finding != "too narrow" || !v.Certain || math.Abs(v.Limit-10.8) > 1e-9 {
		t.Errorf("%+v", v)
	}
}

func TestAWebThreeMillimetresDeeperIsCertainlyTooDeep(t *testing.T) {
	operated := right()
	operated.Reading.Webs[0].Index.Value, operated.Reading.Webs[0].Depth.Value = 0.425, 23
	w := compared(t, operated, mirrored()).Webs[0]
	for _, v := range w.Verdicts[:2] {
		if v.Finding != "too deep" || !v.Certain {
			t.Errorf("%+v", v)
		}
	}
}

func TestAClickedCrownGivesNoCertainVerdict(t *testing.T) {
	operated := right()
	w := &operated.Reading.Webs[0]
	w.Index.Value, w.Depth.Value = 0.3, 28
	w.Shape, w.Span, w.CrownAngle, w.Curve = 0, nil, nil, nil
	got := compared(t, operated, mirrored()).Webs[0]
	if got.Span != nil || len(got.Verdicts) != 2 || got.Verdicts[0].Finding != "too deep" || got.Verdicts[0].Certain || got.Verdicts[1].Certain || len(got.Warnings) == 0 {
		t.Errorf("%+v", got)
	}
}

func TestAVHasNoSpanToCompare(t *testing.T) {
	operated := right()
	operated.Reading.Webs[0].Shape = arch.V
	w := compared(t, operated, mirrored()).Webs[0]
	if w.Span != nil || len(w.Verdicts) != 2 || !strings.Contains(strings.Join(w.Warnings, " "), "a V has no span") {
		t.Errorf("%+v", w)
	}
}

func TestTwoSittingsOfAHandAreLaidOverEachOtherUnmirrored(t *testing.T) {
	first := right()
	grown := right()
	grown.Scale = square(1.2 * perPixel)
	grown.Reading.PerPixel.Value *= 1.2
	c := compared(t, grown, first)
	if !c.TwoSittings() || c.RegistrationRMS > 1e-9 || math.Abs(c.Webs[0].Ghost.Registration.Scale-1.2) > 1e-9 {
		t.Errorf("two sittings %v, residual %v, scale %v", c.TwoSittings(), c.RegistrationRMS, c.Webs[0].Ghost.Registration.Scale)
	}
	for _, v := range c.Webs[0].Verdicts {
		if v.Against != "other sitting" || v.Figure != "index" {
			t.Errorf("%+v", v)
		}
	}
	if len(c.Reminders) != 1 || !strings.Contains(c.Reminders[0], "compare its index, not its millimetres") {
		t.Errorf("reminders %q", c.Reminders)
	}
}

func TestWhatCannotBeComparedIsRefusedWithTheReason(t *testing.T) {
	palm := mirrored()
	palm.Reading.View = hand.Palmar
	if _, err := Compare(right(), palm, tolerance); err == nil || !strings.Contains(err.Error(), "the dorsal view, the other the palmar view") {
		t.Errorf("%v", err)
	}
	fourth := mirrored()
	fourth.Reading.Webs[0].Web = hand.FourthWeb
	if _, err := Compare(right(), fourth, tolerance); err == nil || !strings.Contains(err.Error(), "no web in common") {
		t.Errorf("%v", err)
	}
}

func TestWithoutAPlaneTheSizeOfAPixelStandsIn(t *testing.T) {
	other := mirrored()
	other.Scale = scale.Fit{}
	c := compared(t, right(), other)
	if c.RegistrationRMS > 1e-9 || len(c.Warnings) != 1 {
		t.Errorf("residual %v, warnings %q", c.RegistrationRMS, c.Warnings)
	}
}

func TestWithoutJointsTheSpansAreStillCompared(t *testing.T) {
	operated := right()
	operated.Marks.Joints, operated.Reading.Webs[0].Index, operated.Reading.Webs[0].Depth = nil, nil, nil
	c := compared(t, operated, mirrored())
	w := c.Webs[0]
	if w.Ghost != nil || w.Index != nil || w.Depth != nil || w.Span == nil || len(w.Warnings) != 1 || !math.IsNaN(float64(c.RegistrationRMS)) {
		t.Errorf("%+v, residual %v", w, c.RegistrationRMS)
	}
}

func TestAHandNamedWronglyIsNoticed(t *testing.T) {
	named := right()
	named.Marks.Side, named.Reading.Side = hand.Left, hand.Left
	w := compared(t, right(), named).Webs[0]
	if !strings.Contains(strings.Join(w.Warnings, " "), "check which hand") {
		t.Errorf("warnings %q", w.Warnings)
	}
}
