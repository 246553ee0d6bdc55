package scoring_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/geometry/scale"
	"ogive/geometry/scoring"
	"ogive/geometry/webframe"
)

func near(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s is %v, want %v", what, got, want)
	}
}

// By hand: the mean of 1 to 5 is 3, their deviation sqrt(2.5), Student's quantile
// for four degrees of freedom 2.776 (any table).
func TestABiasHasStudentsInterval(t *testing.T) {
	b := scoring.BiasOf([]float64{1, 2, 3, 4, 5})
	near(t, "bias", b.Value, 3, 0)
	near(t, "half interval", b.High-3, 2.776*math.Sqrt(2.5/5), 1e-3)
	near(t, "symmetry", b.High-3, 3-b.Low, 1e-12)
	if !b.Told() || scoring.BiasOf([]float64{-1, 1, -2, 2}).Told() {
		t.Error("a bias is told where the interval holds zero, or not where it leaves it out")
	}
}

func TestOneValueOrNoneTellsNoInterval(t *testing.T) {
	for _, values := range [][]float64{nil, {2}} {
		if b := scoring.BiasOf(values); b.Told() || !math.IsNaN(b.Low) || b.N != len(values) {
			t.Errorf("%v: %+v", values, b)
		}
	}
}

// The interval holds the true bias in 95 of 100 samples; of 4000, one standard
// error of that share is 0.0034.
func TestTheIntervalOfABiasHoldsTheTruthAsOftenAsItSays(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	held := 0
	for range 4000 {
		values := make([]float64, 6)
		for i := range values {
			values[i] = 0.7 + rng.NormFloat64()
		}
		if b := scoring.BiasOf(values); b.Low <= 0.7 && 0.7 <= b.High {
			held++
		}
	}
	near(t, "share held", float64(held)/4000, 0.95, 0.012)
}

func TestWildValuesDoNotMoveARobustDeviation(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 4))
	residuals := make([]float64, 4000)
	for i := range residuals {
		residuals[i] = 2 * rng.NormFloat64()
	}
	near(t, "deviation", scoring.RobustSD(residuals), 2, 0.1)
	for i := range 40 {
		residuals[i] = 1e6
	}
	near(t, "deviation with one wild value in a hundred", scoring.RobustSD(residuals), 2, 0.13)
	if !math.IsNaN(scoring.RobustSD(nil)) {
		t.Error("nothing has a deviation")
	}
}

// By the formula, by hand: 8 of 10 with z = 1.96 gives 0.490 to 0.943.
func TestAShareHasWilsonsInterval(t *testing.T) {
	s := scoring.ShareOf(8, 10)
	near(t, "share", s.Value, 0.8, 1e-12)
	near(t, "lower bound", s.Low, 0.490, 5e-4)
	near(t, "upper bound", s.High, 0.943, 5e-4)
	all := scoring.ShareOf(5, 5)
	if all.High != 1 || all.Low > 0.6 || all.Low < 0.5 {
		t.Errorf("five of five: %+v", all)
	}
	if none := scoring.ShareOf(0, 0); !math.IsNaN(none.Value) {
		t.Errorf("of nothing: %+v", none)
	}
}

func TestConfusionsAreCountedByTruthAndAnswer(t *testing.T) {
	c := scoring.NewConfusion("a", "b", "c")
	for _, pair := range [][2]string{{"a", "a"}, {"a", "b"}, {"c", "b"}, {"c", "b"}, {"b", "b"}, {"a", "unknown"}} {
		c.Add(pair[0], pair[1])
	}
	if right, total := c.Total(); right != 2 || total != 5 {
		t.Errorf("%d of %d", right, total)
	}
	if truth, said, times, ok := c.Worst(); truth != "c" || said != "b" || times != 2 || !ok {
		t.Errorf("%s for %s, %d, %v", said, truth, times, ok)
	}
	if _, _, _, ok := scoring.NewConfusion("a").Worst(); ok {
		t.Error("a mistake where none was made")
	}
}

// straight is two digits of 40 mm, 20 mm apart, pointing up in the picture, the
// radial one on the left.
func straight(t *testing.T) webframe.Frame {
	t.Helper()
	square := scale.Map{H: [9]float64{1, 0, 0, 0, 1, 0, 0, 0, 1}}
	at := func(x float64) map[hand.Joint]plane.PixelPoint {
		return map[hand.Joint]plane.PixelPoint{
			hand.MCP: plane.Pt(plane.Pixel(x), 100), hand.PIP: plane.Pt(plane.Pixel(x), 60),
		}
	}
	f, ok := webframe.Of(hand.Marks{Joints: map[hand.Digit]map[hand.Joint]plane.PixelPoint{hand.Middle: at(0), hand.Ring: at(20)}}, square, hand.ThirdWeb)
	if !ok {
		t.Fatal("no frame")
	}
	return f
}

// Index 0.5 lies 20 mm above the MCP joints, at y = 80; 0.7 at y = 72.
func TestACrownIsOffOnlyBeyondTheBandAndSidewaysFromTheMiddle(t *testing.T) {
	f := straight(t)
	for _, c := range []struct {
		x, y, distal, ulnar float64
	}{
		{10, 76, 0, 0}, {10, 80, 0, 0}, {10, 83, -3, 0}, {12, 70, 2, 2}, {7, 75, 0, -3},
	} {
		o := scoring.Beyond(f, 0.5, 0.7, plane.Pt(plane.Millimetre(c.x), plane.Millimetre(c.y)))
		near(t, "distal", float64(o.Distal), c.distal, 1e-9)
		near(t, "ulnar", float64(o.Ulnar), c.ulnar, 1e-9)
	}
	o := scoring.Miss(plane.Pt[plane.Millimetre](10, 80), plane.Pt[plane.Millimetre](13, 76), f.Axis(), f.Across())
	near(t, "distal miss", float64(o.Distal), 4, 1e-9)
	near(t, "ulnar miss", float64(o.Ulnar), 3, 1e-9)
	near(t, "size", float64(o.Size()), 5, 1e-9)
}
