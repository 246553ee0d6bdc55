package plan

import (
	"math"
	"strings"
	"testing"

	"ogive/geometry/arch"
	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/geometry/reading"
)

// readWeb is the arch a as a reading of it would have it on a photograph of that
// scale.
func readWeb(a arch.Arch, w hand.Web, g Ground) reading.Web {
	back := g.Fit.Best.Back()
	frame, _ := g.Frame(w)
	s := a.Springings()
	out := reading.Web{
		Web: w, Shape: a.Shape, Crown: back.Pixel(a.Crown), Springing: [2]plane.PixelPoint{back.Pixel(s[0]), back.Pixel(s[1])},
		Index:      &plane.Estimate[plane.Ratio]{Value: frame.Index(a.Crown), U95: 0.01},
		Span:       &plane.Estimate[plane.Millimetre]{Value: a.Span(), U95: 0.2},
		Flare:      &plane.Estimate[plane.Angle]{Value: a.Flare},
		CrownAngle: &plane.Estimate[plane.Angle]{Value: a.CrownAngle()},
	}
	for _, p := range a.Polyline(5, 0.2) {
		out.Curve = append(out.Curve, back.Pixel(p))
	}
	return out
}

func TestAReadArchComesBackAsItWasFitted(t *testing.T) {
	for _, f := range []Form{
		{Shape: arch.Gothic, Span: 9, Flare: plane.Degrees(12), Turn: plane.Degrees(55)},
		{Shape: arch.U, Span: 11, Flare: plane.Degrees(-6), Flat: 0.35},
		{Shape: arch.Round, Span: 8, Flare: plane.Degrees(5)},
		{Shape: arch.V, Flare: plane.Degrees(18)},
	} {
		a := f.Placed(plane.Pt[plane.Millimetre](70, 68), plane.Vec[plane.Millimetre](0.2, -1))
		got, ok := ArchOf(readWeb(a, hand.ThirdWeb, ground()), flat(perPixel))
		if !ok {
			t.Fatalf("%v: no arch", f.Shape)
		}
		if d := float64(got.Crown.Distance(a.Crown)) + got.Axis.AngleTo(a.Axis).Degrees() + math.Abs(float64(got.Radius-a.Radius)) + math.Abs(float64(got.Flat-a.Flat)); d > 1e-4 {
			t.Errorf("%v: %+v became %+v", f.Shape, a, got)
		}
	}
}

// other is the same hand as ground, mirrored, turned by 20 degrees and at twice
// the pixels.
func other(a arch.Arch) Fellow {
	g := ground()
	w := readWeb(a, hand.ThirdWeb, g)
	moved := func(q plane.PixelPoint) plane.PixelPoint {
		return plane.PixelPoint{X: 3000, Y: 100}.Add(plane.Vec(-q.X, q.Y).Turned(plane.Degrees(20)).Scale(2))
	}
	for _, joints := range g.Marks.Joints {
		for j, q := range joints {
			joints[j] = moved(q)
		}
	}
	w.Crown = moved(w.Crown)
	w.Springing = [2]plane.PixelPoint{moved(w.Springing[1]), moved(w.Springing[0])} // mirrored: left is right
	for i, q := range w.Curve {
		w.Curve[i] = moved(q)
	}
	g.Marks.Side, g.Fit.Best = hand.Left, flat(perPixel/2)
	return Fellow{Ground: g, Web: w}
}

func TestTheOtherHandsArchIsProposedWhereItsMirrorImageLies(t *testing.T) {
	a := Form{Shape: arch.Gothic, Span: 9, Flare: plane.Degrees(12), Turn: plane.Degrees(55)}.Placed(plane.Pt[plane.Millimetre](71, 67), up)
	p, err := FromOtherHand(ground(), hand.ThirdWeb, other(a))
	if err != nil {
		t.Fatal(err)
	}
	if d := p.Arch.Crown.Distance(a.Crown); d > 1e-6 {
		t.Errorf("the crown lies %v mm beside the mirror image", d)
	}
	if d := p.Arch.Axis.AngleTo(a.Axis).Degrees(); d > 1e-4 {
		t.Errorf("the axis is turned by %v degrees", d)
	}
	near(t, "span", float64(p.Arch.Span()), 9, 1e-6)
	near(t, "index", float64(p.Index.Value), 23.0/40, 1e-6)
	if p.Origin != OtherHand || p.CrownU95 <= 0.05 || p.CrownU95 > 1 || p.Span.U95 < 0.2 || len(p.Warnings) != 0 || len(p.Reasons) != 1 {
		t.Errorf("%+v", p)
	}
}

// Joined digits lie side by side while those of the other hand are spread: the
// web keeps its index and its span all the same.
func TestDigitsThatLieCloserTogetherNeitherNarrowNorMoveTheWeb(t *testing.T) {
	a := Form{Shape: arch.Gothic, Span: 9, Flare: plane.Degrees(12), Turn: plane.Degrees(55)}.Placed(plane.Pt[plane.Millimetre](70, 72), up)
	joined := ground()
	joined.Marks.Joints[hand.Middle][hand.PIP] = plane.Pt[plane.Pixel](760, 500)
	joined.Marks.Joints[hand.Ring][hand.PIP] = plane.Pt[plane.Pixel](640, 500)
	p, err := FromOtherHand(joined, hand.ThirdWeb, other(a))
	if err != nil {
		t.Fatal(err)
	}
	near(t, "span", float64(p.Arch.Span()), 9, 0.1)
	near(t, "index", float64(p.Index.Value), 18.0/40, 1e-6)
	near(t, "across", float64(p.Arch.Crown.X), 70, 1e-6)
}

