package arch

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"ogive/geometry/plane"
)

func TestAnExactBorderGivesItsArchBack(t *testing.T) {
	for _, want := range sampleArches() {
		fit, err := Fit(dense(want.Polyline(6, 0.05), 0.05), 0.01)
		if err != nil {
			t.Fatalf("%+v: %v", want, err)
		}
		got := fit.Best().Arch
		if got.Shape != want.Shape || !fit.Sure {
			t.Errorf("shape %v (sure %v), want %v: %+v", got.Shape, fit.Sure, want.Shape, want)
		}
		near(t, want.Shape.String()+" span", float64(got.Span()), float64(want.Span()), 0.02)
		near(t, want.Shape.String()+" rise", float64(got.Rise()), float64(want.Rise()), 0.05)
		near(t, want.Shape.String()+" crown", float64(got.Crown.Distance(want.Crown)), 0, 0.03)
	}
}

func TestAStrayStretchDoesNotMoveTheArch(t *testing.T) {
	want := Arch{Shape: Gothic, Axis: down, Flare: plane.Degrees(8), Turn: plane.Degrees(65), Radius: 7}
	border := dense(want.Polyline(8, 0.05), 0.05)
	for i := range border {
		if i > 20 && i < 35 {
			border[i] = border[i].Add(plane.Vec[plane.Millimetre](1.5, -1))
		}
	}
	fit, err := Fit(border, 0.05)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "span", float64(fit.Best().Arch.Span()), float64(want.Span()), 0.1)
	near(t, "crown", float64(fit.Best().Arch.Crown.Distance(want.Crown)), 0, 0.1)
}

func TestTooShortABorderIsRefused(t *testing.T) {
	if _, err := Fit([]plane.Position{{X: 0, Y: 0}, {X: 1, Y: 1}, {X: 2, Y: 0}}, 0.01); err != ErrBorder {
		t.Errorf("three points gave %v, want ErrBorder", err)
	}
	same := make([]plane.Position, 40)
	if _, err := Fit(same, 0.01); err == nil {
		t.Error("forty times the same point gave an arch")
	}
}

// The fit's own spread must cover the truth: over many noisy borders the true
// half span, crown and flare lie within two standard deviations about 95 times
// in 100. The noise is correlated over several points, as a tracer's is.
func TestTheSpreadOfTheFitCoversTheTruth(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 11))
	inside, all, shapes := 0, 0, 0
	for range 60 {
		for _, want := range sampleArches() {
			fit, err := Fit(noisy(dense(want.Polyline(7, 0.06), 0.06), 0.03, rng), 0.05)
			if err != nil {
				t.Fatal(err)
			}
			if fit.Best().Arch.Shape == want.Shape {
				shapes++
			}
			spans := make([]float64, 200)
			for i := range spans {
				z := make([]float64, 6)
				for j := range z {
					z[j] = rng.NormFloat64()
				}
				spans[i] = math.Abs(float64(fit.Drawn(float64(i)/200, z).Span() - fit.Best().Arch.Span()))
			}
			all++
			if math.Abs(float64(fit.Best().Arch.Span()-want.Span())) <= percentile95(spans) {
				inside++
			}
		}
	}
	t.Logf("true span inside its interval %d of %d, shape right %d", inside, all, shapes)
	if share := float64(inside) / float64(all); share < 0.9 {
		t.Errorf("the true span lies inside its interval in %.3f of fits, want about 0.95", share)
	}
	if share := float64(shapes) / float64(all); share < 0.9 {
		t.Errorf("the shape is right in %.3f of fits, want 0.9", share)
	}
}

func BenchmarkFit(b *testing.B) {
	rng := rand.New(rand.NewPCG(1, 2))
	border := noisy(dense(Arch{Shape: Gothic, Axis: down, Flare: plane.Degrees(8), Turn: plane.Degrees(70), Radius: 6}.Polyline(8, 0.05), 0.05), 0.03, rng)
	for b.Loop() {
		if _, err := Fit(border, 0.05); err != nil {
			b.Fatal(err)
		}
	}
}

func sampleArches() []Arch {
	crown := plane.Pt[plane.Millimetre](31, -12)
	tilted := down.Turned(plane.Degrees(25))
	return []Arch{
		{Shape: V, Crown: crown, Axis: tilted, Flare: plane.Degrees(14), Turn: plane.Degrees(14)},
		{Shape: Round, Crown: crown, Axis: tilted, Flare: plane.Degrees(7), Turn: plane.RightAngle, Radius: 5},
		{Shape: Gothic, Crown: crown, Axis: tilted, Flare: plane.Degrees(9), Turn: plane.Degrees(62), Radius: 9},
		{Shape: U, Crown: crown, Axis: tilted, Flare: plane.Degrees(6), Turn: plane.RightAngle, Radius: 3, Flat: 4},
		{Shape: Gothic, Crown: crown, Axis: tilted, Flare: plane.Degrees(12), Turn: plane.Degrees(50), Radius: 5},
		{Shape: U, Crown: crown, Axis: tilted, Flare: plane.Degrees(15), Turn: plane.RightAngle, Radius: 1.5, Flat: 2.5},
	}
}

// noisy moves the points across the line by noise of standard deviation sd that
// is correlated over about four points.
func noisy(border []plane.Position, sd float64, rng *rand.Rand) []plane.Position {
	out := make([]plane.Position, len(border))
	state := rng.NormFloat64()
	for i, p := range border {
		state = 0.75*state + math.Sqrt(1-0.75*0.75)*rng.NormFloat64()
		j := min(max(i, 1), len(border)-1)
		across := border[j].Sub(border[j-1]).Direction().Left()
		out[i] = p.Add(across.Scale(sd * state))
	}
	return out
}

func percentile95(xs []float64) float64 {
	slices.Sort(xs)
	return xs[len(xs)*95/100]
}

// dense is the line with points no further apart than step.
func dense(line []plane.Position, step plane.Millimetre) []plane.Position {
	out := []plane.Position{line[0]}
	for i := 1; i < len(line); i++ {
		n := int(math.Ceil(float64(line[i].Distance(line[i-1]) / step)))
		for j := 1; j <= n; j++ {
			out = append(out, line[i-1].Towards(line[i], float64(j)/float64(n)))
		}
	}
	return out
}
