package plan

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"ogive/geometry/arch"
	"ogive/geometry/plane"
)

var up = plane.Vec[plane.Millimetre](0, -1)

func near(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s is %v, want %v", what, got, want)
	}
}

// Plane geometry: with its radius equal to its span an arch rises by the height
// of an equilateral triangle, and its two arcs meet at 120 degrees.
func TestTheEquilateralArchHasTheRadiusOfItsSpan(t *testing.T) {
	a := Form{Shape: arch.Gothic, Span: 10, Turn: plane.Degrees(60)}.Placed(plane.Position{}, up)
	near(t, "radius", float64(a.Radius), 10, 1e-12)
	near(t, "rise", float64(a.Rise()), 5*math.Sqrt(3), 1e-12)
	near(t, "crown angle", a.CrownAngle().Degrees(), 120, 1e-12)
}

func TestASemicircleRisesByHalfItsSpan(t *testing.T) {
	a := Form{Shape: arch.Round, Span: 10}.Placed(plane.Position{}, up)
	near(t, "rise", float64(a.Rise()), 5, 1e-12)
	near(t, "radius", float64(a.Radius), 5, 1e-12)
}

func TestTheFormOfAPlacedArchIsTheFormItWasPlacedBy(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := drawnForm(t)
		got := FormOf(f.Placed(plane.Pt[plane.Millimetre](3, 4), plane.Vec[plane.Millimetre](1, 2)))
		if got.Shape != f.Shape || math.Abs(float64(got.Span-f.Span)) > 1e-9 || math.Abs(float64(got.Flare-f.Flare)) > 1e-12 ||
			math.Abs(float64(got.Turn-f.Turn)) > 1e-12 || math.Abs(float64(got.Flat-f.Flat)) > 1e-9 {
			t.Fatalf("%+v became %+v", f, got)
		}
	})
}

func drawnForm(t *rapid.T) Form {
	return Form{
		Shape: rapid.SampledFrom(arch.Shapes).Draw(t, "shape"),
		Span:  plane.Millimetre(rapid.Float64Range(1, 30).Draw(t, "span")),
		Flare: plane.Degrees(rapid.Float64Range(-15, 40).Draw(t, "flare")),
		Turn:  plane.Degrees(rapid.Float64Range(45, 85).Draw(t, "turn")),
		Flat:  plane.Ratio(rapid.Float64Range(0.05, 0.9).Draw(t, "flat")),
	}.Bounded()
}

// A handle that is taken and put down where it was changes nothing.
func TestAHandleLeftWhereItIsChangesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := drawnForm(t).Placed(plane.Pt[plane.Millimetre](30, 40), plane.Vec[plane.Millimetre](0.4, -1))
		for _, g := range Grips(a) {
			b := Dragged(a, g.Handle, g.At)
			if d := a.Crown.Distance(b.Crown); d > 1e-9 {
				t.Fatalf("%v moved the crown by %v", g.Handle, d)
			}
			if d := math.Abs(float64(a.Span() - b.Span())); d > 1e-6 {
				t.Fatalf("%v changed the span by %v", g.Handle, d)
			}
			if d := math.Abs((a.Flare - b.Flare).Degrees()); d > 1e-3 {
				t.Fatalf("%v changed the flare by %v degrees", g.Handle, d)
			}
			if d := math.Abs(float64(a.Rise() - b.Rise())); d > 1e-3+0.02*float64(a.Span()) {
				t.Fatalf("%v changed the rise by %v", g.Handle, d)
			}
		}
	})
}

// The handle stays under the cursor wherever the family has an arch for it.
func TestAHandleFollowsTheCursor(t *testing.T) {
	a := Form{Shape: arch.Gothic, Span: 10, Flare: plane.Degrees(8), Turn: plane.Degrees(60)}.Placed(plane.Pt[plane.Millimetre](50, 60), up)
	for _, c := range []struct {
		h      Handle
		dx, dy plane.Millimetre
	}{
		{Crown, 3, -2}, {Point, 0, -1}, {Point, 0, 2}, {Point, 0, 4}, {FlareLeft, -0.5, 0}, {FlareRight, 0.7, 0.2}, {FlareRight, -0.6, 0},
	} {
		from, _ := GripOf(a, c.h)
		to := from.Add(plane.Vec(c.dx, c.dy))
		b := Dragged(a, c.h, to)
		got, ok := GripOf(b, c.h)
		// A flare's handle may slide along the border it lies on.
		miss := math.Abs(float64(b.Distance(to)))
		if c.h == Crown || c.h == Point {
			miss = float64(got.Distance(to))
		}
		if !ok || miss > 1e-3 {
			t.Errorf("%v dragged by (%v, %v) lies %v mm off", c.h, c.dx, c.dy, miss)
		}
	}
}