func TestWhatKeepsTheOtherHandFromBeingUsedIsSaid(t *testing.T) {
	a := third(0.5)
	palm := other(a)
	palm.Ground.Marks.View = hand.Palmar
	untraced := other(a)
	untraced.Web.Shape = 0
	unjointed := other(a)
	delete(unjointed.Ground.Marks.Joints[hand.Ring], hand.PIP)
	for says, o := range map[string]Fellow{
		"view: ":                      palm,
		"no arch of the third web":    untraced,
		"MCP and PIP of both digits ": unjointed,
	} {
		if _, err := FromOtherHand(ground(), hand.ThirdWeb, o); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%v, want %q", err, says)
		}
		p, err := Propose(ground(), hand.ThirdWeb, Beside{Table: table(t)}, &o)
		if err != nil || p.Origin != TableOnly || !strings.Contains(strings.Join(p.Warnings, " "), says) {
			t.Errorf("%v: %+v", err, p)
		}
	}
}

func TestAHandNamedWronglyIsNoticed(t *testing.T) {
	o := other(third(0.5))
	o.Ground.Marks.Side = hand.Right
	p, err := FromOtherHand(ground(), hand.ThirdWeb, o)
	if err != nil || !strings.Contains(strings.Join(p.Warnings, " "), "check which hand") {
		t.Errorf("%v, warnings %q", err, p.Warnings)
	}
}

// The second web at 0.50 with a span of 12 mm over 20 mm between the MCP joints.
func fellows(index plane.Ratio) []reading.Web {
	a := Form{Shape: arch.U, Span: 12, Flat: 0.4, Flare: plane.Degrees(6)}.Placed(plane.Pt(90, 90-40*plane.Millimetre(index)), up)
	return []reading.Web{readWeb(a, hand.SecondWeb, ground())}
}

func TestAFreeWebTellsTheIndexAndTheSpanOfItsNeighbour(t *testing.T) {
	p, err := FromHand(ground(), hand.ThirdWeb, Beside{Table: table(t), Webs: fellows(0.5)})
	if err != nil {
		t.Fatal(err)
	}
	frame, _ := ground().Frame(hand.ThirdWeb)
	near(t, "index", float64(frame.Index(p.Arch.Crown)), 0.5, 1e-9)
	near(t, "span", float64(p.Arch.Span()), 12, 1e-9)
	near(t, "across", float64(p.Arch.Crown.X), 70, 1e-9)
	if p.Origin != FellowWebs || p.Arch.Shape != arch.Gothic || p.Index.U95 < 0.05 || p.Span.U95 < 2 {
		t.Errorf("%+v", p)
	}
	near(t, "flare", p.Arch.Flare.Degrees(), 6, 1e-6)
}

func TestTheIndexOfNeighboursIsKeptWithinThePublishedBand(t *testing.T) {
	for given, want := range map[plane.Ratio]float64{0.3: 0.45, 0.75: 0.67} {
		p, err := FromHand(ground(), hand.ThirdWeb, Beside{Table: table(t), Webs: fellows(given)})
		if err != nil {
			t.Fatal(err)
		}
		near(t, "index", float64(p.Index.Value), want, 1e-9)
		if !strings.Contains(strings.Join(p.Reasons, " "), "outside the published band") {
			t.Errorf("reasons %q", p.Reasons)
		}
	}
}

// The third web is the narrowest and most distal of second to fourth (common
// practice, no source): beside a second and a fourth of their own it takes the
// more distal index and the narrower span.
func TestTheThirdWebIsProposedNarrowestAndMostDistal(t *testing.T) {
	g := ground()
	g.Marks.Joints[hand.Little] = map[hand.Joint]plane.PixelPoint{hand.MCP: {X: 400, Y: 900}, hand.PIP: {X: 400, Y: 500}}
	webs := fellows(0.5)
	a := Form{Shape: arch.U, Span: 8, Flat: 0.4}.Placed(plane.Pt[plane.Millimetre](50, 90-40*0.6), up)
	webs = append(webs, readWeb(a, hand.FourthWeb, g))
	p, err := FromHand(g, hand.ThirdWeb, Beside{Table: table(t), Webs: webs})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "index", float64(p.Index.Value), 0.6, 1e-9)
	near(t, "span", float64(p.Span.Value), 8, 1e-9)
	if got := strings.Join(p.Reasons, " "); !strings.Contains(got, "second and fourth webs") {
		t.Errorf("reasons %q", got)
	}
}

func TestWithNothingToGoByTheTableAloneIsAPlaceToBegin(t *testing.T) {
	p, err := FromHand(ground(), hand.ThirdWeb, Beside{Table: table(t)})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "index", float64(p.Index.Value), 0.56, 1e-9)
	near(t, "span", float64(p.Span.Value), 10, 1e-9)
	if p.Origin != TableOnly || p.Index.U95 < 0.1 || p.Span.U95 < 4 || len(p.Warnings) == 0 {
		t.Errorf("%+v", p)
	}
	g := ground()
	g.Marks.View = hand.Palmar
	if p, err = FromHand(g, hand.ThirdWeb, Beside{Table: table(t)}); err != nil || p.Index.U95 != 0.5 || !strings.Contains(strings.Join(p.Warnings, " "), "No source gives an index in this view") {
		t.Errorf("in the palm: %v, %+v", err, p)
	}
}

func TestWithoutAJointNothingIsProposed(t *testing.T) {
	g := ground()
	delete(g.Marks.Joints[hand.Ring], hand.MCP)
	if _, err := FromHand(g, hand.ThirdWeb, Beside{Table: table(t)}); err == nil || !strings.Contains(err.Error(), "place the arch by hand") {
		t.Errorf("%v", err)
	}
}
