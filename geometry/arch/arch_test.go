package arch

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"ogive/geometry/plane"
)

// Plane geometry: in an equilateral pointed arch each arc's radius is the span,
// the rise is the span times sqrt(3)/2 and the arcs meet at 120 degrees.
func TestEquilateralArchRisesByHalfTheRootOfThree(t *testing.T) {
	a := Arch{Shape: Gothic, Axis: down, Turn: plane.Degrees(60), Radius: 10}
	near(t, "span", float64(a.Span()), 10, 1e-12)
	near(t, "rise/span", float64(a.Rise()/a.Span()), math.Sqrt(3)/2, 1e-12)
	near(t, "crown angle", a.CrownAngle().Degrees(), 120, 1e-12)
	for _, s := range a.Springings() {
		other := a.Springings()[0]
		if s == other {
			other = a.Springings()[1]
		}
		// The centre of each arc is the other springing.
		near(t, "springing to crown", float64(other.Distance(a.Crown)), 10, 1e-9)
	}
}

// Plane geometry: a semicircle rises by half its span.
func TestSemicircleRisesByHalfItsSpan(t *testing.T) {
	a := Arch{Shape: Round, Axis: down, Turn: plane.RightAngle, Radius: 4}
	near(t, "span", float64(a.Span()), 8, 1e-12)
	near(t, "rise/span", float64(a.Rise()/a.Span()), 0.5, 1e-12)
	near(t, "crown angle", a.CrownAngle().Degrees(), 180, 1e-12)
}

func TestEveryPointOfTheDrawnArchLiesOnIt(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := anyArch(t)
		for _, p := range a.Polyline(6, 0.2) {
			if d := a.Distance(p); math.Abs(float64(d)) > 1e-9 {
				t.Fatalf("%+v: the point %v of its own polyline lies %g mm off", a, p, d)
			}
		}
	})
}

func TestAWidenedArchKeepsItsDistance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := anyArch(t)
		for _, p := range a.Widened(0.3).Polyline(6, 0.2) {
			if d := float64(a.Distance(p)); math.Abs(d-0.3) > 0.02 && a.Flare.Degrees() > 3 {
				// Beyond a corner the parallel curve runs further out.
				if _, y := a.local(p); y > 0.5 {
					t.Fatalf("%+v: the point %v of the widened arch lies %g mm off, want 0.3", a, p, d)
				}
			}
		}
	})
}

func TestTheFormulaOfTheDerivativesAgreesWithSmallSteps(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := anyArch(t)
		fm := form{a.Shape}
		at := plane.Pt(plane.Millimetre(rapid.Float64Range(-8, 8).Draw(t, "x")), plane.Millimetre(rapid.Float64Range(-2, 10).Draw(t, "y")))
		f := fm.residuals([]plane.Position{at})
		p := fm.numbers(a)
		r, jac := make([]float64, 1), make([]float64, fm.size())
		f(p, r, jac)
		for i := range p {
			const h = 1e-6
			q := append([]float64(nil), p...)
			q[i] += h
			plus, minus := make([]float64, 1), make([]float64, 1)
			f(q, plus, nil)
			q[i] -= 2 * h
			f(q, minus, nil)
			slope, left, right := (plus[0]-minus[0])/(2*h), (r[0]-minus[0])/h, (plus[0]-r[0])/h
			if math.Abs(left-right) > 1e-3 {
				continue // the nearest point jumps from one part to another here
			}
			if math.Abs(slope-jac[i]) > 1e-4 {
				t.Fatalf("%+v at %v: derivative %d is %g, by small steps %g", a, at, i, jac[i], slope)
			}
		}
	})
}

var down = plane.Vec[plane.Millimetre](0, 1)

func anyArch(t *rapid.T) Arch {
	a := Arch{
		Shape: rapid.SampledFrom(Shapes).Draw(t, "shape"),
		Crown: plane.Pt(plane.Millimetre(rapid.Float64Range(-50, 50).Draw(t, "cx")), plane.Millimetre(rapid.Float64Range(-50, 50).Draw(t, "cy"))),
		Axis:  plane.Vec[plane.Millimetre](1, 0).Turned(plane.Degrees(rapid.Float64Range(-180, 180).Draw(t, "axis"))),
		Flare: plane.Degrees(rapid.Float64Range(4, 25).Draw(t, "flare")),
		Turn:  plane.RightAngle,
	}
	switch a.Shape {
	case V:
		a.Turn = a.Flare
		return a
	case Gothic:
		a.Turn = a.Flare + plane.Degrees(rapid.Float64Range(10, 60).Draw(t, "turn"))
	case U:
		a.Flat = plane.Millimetre(rapid.Float64Range(1, 6).Draw(t, "flat"))
	}
	a.Radius = plane.Millimetre(rapid.Float64Range(1, 8).Draw(t, "radius"))
	return a
}

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if math.Abs(got-want) > tolerance {
		t.Errorf("%s is %.12g, want %.12g", what, got, want)
	}
}
