package ruler

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"ogive/geometry/plane"
	"ogive/geometry/scale"
)

// trial finds the ticks of a scene; off is the distance of each from where it
// truly is, along the ruler, in pixels, if their number is right.
func (s scene) trial() (f Found, off []float64, err error) {
	d := s.draw()
	f, err = FindTicks(d.photograph, d.from, d.to)
	if err != nil || f.Spaces() != s.spaces {
		return f, nil, err
	}
	for i, p := range f.Ticks {
		off = append(off, math.Abs(d.along(p)-float64(i)*s.step)*s.perMM)
	}
	slices.Sort(off)
	return f, off, nil
}

// survey finds the ticks of many scenes and says in how many their number is
// right, and how far off they are.
func survey(t testing.TB, name string, n int, change func(*scene)) (right int, median, worst float64) {
	t.Helper()
	var medians []float64
	wrong := 0
	for seed := range uint64(n) {
		s := millimetreRuler(seed)
		change(&s)
		f, off, err := s.trial()
		switch {
		case err != nil:
			t.Logf("%s %d: %.1f px/mm, %d spaces: %v", name, seed, s.perMM, s.spaces, err)
			continue
		case off == nil:
			wrong++
			t.Logf("%s %d: %.1f px/mm: %d spaces, not %d; in doubt by %d and %d; check says %q", name, seed, s.perMM, f.Spaces(), s.spaces, f.first, f.last, Check(f, plane.Millimetre(s.length())))
			continue
		}
		if w := Check(f, plane.Millimetre(s.length())); w != "" {
			t.Logf("%s %d: false warning: %s", name, seed, w)
		}
		if off[len(off)-1] > 1 {
			t.Logf("%s %d: %.1f px/mm: worst %v seen %v grad %v", name, seed, s.perMM, off[len(off)*9/10:], f.seen(), f.Graduation)
		}
		right++
		medians = append(medians, off[len(off)/2])
		worst = math.Max(worst, off[len(off)-1])
	}
	if right > 0 {
		slices.Sort(medians)
		median = medians[len(medians)/2]
	}
	print := t.Logf
	if _, ok := t.(*testing.B); ok { // which cuts its log short
		print = func(format string, args ...any) { fmt.Printf(format+"\n", args...) }
	}
	print("%-24s counted right in %d of %d (wrong in %d), tick error: median %.3f px, worst %.3f px", name, right, n, wrong, median, worst)
	return right, median, worst
}

// BenchmarkSurvey prints, on demand, how well ticks are found on drawn rulers of
// 6 to 60 pixels a millimetre, tilted by up to 12 degrees, clicked with 2 px of
// error anywhere along the ticks:
//
//	go test -run NONE -bench Survey -benchtime 1x ./imaging/ruler
func BenchmarkSurvey(b *testing.B) {
	for b.Loop() {
		survey(b, "dark on light", 60, func(s *scene) {})
		survey(b, "light on dark", 60, func(s *scene) { s.ground, s.ink = 0.03, 0.7 })
		survey(b, "a quarter hidden", 60, func(s *scene) { s.hidden = 0.25 })
		survey(b, "scratched", 60, func(s *scene) { s.scratches = 5 })
		survey(b, "half millimetres", 40, halfMillimetres)
		survey(b, "sixteenths of an inch", 40, sixteenths)
		survey(b, "low contrast", 60, func(s *scene) { s.ground, s.ink = 0.4, 0.25 })
		survey(b, "dim light", 60, func(s *scene) { s.ground, s.ink, s.noise = 0.05, 0.01, 2 })
		survey(b, "rough clicks", 60, func(s *scene) { s.spread, s.missSD = 1.6, 3 })
	}
}

func halfMillimetres(s *scene) {
	s.step, s.every, s.spaces, s.width = 0.5, []int{2, 10, 20}, 2*s.spaces, 0.1
	s.perMM = max(12, s.perMM)
}

func sixteenths(s *scene) { s.step, s.every, s.spaces = 25.4/16, []int{2, 4, 8, 16}, 32 }

func TestTicksAreFoundToAFractionOfAPixel(t *testing.T) {
	for name, change := range map[string]func(*scene){
		"dark on light":    func(s *scene) {},
		"light on dark":    func(s *scene) { s.ground, s.ink = 0.03, 0.7 },
		"a quarter hidden": func(s *scene) { s.hidden = 0.25 },
		"scratched":        func(s *scene) { s.scratches = 5 },
	} {
		right, median, worst := survey(t, name, 6, change)
		if right < 5 || median > 0.1 || worst > 0.5 {
			t.Errorf("%s: %d of 6 counted right, tick error %.2f px at the median, %.2f at worst", name, right, median, worst)
		}
	}
}

