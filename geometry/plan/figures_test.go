package plan

import (
	"math"
	"os"
	"strings"
	"testing"

	"ogive/geometry/arch"
	"ogive/geometry/hand"
	"ogive/geometry/norms"
	"ogive/geometry/plane"
	"ogive/geometry/reading"
	"ogive/geometry/scale"
)

// perPixel is the scale of these photographs in millimetres.
const perPixel = 0.1

func flat(k float64) scale.Map { return scale.Map{H: [9]float64{k, 0, 0, 0, k, 0, 0, 0, 1}} }

// ground is a right hand photographed square: three parallel fingers, 40 mm from
// MCP to PIP and 20 mm apart, pointing up the picture.
func ground() Ground {
	joints := map[hand.Digit]map[hand.Joint]plane.PixelPoint{}
	for i, d := range []hand.Digit{hand.IndexFinger, hand.Middle, hand.Ring} {
		x := plane.Pixel(1000 - 200*i) // the back of a right hand: the index finger on the left, seen mirrored here
		joints[d] = map[hand.Joint]plane.PixelPoint{hand.MCP: {X: x, Y: 900}, hand.PIP: {X: x, Y: 500}}
	}
	return Ground{
		Marks: hand.Marks{Side: hand.Right, View: hand.Dorsal, ClickSD: 2, Joints: joints},
		Fit:   scale.Fit{Method: scale.ByRuler, Best: flat(perPixel)},
	}
}

