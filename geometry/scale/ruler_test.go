package scale

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"ogive/geometry/plane"
)

var (
	_ Reference = Ruler{}
	_ Reference = Ticks{}
	_ Reference = Card{}
)

func TestASimilarityKeepsRatiosAndAngles(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		at := func(name string) plane.PixelPoint {
			x := rapid.Float64Range(0, 4000).Draw(t, name+" x")
			y := rapid.Float64Range(0, 3000).Draw(t, name+" y")
			return plane.Pt(plane.Pixel(x), plane.Pixel(y))
		}
		from, towards := at("from"), plane.Radians(rapid.Float64Range(-math.Pi, math.Pi).Draw(t, "direction"))
		along := plane.Vec(plane.Pixel(rapid.Float64Range(50, 3000).Draw(t, "pixels")), 0).Turned(towards)
		r := Ruler{from, from.Add(along), plane.Millimetre(rapid.Float64Range(1, 300).Draw(t, "length"))}
		fit, err := r.Fit(Camera{Width: 4000, Height: 3000}, 2)
		if err != nil {
			t.Fatal(err)
		}
		a, b, c := at("a"), at("b"), at("c")
		A, B, C := fit.Best.Position(a), fit.Best.Position(b), fit.Best.Position(c)
		k := float64(r.Length / plane.Millimetre(along.Norm()))
		if d := math.Abs(float64(A.Distance(B)) - k*float64(a.Distance(b))); d > 1e-7 {
			t.Errorf("a length differs by %g mm", d)
		}
		px, mm := float64(b.Sub(a).Cross(c.Sub(a))), float64(B.Sub(A).Cross(C.Sub(A)))
		if math.Abs(mm-k*k*px) > 1e-6*(1+math.Abs(mm)) {
			t.Errorf("an area with its sign is %g, want %g", mm, k*k*px)
		}
	})
}

func TestPixelInvertsPosition(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		draw := func(name string, low, high float64) plane.Pixel {
			return plane.Pixel(rapid.Float64Range(low, high).Draw(t, name))
		}
		card := Card{Width: 85.6, Height: 53.98, Corners: [4]plane.PixelPoint{
			plane.Pt(draw("x1", 0, 300), draw("y1", 0, 200)), plane.Pt(draw("x2", 900, 1200), draw("y2", 0, 200)),
			plane.Pt(draw("x3", 900, 1200), draw("y3", 500, 700)), plane.Pt(draw("x4", 0, 300), draw("y4", 500, 700)),
		}}
		fit, err := card.Fit(Camera{Width: 1200, Height: 800}, 1)
		if err != nil {
			t.Fatal(err)
		}
		q := card.Corners
		u, v := float64(draw("u", 0, 1)), float64(draw("v", 0, 1))
		p := q[0].Towards(q[1], u).Towards(q[3].Towards(q[2], u), v)
		for _, m := range []Map{fit.Best, fit.Likely[7]} {
			if back := m.Pixel(m.Position(p)); back.Distance(p) > 1e-5 {
				t.Errorf("%v comes back as %v", p, back)
			}
		}
	})
}

func TestEveryLikelyMapOfARulerPutsItsEndsNearTheirLength(t *testing.T) {
	r := Ruler{plane.Pt[plane.Pixel](300, 1700), plane.Pt[plane.Pixel](1800, 1690), 50}
	fit, err := r.Fit(Camera{Width: 2400, Height: 2000}, 2)
	if err != nil {
		t.Fatal(err)
	}
	if got := fit.Best.Position(r.From).Distance(fit.Best.Position(r.To)); math.Abs(float64(got-50)) > 1e-9 {
		t.Errorf("the ruler itself is %v mm", got)
	}
	var sum, squares float64
	for _, m := range fit.Likely {
		d := float64(m.Position(r.From).Distance(m.Position(r.To)))
		sum += d
		squares += d * d
	}
	n := float64(len(fit.Likely))
	sd := math.Sqrt(squares/n - sum/n*sum/n)
	// Two ends of 2 px each over 1500 px.
	if want := 50 * 2 * math.Sqrt2 / 1500; math.Abs(sd-want) > 0.15*want || math.Abs(sum/n-50) > 0.02 {
		t.Errorf("over the draws %.4f ± %.4f mm, want 50 ± %.4f", sum/n, sd, want)
	}
	if !strings.Contains(fit.Warnings[0], "10 degrees") || len(fit.Usual) != 1 || fit.Usual[0] != fit.Warnings[0] {
		t.Errorf("the warnings do not name the allowed tilt: %q", fit.Warnings)
	}
}

func TestARulerWithoutLengthIsRefused(t *testing.T) {
	a, b := plane.Pt[plane.Pixel](300, 1700), plane.Pt[plane.Pixel](1800, 1690)
	camera := Camera{Width: 2400, Height: 2000}
	nan := math.NaN()
	for name, c := range map[string]struct {
		ruler  Ruler
		camera Camera
		sd     plane.Pixel
		says   string
	}{
		"length zero":     {Ruler{a, b, 0}, camera, 2, "scale.length_mm"},
		"length negative": {Ruler{a, b, -50}, camera, 2, "scale.length_mm"},
		"length NaN":      {Ruler{a, b, plane.Millimetre(nan)}, camera, 2, "scale.length_mm"},
		"length infinite": {Ruler{a, b, plane.Millimetre(math.Inf(1))}, camera, 2, "scale.length_mm"},
		"ends together":   {Ruler{a, a, 50}, camera, 2, "scale.ruler"},
		"end NaN":         {Ruler{a, plane.Pt(plane.Pixel(nan), 2), 50}, camera, 2, "point 2"},
		"sd NaN":          {Ruler{a, b, 50}, camera, plane.Pixel(nan), "click_sd_px"},
		"no photograph":   {Ruler{a, b, 50}, Camera{}, 2, "width"},
		"tilt absurd":     {Ruler{a, b, 50}, Camera{Width: 2400, Height: 2000, Tilt: plane.Degrees(89)}, 2, "tilt"},
	} {
		_, err := c.ruler.Fit(c.camera, c.sd)
		if err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func TestARulerMarkedTooShortIsWarnedOf(t *testing.T) {
	fit, err := Ruler{plane.Pt[plane.Pixel](300, 300), plane.Pt[plane.Pixel](380, 300), 5}.Fit(Camera{Width: 2400, Height: 2000}, 2)
	if err != nil {
		t.Fatal(err)
	}
	if got := strings.Join(fit.Warnings, "\n"); !strings.Contains(got, "longer stretch") {
		t.Errorf("warnings: %s", got)
	}
}

func TestALengthTypedInCentimetresIsWarnedOf(t *testing.T) {
	fit, err := Ruler{plane.Pt[plane.Pixel](300, 300), plane.Pt[plane.Pixel](2000, 300), 5}.Fit(Camera{Width: 2400, Height: 2000}, 2)
	if err != nil {
		t.Fatal(err)
	}
	if got := strings.Join(fit.Warnings, "\n"); !strings.Contains(got, "scale.length_mm") {
		t.Errorf("warnings: %s", got)
	}
}