func TestHiddenTicksAreBridgedAndSaidToBe(t *testing.T) {
	s := plain()
	s.hidden = 0.3
	f, off, err := s.trial()
	if err != nil || off == nil {
		t.Fatalf("%d spaces, %v", f.Spaces(), err)
	}
	if hidden := len(f.Seen) - int(f.seen()*float64(len(f.Seen))+0.5); hidden == 0 {
		t.Error("no tick is said to be hidden, though blots cover a third of the ruler")
	}
	if off[len(off)-1] > 1 {
		t.Errorf("a tick is off by %.2f px", off[len(off)-1])
	}
}

// plain is a ruler of 50 mm that is easy to read.
func plain() scene {
	s := millimetreRuler(4)
	s.perMM, s.spaces, s.turn, s.tilt, s.blur, s.noise, s.ground, s.ink = 14, 50, 0.3, 0.1, 0.8, 1, 0.8, 0.02
	return s
}

func TestTheCountContradictsAMistypedLength(t *testing.T) {
	for name, c := range map[string]struct {
		change func(*scene)
		length plane.Millimetre
		says   string
	}{
		"right":                   {func(s *scene) {}, 50, ""},
		"40 for 50":               {func(s *scene) {}, 40, "Say 50 mm"},
		"centimetres":             {func(s *scene) {}, 5, "Say 50 mm"},
		"half millimetres":        {halfMillimetres, 50, ""},
		"half taken for whole":    {halfMillimetres, 100, "Say 50 mm"},
		"two inches":              {sixteenths, 50.8, ""},
		"two inches, as 20 mm":    {sixteenths, 20, "Say 50.8 mm"},
		"two inches, taken as 32": {sixteenths, 32, "inch"},
		"nothing given":           {func(s *scene) {}, 0, ""},
		"not a number":            {func(s *scene) {}, plane.Millimetre(math.NaN()), ""},
	} {
		s := plain()
		c.change(&s)
		f, _, err := s.trial()
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		got := Check(f, c.length)
		if (got == "") != (c.says == "") || !strings.Contains(got, c.says) {
			t.Errorf("%s: %d spaces, graduation %d: %q", name, f.Spaces(), f.Graduation, got)
		}
		ticks, ok := f.Scale(c.length)
		if valid := c.length > 0; ok != (valid && c.says == "") {
			t.Errorf("%s: as a scale: %v, %v", name, ticks.Step, ok)
		}
	}
}

func TestTicksFoundShowTheTiltAlongTheRuler(t *testing.T) {
	s := plain()
	s.tilt, s.around = 0.2, s.turn
	d := s.draw()
	f, err := FindTicks(d.photograph, d.from, d.to)
	if err != nil {
		t.Fatal(err)
	}
	ticks, ok := f.Scale(50)
	if !ok {
		t.Fatalf("no scale from %d spaces", f.Spaces())
	}
	middle := d.at(25, 0) // the picture is drawn about it
	fit, err := ticks.Fit(scale.Camera{Width: 2 * middle.X, Height: 2 * middle.Y, Focal: focal}, 2)
	if err != nil {
		t.Fatal(err)
	}
	for _, ends := range [][2]float64{{2, 12}, {20, 30}, {38, 48}} {
		got := fit.Best.Position(d.at(ends[0], 5)).Distance(fit.Best.Position(d.at(ends[1], 5)))
		if math.Abs(float64(got)-10) > 0.01 {
			t.Errorf("10 mm from %v to %v mm along the ruler come to %.4f mm", ends[0], ends[1], float64(got))
		}
	}
}

func TestAnUncertainCountWarnsOfNothing(t *testing.T) {
	f := Found{Ticks: make([]plane.PixelPoint, 41), Seen: make([]bool, 41)}
	for i := range 28 {
		f.Seen[i] = true
	}
	if got := Check(f, 50); got != "" {
		t.Errorf("with 28 of 41 ticks seen: %q", got)
	}
}

func TestWhereThereAreNoTicksItSaysSo(t *testing.T) {
	s := plain()
	d := s.draw()
	far := plane.Pt[plane.Pixel](-5000, -5000)
	nan := plane.Pt(plane.Pixel(math.NaN()), 3)
	for name, c := range map[string]struct {
		from, to plane.PixelPoint
		says     string
	}{
		"ends together":          {d.from, d.from.Add(plane.Vec[plane.Pixel](3, 4)), "5 px apart"},
		"no number":              {nan, d.to, "finite"},
		"outside the photograph": {far, far.Add(plane.Vec[plane.Pixel](300, 0)), "outside"},
		"across the ruler":       {d.at(-4, -2), d.at(-4, 9), "no row"},
	} {
		f, err := FindTicks(d.photograph, c.from, c.to)
		if err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %d ticks, %v", name, len(f.Ticks), err)
		}
	}
	s.perMM, s.blur = 3, 0.4
	d = s.draw()
	if f, err := FindTicks(d.photograph, d.from, d.to); err == nil && f.Spaces() > 0 && f.reliable() && Check(f, 50) != "" {
		t.Errorf("3 px to a millimetre: %d ticks, taken for reliable", len(f.Ticks))
	}
}