func table(t testing.TB) norms.Table {
	t.Helper()
	data, err := os.ReadFile("../../assets/normal-values.json")
	if err != nil {
		t.Fatal(err)
	}
	out, err := norms.Parse(data)
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// third is an equilateral arch of span 9 mm at the given index of the third web,
// which lies between x = 60 and 80 mm.
func third(index plane.Ratio) arch.Arch {
	return Form{Shape: arch.Gothic, Span: 9, Turn: plane.Degrees(60)}.Placed(plane.Pt(70, 90-40*plane.Millimetre(index)), up)
}

func TestAPlannedArchHasTheFiguresItIsDrawnWith(t *testing.T) {
	f := Read(third(0.55), hand.ThirdWeb, ground(), Beside{Table: table(t)})
	near(t, "index", float64(f.Index.Value), 0.55, 1e-9)
	near(t, "depth", float64(f.Depth.Value), 18, 1e-9)
	near(t, "span", float64(f.Span.Value), 9, 1e-9)
	near(t, "rise", float64(f.Rise.Value), 4.5*math.Sqrt(3), 1e-9)
	near(t, "rise to span", float64(f.RiseToSpan.Value), math.Sqrt(3)/2, 1e-9)
	near(t, "crown angle", f.CrownAngle.Value.Degrees(), 120, 1e-9)
	near(t, "flare", f.Flare.Value.Degrees(), 0, 1e-9)
	if len(f.Remarks) != 0 {
		t.Errorf("remarks %q", f.Remarks)
	}
}

// Half way between MCP and PIP every joint counts half along its digit, and the
// crown lies 10 mm beside each digit, whose direction two clicks turn by
// sqrt(2) x 0.2 / 40. With clicks of 0.2 mm on 40 mm each digit's part has the
// standard deviations 0.2 / 40 / sqrt(2) and 10 x sqrt(2) x 0.2 / 40 / 40; the
// mean of the two digits divides both by sqrt(2) (JCGM 100:2008, 5.1.2).
func TestTheUncertaintyOfAPlannedIndexIsThatOfTheClickedJoints(t *testing.T) {
	f := Read(third(0.5), hand.ThirdWeb, ground(), Beside{Table: table(t)})
	want := 1.96 * math.Hypot(0.2/40/2, 10*0.2/40/40)
	near(t, "U95 of the index", float64(f.Index.U95), want, 0.1*want)
	if f.Span.U95 != 0 {
		t.Errorf("an exact scale leaves the drawn span uncertain by %v", f.Span.U95)
	}
}

// A scale that is uncertain by 2 per cent leaves a span of 9 mm uncertain by
// 0.18 mm, and the index untouched.
func TestTheScaleMakesMillimetresUncertainAndNoIndex(t *testing.T) {
	g := ground()
	g.Marks.ClickSD = 1e-9
	for i := range 400 {
		g.Fit.Likely = append(g.Fit.Likely, flat(perPixel*(1+0.02*(2*float64(i)/399-1)/0.95)))
	}
	f := Read(third(0.5), hand.ThirdWeb, g, Beside{Table: table(t)})
	near(t, "U95 of the span", float64(f.Span.U95), 0.18, 0.005)
	near(t, "U95 of the index", float64(f.Index.U95), 0, 1e-6)
}

func TestAPlannedWebIsJudgedBeforeAnySkinIsCut(t *testing.T) {
	finding := func(f Figures, figure, against string) (norms.Verdict, bool) {
		for _, v := range f.Verdicts {
			if v.Figure == figure && v.Against == against {
				return v, true
			}
		}
		return norms.Verdict{}, false
	}
	estimate := func(v, u float64) *plane.Estimate[plane.Millimetre] {
		return &plane.Estimate[plane.Millimetre]{Value: plane.Millimetre(v), U95: plane.Millimetre(u)}
	}
	other := reading.Web{Web: hand.ThirdWeb, Shape: arch.Gothic, Index: &plane.Estimate[plane.Ratio]{Value: 0.5, U95: 0.01}, Span: estimate(9, 0.2)}
	second := reading.Web{Web: hand.SecondWeb, Shape: arch.U, Index: &plane.Estimate[plane.Ratio]{Value: 0.48, U95: 0.01}, Span: estimate(14, 0.2)}
	b := Beside{Table: table(t), Webs: []reading.Web{second}, Other: &other}

	deep := Read(third(0.3), hand.ThirdWeb, ground(), b)
	for _, against := range []string{"published values", norms.OtherHand} {
		if v, ok := finding(deep, "index", against); !ok || v.Finding != "too deep" || !v.Certain {
			t.Errorf("an index of 0.30 against %s: %+v", against, v)
		}
	}
	usual := Read(third(0.5), hand.ThirdWeb, ground(), b)
	if v, ok := finding(usual, "index", "published values"); !ok || v.Finding != norms.WithinLimits || !v.Certain {
		t.Errorf("an index of 0.50: %+v", v)
	}
	if v, ok := finding(usual, "span", norms.OtherHand); !ok || v.Finding != norms.NoDifference {
		t.Errorf("the span of the other hand: %+v", v)
	}
	wide := third(0.5)
	wide.Radius *= 3
	if v, ok := finding(Read(wide, hand.ThirdWeb, ground(), b), "span", "other webs of the same hand"); !ok || v.Finding != "too wide" || !v.Certain {
		t.Errorf("27 mm beside 14 mm: %+v", v)
	}
}

func TestTheSourcesOnShapeAreHeldBesideThePlanEachOnItsOwn(t *testing.T) {
	agree := func(shape arch.Shape, web hand.Web) map[string]bool {
		out := map[string]bool{}
		a := Form{Shape: shape, Span: 9, Turn: plane.Degrees(60), Flat: 0.4, Flare: plane.Degrees(10)}.Placed(plane.Pt[plane.Millimetre](70, 70), up)
		for _, p := range Read(a, web, ground(), Beside{Table: table(t)}).Patterns {
			if p.Figure == "shape" {
				out[p.Says] = p.Agrees
			}
		}
		return out
	}
	const bae, common = "second and fourth U, third V", "somewhat gothic"
	for _, c := range []struct {
		shape     arch.Shape
		web       hand.Web
		byBae, by bool
	}{
		{arch.V, hand.ThirdWeb, true, false}, {arch.Gothic, hand.ThirdWeb, false, true},
		{arch.U, hand.SecondWeb, true, false}, {arch.V, hand.SecondWeb, false, false}, {arch.U, hand.ThirdWeb, false, false},
	} {
		got := agree(c.shape, c.web)
		if len(got) != 2 || got[bae] != c.byBae || got[common] != c.by {
			t.Errorf("%v as %v: %v", c.shape, c.web, got)
		}
	}
}

func TestTheThirdWebStaysTheMostDistal(t *testing.T) {
	second := reading.Web{Web: hand.SecondWeb, Index: &plane.Estimate[plane.Ratio]{Value: 0.5, U95: 0.01}}
	order := func(index plane.Ratio) Pattern {
		for _, p := range Read(third(index), hand.ThirdWeb, ground(), Beside{Table: table(t), Webs: []reading.Web{second}}).Patterns {
			if p.Figure == "order" {
				return p
			}
		}
		t.Fatal("the order of the webs is not told")
		return Pattern{}
	}
	if p := order(0.6); !p.Agrees || !p.Sure || p.Source != "common practice, no source" {
		t.Errorf("0.6 beside 0.5: %+v", p)
	}
	if p := order(0.4); p.Agrees || !p.Sure {
		t.Errorf("0.4 beside 0.5: %+v", p)
	}
	if p := order(0.501); p.Sure {
		t.Errorf("0.501 beside 0.5 is sure: %+v", p)
	}
}

func TestWithoutAJointThereIsNoIndexAndTheReasonIsSaid(t *testing.T) {
	g := ground()
	delete(g.Marks.Joints[hand.Ring], hand.PIP)
	f := Read(third(0.5), hand.ThirdWeb, g, Beside{Table: table(t)})
	if f.Index != nil || f.Depth != nil || f.Span == nil || len(f.Remarks) != 1 || !strings.Contains(f.Remarks[0], "MCP and PIP of both digits") {
		t.Errorf("index %v, remarks %q", f.Index, f.Remarks)
	}
}

func TestAPlannedVHasNoSpan(t *testing.T) {
	v := Form{Shape: arch.V, Flare: plane.Degrees(20)}.Placed(plane.Pt[plane.Millimetre](70, 70), up)
	f := Read(v, hand.ThirdWeb, ground(), Beside{Table: table(t)})
	if f.Span != nil || f.Rise != nil || f.RiseToSpan != nil || f.Index == nil {
		t.Errorf("%+v", f)
	}
	near(t, "crown angle", f.CrownAngle.Value.Degrees(), 40, 1e-9)
}

func TestTheSamePlanHasTheSameFigures(t *testing.T) {
	a, b := Read(third(0.5), hand.ThirdWeb, ground(), Beside{Table: table(t)}), Read(third(0.5), hand.ThirdWeb, ground(), Beside{Table: table(t)})
	if *a.Index != *b.Index || *a.Depth != *b.Depth {
		t.Errorf("%v and %v", a.Index, b.Index)
	}
}

// A gesture of a dragged handle: the new arch, its figures and its verdicts.
func BenchmarkDrag(b *testing.B) {
	g := ground()
	for i := range 400 {
		g.Fit.Likely = append(g.Fit.Likely, flat(perPixel*(1+0.0001*float64(i-200))))
	}
	beside := Beside{Table: table(b)}
	a := third(0.5)
	for i := 0; b.Loop(); i++ {
		a = Dragged(a, SpanRight, plane.Pt(plane.Millimetre(74+i%5), 62))
		if f := Read(a, hand.ThirdWeb, g, beside); f.Index == nil {
			b.Fatal("no index")
		}
	}
}
