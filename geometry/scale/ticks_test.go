package scale

import (
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"ogive/geometry/plane"
)

// tilted is a ruler of n ticks a millimetre apart along the picture's x axis,
// through its middle, on a plane tilted along it, seen without error.
func tilted(tilt plane.Angle, n int) (Ticks, scene) {
	s := scene{Camera{Width: 4000, Height: 3000, Focal: 4000}, 4000, slant{tilt.Tan(), 0}, 250}
	t := Ticks{Step: 1}
	for i := range n {
		t.At = append(t.At, s.seen(float64(i)-float64(n)/3, 0))
	}
	return t, s
}

func TestForeshorteningGivesTheTiltAlongTheRuler(t *testing.T) {
	for _, deg := range []float64{-20, -7, 0, 3, 12, 25} {
		ticks, s := tilted(plane.Degrees(deg), 61)
		fit, err := ticks.Fit(s.camera, 2)
		if err != nil {
			t.Fatal(err)
		}
		normal := s.camera.lens().slantOf(fit.Best)
		if got := plane.Radians(math.Atan(normal.x)).Degrees(); math.Abs(got-deg) > 0.05 || math.Abs(normal.y) > 1e-9 {
			t.Errorf("a ruler tilted by %v degrees is seen at %.2f degrees", deg, got)
		}
		// A length elsewhere on the plane comes out true.
		a, b := s.seen(-10, -40), s.seen(8, -45)
		got, want := float64(fit.Best.Position(a).Distance(fit.Best.Position(b))), math.Hypot(18, 5)
		if math.Abs(got-want) > 0.001*want {
			t.Errorf("at %v degrees a length of %.3f mm comes to %.3f mm", deg, want, got)
		}
		warned := strings.Contains(strings.Join(fit.Warnings, " "), "tilted")
		if warned != (math.Abs(deg) > largeTilt) {
			t.Errorf("at %v degrees the warnings are %q", deg, fit.Warnings)
		}
	}
}

func TestThreeRoughTicksDoNotInventATilt(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 7))
	for range 50 {
		ticks := Ticks{Step: 10}
		for i := range 3 {
			ticks.At = append(ticks.At, plane.Pt(
				plane.Pixel(900+100*float64(i)+2*rng.NormFloat64()), plane.Pixel(2000+2*rng.NormFloat64())))
		}
		camera := Camera{Width: 4000, Height: 3000}
		fit, err := ticks.Fit(camera, 2)
		if err != nil {
			t.Fatal(err)
		}
		if tilt := camera.lens().slantOf(fit.Best).angle(); tilt.Degrees() > 10 {
			t.Errorf("a tilt of %.1f degrees from ticks at %v", tilt.Degrees(), ticks.At)
		}
	}
}

func TestTicksThatAreNoRowAreRefused(t *testing.T) {
	row := func(n int, step float64) []plane.PixelPoint {
		var at []plane.PixelPoint
		for i := range n {
			at = append(at, plane.Pt(plane.Pixel(300+step*float64(i)), plane.Pixel(500+0.1*step*float64(i))))
		}
		return at
	}
	with := func(at []plane.PixelPoint, i int, dx, dy plane.Pixel) []plane.PixelPoint {
		at[i] = at[i].Add(plane.Vec(dx, dy))
		return at
	}
	nan := math.NaN()
	for name, c := range map[string]struct {
		ticks Ticks
		says  string
	}{
		"two ticks":          {Ticks{row(2, 100), 10}, "three are needed"},
		"step zero":          {Ticks{row(5, 100), 0}, "scale.step_mm"},
		"step negative":      {Ticks{row(5, 100), -1}, "scale.step_mm"},
		"step NaN":           {Ticks{row(5, 100), plane.Millimetre(nan)}, "scale.step_mm"},
		"tick NaN":           {Ticks{with(row(5, 100), 3, plane.Pixel(nan), 0), 10}, "point 4"},
		"off the line":       {Ticks{with(row(5, 100), 3, 0, 90), 10}, "beside the line"},
		"out of order":       {Ticks{with(row(5, 100), 3, -150, -15), 10}, "order"},
		"one twice":          {Ticks{append(row(5, 100), row(5, 100)[4]), 10}, "once"},
		"one left out":       {Ticks{slices.Delete(row(9, 100), 4, 5), 10}, "between ticks 4 and 5"},
		"one of 40 left out": {Ticks{slices.Delete(row(40, 15), 20, 21), 1}, "between ticks 20 and 21"},
		"one left out of 4":  {Ticks{slices.Delete(row(4, 100), 1, 2), 10}, "between ticks 1 and 2"},
		"one too many":       {Ticks{slices.Insert(row(9, 100), 4, row(9, 100)[3].Mid(row(9, 100)[4])), 10}, "take out"},
		"all in one place":   {Ticks{make([]plane.PixelPoint, 4), 10}, "once"},
	} {
		_, err := c.ticks.Fit(Camera{Width: 4000, Height: 3000}, 2)
		if err == nil || !strings.Contains(err.Error(), c.says) || !strings.HasPrefix(err.Error(), "scale.") {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// Whatever can be marked on a strongly tilted ruler with rough clicks is taken.
func TestHonestTicksAreNotRefused(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 1))
	for range 400 {
		s := newScene(rng, 30)
		ruler, _ := near(rng)
		n := 3 + rng.IntN(50)
		ticks := Ticks{Step: plane.Millimetre(math.Hypot(ruler.dx, ruler.dy) / float64(n-1))}
		for i := range n {
			x, y := ruler.at(float64(i) / float64(n-1))
			ticks.At = append(ticks.At, clicked(rng, s, x, y, 1.5))
		}
		if _, err := ticks.Fit(s.camera, 2); err != nil {
			t.Errorf("%d ticks at a tilt of %.0f degrees: %v", n, s.normal.angle().Degrees(), err)
		}
	}
}

func BenchmarkFit(b *testing.B) {
	ticks, s := tilted(plane.Degrees(8), 101)
	three := Ticks{[]plane.PixelPoint{ticks.At[0], ticks.At[50], ticks.At[100]}, 50}
	for name, r := range map[string]Reference{
		"ruler":     Ruler{ticks.At[0], ticks.At[50], 50},
		"101 ticks": ticks,
		"3 ticks":   three,
		"card":      Card{[4]plane.PixelPoint{s.seen(0, 0), s.seen(85.6, 0), s.seen(85.6, 53.98), s.seen(0, 53.98)}, 85.6, 53.98},
	} {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				if _, err := r.Fit(s.camera, 2); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
