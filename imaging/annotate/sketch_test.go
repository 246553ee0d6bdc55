package annotate

import (
	"math"
	"testing"

	"ogive/geometry/arch"
	"ogive/geometry/plane"
	"ogive/geometry/reading"
)

// figuresOf are the figures of a known arch.
func figuresOf(a arch.Arch) reading.Web {
	return reading.Web{
		Shape:      a.Shape,
		Span:       &plane.Estimate[plane.Millimetre]{Value: a.Span()},
		Rise:       &plane.Estimate[plane.Millimetre]{Value: a.Rise()},
		Flare:      &plane.Estimate[plane.Angle]{Value: a.Flare},
		CrownAngle: &plane.Estimate[plane.Angle]{Value: a.CrownAngle()},
	}
}

func TestTheSketchHasTheArchsOwnProportion(t *testing.T) {
	for _, a := range []arch.Arch{
		{Shape: arch.Round, Turn: plane.RightAngle, Radius: 5},
		{Shape: arch.Gothic, Turn: plane.Degrees(60), Radius: 10},
		{Shape: arch.Gothic, Flare: plane.Degrees(8), Turn: plane.Degrees(70), Radius: 7},
		{Shape: arch.U, Flare: plane.Degrees(-5), Turn: plane.RightAngle, Radius: 3, Flat: 4},
		{Shape: arch.V, Flare: plane.Degrees(25), Turn: plane.Degrees(25)},
	} {
		got, ok := archOf(figuresOf(a))
		if !ok {
			t.Fatalf("%v: no sketch", a.Shape)
		}
		for name, d := range map[string]float64{
			"span": float64(got.Span() - a.Span()), "rise": float64(got.Rise() - a.Rise()),
			"crown angle": float64(got.CrownAngle() - a.CrownAngle()), "flat": float64(got.Flat - a.Flat),
		} {
			if math.Abs(d) > 1e-9 {
				t.Errorf("%v: %s of the sketch is off by %g", a.Shape, name, d)
			}
		}
	}
}

func TestTheSketchFillsItsSquareAndOpensUpwards(t *testing.T) {
	w := figuresOf(arch.Arch{Shape: arch.Gothic, Turn: plane.Degrees(60), Radius: 10})
	b := boxOf(10, 10, 110, 110)
	curve, ok := sketched(w, b)
	if !ok {
		t.Fatal("no sketch")
	}
	for _, q := range curve {
		if q.X < b.Left-1e-6 || q.X > b.Right+1e-6 || q.Y < b.Top-1e-6 || q.Y > b.Bottom+1e-6 {
			t.Fatalf("the sketch leaves its square at %v", q)
		}
	}
	crown := curve[len(curve)/2]
	if crown.Y < curve[0].Y+50 {
		t.Errorf("the crown at %v does not lie below the ends of the borders at %v", crown, curve[0])
	}
	if img := ArchSketch(w, 120); img.Bounds().Dx() != 120 || img.Bounds().Dy() != 120 {
		t.Errorf("sketch is %v large", img.Bounds())
	}
}

func TestNoArchNoSketch(t *testing.T) {
	if _, ok := sketched(reading.Web{}, boxOf(0, 0, 10, 10)); ok {
		t.Error("an arch was drawn for a web without one")
	}
	img := ArchSketch(reading.Web{}, 20)
	for y := range 20 {
		for x := range 20 {
			if img.RGBAAt(x, y) != paper {
				t.Fatalf("the blank sketch has %v at (%d, %d)", img.RGBAAt(x, y), x, y)
			}
		}
	}
}

func TestTheMarksOfANarrowWebAreSmall(t *testing.T) {
	m := newHandmade(1600, 1200, fair, drape)
	sc := newScene(newSheet(m.picture.Rect.Size(), typicalSpan(m.reading)), m.marks, m.ref, m.reading)
	d := sc.webs[0]
	middle := d.curve[0].To(d.curve[len(d.curve)-1], 0.5)
	narrow := d
	narrow.curve = []spot{middle.To(d.curve[0], 0.05), middle.To(d.curve[len(d.curve)-1], 0.05)}
	if wide, small := sc.room(d), sc.room(narrow); wide != 1 || small != 0.5 {
		t.Errorf("the marks of a wide web have %v of their size, those of a narrow one %v", wide, small)
	}
}
