package plane

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func TestAPulledLineFollowsThePointerAndKeepsItsEnds(t *testing.T) {
	var line []PixelPoint
	for i := range 200 {
		line = append(line, Pt(Pixel(i), 0))
	}
	got := Pulled(line, Pt[Pixel](100, 1), Pt[Pixel](100, 8))
	if got[100] != Pt[Pixel](100, 8) {
		t.Errorf("the pulled point lies at %v, want (100, 8)", got[100])
	}
	if got[0] != line[0] || got[199] != line[199] {
		t.Errorf("the ends moved to %v and %v", got[0], got[199])
	}
	if got[104].Y <= 0 || got[104].Y >= 8 {
		t.Errorf("a neighbour lies at %v, want it to follow part of the way", got[104])
	}
}

func TestTurningKeepsLengthAndAddsToTheAngle(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := Vec(Millimetre(rapid.Float64Range(0.1, 50).Draw(t, "x")), Millimetre(rapid.Float64Range(-50, 50).Draw(t, "y")))
		d := rapid.Float64Range(-179, 179).Draw(t, "degrees")
		w := v.Turned(Degrees(d))
		if math.Abs(float64(w.Norm()-v.Norm())) > 1e-9 {
			t.Fatalf("%v turned by %g is %v: its length changed", v, d, w)
		}
		if got := v.AngleTo(w).Degrees(); math.Abs(got-math.Abs(d)) > 1e-6 {
			t.Fatalf("%v turned by %g lies at %g degrees to it", v, d, got)
		}
	})
}

func TestLeftIsAQuarterTurnBack(t *testing.T) {
	v := Vec[Pixel](3, 7)
	if got, want := v.Left(), v.Turned(-RightAngle); math.Abs(float64(got.Sub(want).Norm())) > 1e-12 {
		t.Errorf("left of %v is %v, want %v", v, got, want)
	}
}

func TestAnIntervalHoldsItsEnds(t *testing.T) {
	e := Estimate[Ratio]{Value: 0.5, U95: 0.25}
	if !e.Holds(0.25) || !e.Holds(0.75) || e.Holds(0.76) || e.Low() != 0.25 || e.High() != 0.75 {
		t.Errorf("%v does not run from 0.25 to 0.75", e)
	}
}
