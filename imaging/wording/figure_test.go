package wording

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"ogive/geometry/plane"
	"pgregory.net/rapid"
)

func TestFiguresReadAsASurgeonWouldWriteThem(t *testing.T) {
	for _, c := range []struct{ got, want string }{
		{Ratio(plane.Estimate[plane.Ratio]{Value: 0.4713, U95: 0.0201}), "0.47 ± 0.02"},
		{Ratio(plane.Estimate[plane.Ratio]{Value: 0.4713, U95: 0.0249}), "0.47 ± 0.03"},
		{Ratio(plane.Estimate[plane.Ratio]{Value: 0.5, U95: 0.0001}), "0.50 ± 0.01"},
		{Ratio(plane.Estimate[plane.Ratio]{Value: -0.004, U95: 0.02}), "0.00 ± 0.02"},
		{Ratio(plane.Estimate[plane.Ratio]{Value: 0.47, U95: 0}), "0.47 ± 0.00"},
		{Millimetres(plane.Estimate[plane.Millimetre]{Value: 8.4321, U95: 0.27}), "8.4 ± 0.3 mm"},
		{Millimetres(plane.Estimate[plane.Millimetre]{Value: 12.66, U95: 4.6}), "13 ± 5 mm"},
		{Millimetres(plane.Estimate[plane.Millimetre]{Value: 12.66, U95: 1.23}), "12.7 ± 1.2 mm"},
		{Degrees(plane.Estimate[plane.Angle]{Value: plane.Degrees(118.2), U95: plane.Degrees(5.8)}), "118 ± 6°"},
		{Degrees(plane.Estimate[plane.Angle]{Value: plane.Degrees(118.2), U95: plane.Degrees(41)}), "120 ± 40°"},
		{SquareMillimetres(plane.Estimate[plane.SquareMillimetre]{Value: 54.2, U95: 3}), "54.2 ± 3.0 mm²"},
		{MillimetresPerPixel(plane.Estimate[plane.Millimetre]{Value: 0.033312, U95: 0.000412}), "0.0333 ± 0.0004 mm per pixel"},
		{Millimetres(plane.Estimate[plane.Millimetre]{Value: plane.Millimetre(math.NaN()), U95: 1}), "not known"},
		{Millimetres(plane.Estimate[plane.Millimetre]{Value: 1, U95: plane.Millimetre(math.Inf(1))}), "not known"},
	} {
		if c.got != c.want {
			t.Errorf("written %q, want %q", c.got, c.want)
		}
	}
}

func TestRoundingNeverHidesUncertainty(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		value := rapid.Float64Range(-1000, 1000).Draw(t, "value")
		u95 := rapid.Float64Range(1e-6, 500).Draw(t, "u95")
		finest := rapid.IntRange(0, 5).Draw(t, "finest")
		v, u := Rounded(value, u95, finest)
		shown, err := strconv.ParseFloat(u, 64)
		if err != nil {
			t.Fatalf("uncertainty %q is no number", u)
		}
		if shown < 0.949*u95 {
			t.Fatalf("± %v was written as ± %s", u95, u)
		}
		centre, err := strconv.ParseFloat(v, 64)
		if err != nil {
			t.Fatalf("value %q is no number", v)
		}
		if math.Abs(centre-value) > 0.5001*math.Max(shown, math.Pow(10, float64(-finest))) {
			t.Fatalf("%v ± %v was written as %s ± %s", value, u95, v, u)
		}
		if decimals(v) != decimals(u) {
			t.Fatalf("%s ± %s differ in decimals", v, u)
		}
	})
}

func decimals(s string) int {
	_, after, _ := strings.Cut(s, ".")
	return len(after)
}