func TestTheSpanIsDraggedOnBothSidesAndKeepsTheShape(t *testing.T) {
	a := Form{Shape: arch.Gothic, Span: 10, Turn: plane.Degrees(60)}.Placed(plane.Pt[plane.Millimetre](50, 60), up)
	right, _ := GripOf(a, SpanRight)
	near(t, "the right springing", float64(right.X), 55, 1e-9)
	b := Dragged(a, SpanRight, plane.Pt[plane.Millimetre](56, plane.Millimetre(60-6*math.Sqrt(3)))) // on its ray from the crown
	near(t, "span", float64(b.Span()), 12, 1e-9)
	near(t, "crown angle", b.CrownAngle().Degrees(), 120, 1e-9)
	left, _ := GripOf(b, SpanLeft)
	near(t, "the left springing", float64(left.X), 44, 1e-9)
}

func TestPointednessRunsFromGothicOverRoundToU(t *testing.T) {
	a := Form{Shape: arch.Round, Span: 10}.Placed(plane.Position{}, up)
	for _, c := range []struct {
		rise  plane.Millimetre
		shape arch.Shape
	}{{8, arch.Gothic}, {5.5, arch.Gothic}, {5, arch.Round}, {4, arch.U}, {1, arch.U}} {
		b := Dragged(a, Point, plane.Pt(0, -c.rise))
		if b.Shape != c.shape {
			t.Errorf("a rise of %v mm on a span of 10 gives %v, want %v", c.rise, b.Shape, c.shape)
		}
		near(t, "rise", float64(b.Rise()), float64(c.rise), 1e-6)
		near(t, "span", float64(b.Span()), 10, 1e-9)
	}
	// 8.66 = 5 sqrt 3: the equilateral arch again.
	near(t, "crown angle", Dragged(a, Point, plane.Pt(0, plane.Millimetre(-5*math.Sqrt(3)))).CrownAngle().Degrees(), 120, 1e-9)
}

func TestTheAxisTurnsTheArchAboutItsCrown(t *testing.T) {
	a := Form{Shape: arch.Gothic, Span: 10, Turn: plane.Degrees(60)}.Placed(plane.Pt[plane.Millimetre](50, 60), up)
	b := Dragged(a, Axis, plane.Pt[plane.Millimetre](80, 60))
	if b.Crown != a.Crown || b.Axis.Sub(plane.Vec[plane.Millimetre](1, 0)).Norm() > 1e-12 {
		t.Errorf("crown %v, axis %v", b.Crown, b.Axis)
	}
	if c := Dragged(a, Axis, a.Crown); c != a {
		t.Error("an axis dragged onto the crown changed the arch")
	}
}

func TestAVHasNeitherSpanNorPointednessToDrag(t *testing.T) {
	v := Form{Shape: arch.V, Flare: plane.Degrees(20)}.Placed(plane.Position{}, up)
	for _, g := range Grips(v) {
		if g.Handle == SpanLeft || g.Handle == SpanRight || g.Handle == Point {
			t.Errorf("a V has the handle %v", g.Handle)
		}
	}
	if Dragged(v, SpanRight, plane.Pt[plane.Millimetre](9, 0)) != v {
		t.Error("a V was widened")
	}
	near(t, "flare", Dragged(v, FlareRight, plane.Pt[plane.Millimetre](5, -5)).Flare.Degrees(), 45, 1e-3)
	g := Shaped(v, arch.Gothic, 9)
	near(t, "span", float64(g.Span()), 9, 1e-12)
	if g.Crown != v.Crown || g.Flare != v.Flare {
		t.Error("a V made gothic lost its crown or its flare")
	}
}

func TestNoDragLeadsOutOfTheFamily(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := drawnForm(t).Placed(plane.Pt[plane.Millimetre](30, 40), up)
		for range 5 {
			h := rapid.SampledFrom(Handles).Draw(t, "handle")
			to := plane.Pt(plane.Millimetre(rapid.Float64Range(-200, 200).Draw(t, "x")), plane.Millimetre(rapid.Float64Range(-200, 200).Draw(t, "y")))
			a = Dragged(a, h, to)
			f := FormOf(a)
			if !a.Crown.Finite() || math.Abs(float64(a.Axis.Norm())-1) > 1e-9 || math.IsNaN(float64(a.Radius)) || a.Rise() < -1e-9 ||
				f.Flare < leastFlare || f.Flare > mostFlare || a.Shape != arch.V && (f.Span < leastSpan-1e-6 || f.Span > mostSpan+1e-6) {
				t.Fatalf("%v to %v gave %+v", h, to, a)
			}
		}
	})
}
