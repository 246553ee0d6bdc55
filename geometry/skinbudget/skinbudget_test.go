package skinbudget

import (
	"cmp"
	"math"
	"slices"
	"strings"
	"testing"

	"ogive/geometry/plane"
)

func near(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s is %v, want %v", what, got, want)
	}
}

func exactly(v float64) plane.Estimate[plane.Millimetre] {
	return plane.Estimate[plane.Millimetre]{Value: plane.Millimetre(v)}
}

// Joined outline 2 pi r + 4 r, apart 4 pi r: 1.2220, about 22 per cent more skin
// (widely quoted from Eaton CJ, Lister GD. Syndactyly. Hand Clin 1990;6:555-75:
// from memory).
func TestEqualDigitsNeedTwentyTwoPerCentMoreSkin(t *testing.T) {
	b, err := Reckon(Girths{exactly(50), exactly(50)}, exactly(30), plane.Estimate[plane.SquareMillimetre]{})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "ratio", float64(b.Ratio.Value), 1.2220, 0.00005)
	r := 50 / (2 * math.Pi)
	near(t, "outline", float64(b.Outline.Value), 2*math.Pi*r+4*r, 1e-9)
	near(t, "shortage per mm", float64(b.PerMillimetre.Value), 2*math.Pi*r-4*r, 1e-9)
	near(t, "shortage", float64(b.Shortage.Value), 30*(2*math.Pi-4)*r, 1e-9)
}

// The outline of two circles in contact against the convex hull of points on
// them, computed by a monotone chain (Andrew AM. Inf Process Lett 1979;9:216-9:
// from memory), for equal and unequal digits.
func TestTheOutlineOfUnequalDigitsIsThatOfTheirConvexHull(t *testing.T) {
	for _, g := range [][2]float64{{50, 50}, {55, 45}, {60, 30}, {40, 65}, {80, 12}} {
		hull := hullPerimeter(g[0]/(2*math.Pi), g[1]/(2*math.Pi))
		near(t, "outline", float64(Outline(plane.Millimetre(g[0]), plane.Millimetre(g[1]))), hull, 1e-4*hull)
	}
}

// hullPerimeter is the perimeter of the convex hull of two circles in contact.
func hullPerimeter(one, other float64) float64 {
	const n = 4000
	var ps [][2]float64
	for i := range n {
		s, c := math.Sincos(2 * math.Pi * float64(i) / n)
		ps = append(ps, [2]float64{one * c, one * s}, [2]float64{one + other + other*c, other * s})
	}
	slices.SortFunc(ps, func(a, b [2]float64) int { return cmp.Or(cmp.Compare(a[0], b[0]), cmp.Compare(a[1], b[1])) })
	half := func(ps [][2]float64) float64 {
		var chain [][2]float64
		for _, p := range ps {
			for len(chain) > 1 {
				a, b := chain[len(chain)-2], chain[len(chain)-1]
				if (b[0]-a[0])*(p[1]-a[1])-(b[1]-a[1])*(p[0]-a[0]) > 0 {
					break
				}
				chain = chain[:len(chain)-1]
			}
			chain = append(chain, p)
		}
		sum := 0.0
		for i := 1; i < len(chain); i++ {
			sum += math.Hypot(chain[i][0]-chain[i-1][0], chain[i][1]-chain[i-1][1])
		}
		return sum
	}
	forth := half(ps)
	slices.Reverse(ps)
	return forth + half(ps)
}

func TestTheSharesOfBothDigitsAreTheWholeShortage(t *testing.T) {
	for _, g := range [][2]float64{{50, 50}, {55, 45}, {40, 65}} {
		b, err := Reckon(Girths{exactly(g[0]), exactly(g[1])}, exactly(30), plane.Estimate[plane.SquareMillimetre]{Value: 40})
		if err != nil {
			t.Fatal(err)
		}
		near(t, "shares", float64(b.Radial.Value+b.Ulnar.Value), float64(b.PerMillimetre.Value), 1e-9)
		sum := plane.SquareMillimetre(0)
		for _, p := range b.Patches() {
			sum += p.Area()
			near(t, "outline", shoelace(p.Outline), float64(p.Area()), 1e-9)
		}
		near(t, "patches", float64(sum), float64(b.Graft.Value), 1e-9)
		near(t, "graft", float64(b.Graft.Value), float64(b.Shortage.Value)-40, 1e-9)
	}
}

func shoelace(ps []plane.Position) float64 {
	sum := 0.0
	for i, p := range ps {
		q := ps[(i+1)%len(ps)]
		sum += float64(p.X*q.Y - q.X*p.Y)
	}
	return math.Abs(sum) / 2
}

// For equal digits the shortage is (2 pi - 4) r = girth (1 - 2/pi) in all, half
// of it from each: girths of 2 mm uncertainty each give sqrt(2) x 2 x (1 - 2/pi)/2
// (JCGM 100:2008, 5.1.2).
func TestTheShortageIsAsUncertainAsTheGirths(t *testing.T) {
	b, err := Reckon(Girths{Taped(50), Taped(50)}, exactly(30), plane.Estimate[plane.SquareMillimetre]{Value: 10, U95: 5})
	if err != nil {
		t.Fatal(err)
	}
	want := math.Sqrt2 * 2 * (1 - 2/math.Pi) / 2
	near(t, "U95 per mm", float64(b.PerMillimetre.U95), want, 1e-4)
	near(t, "U95 of the shortage", float64(b.Shortage.U95), 30*want, 3e-3)
	near(t, "U95 of the graft", float64(b.Graft.U95), math.Hypot(30*want, 5), 3e-3)
}

func TestAWidthGivesTheGirthOfARoundDigitWithMoreDoubt(t *testing.T) {
	g := FromWidth(plane.Estimate[plane.Millimetre]{Value: 16, U95: 1})
	near(t, "girth", float64(g.Value), 16*math.Pi, 1e-9)
	if g.U95 <= Taping {
		t.Errorf("a girth told from a width is as sure as a taped one: ± %v", g.U95)
	}
}

func TestFlapsThatBringMoreThanIsShortLeaveNoGraft(t *testing.T) {
	b, err := Reckon(Girths{exactly(50), exactly(50)}, exactly(10), plane.Estimate[plane.SquareMillimetre]{Value: 1000})
	if err != nil {
		t.Fatal(err)
	}
	if b.Graft.Value != 0 || b.Patches() != nil || !strings.Contains(strings.Join(b.Remarks, " "), "more than is short") {
		t.Errorf("%+v", b)
	}
}

func TestAGirthThatNoDigitHasIsRefused(t *testing.T) {
	for says, g := range map[string]Girths{
		"girths.ulnar: is missing":   {Radial: exactly(50)},
		"girths.radial: 500 mm":      {exactly(500), exactly(50)},
		"girths.radial: NaN mm is n": {exactly(math.NaN()), exactly(50)},
	} {
		if _, err := Reckon(g, exactly(30), plane.Estimate[plane.SquareMillimetre]{}); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%v, want %q", err, says)
		}
	}
	if _, err := Reckon(Girths{exactly(50), exactly(50)}, exactly(0), plane.Estimate[plane.SquareMillimetre]{}); err == nil || !strings.Contains(err.Error(), "join: ") {
		t.Errorf("%v", err)
	}
}

func TestAllPatchesCanBeCutFromTheSpindle(t *testing.T) {
	b, err := Reckon(Girths{exactly(55), exactly(45)}, exactly(30), plane.Estimate[plane.SquareMillimetre]{Value: 100})
	if err != nil {
		t.Fatal(err)
	}
	patches := b.Patches()
	s := SpindleFor(patches)
	near(t, "length over width", float64(s.Length/s.Width), 3, 1e-9)
	long := float64(patches[0].Length + patches[1].Length)
	wide := math.Max(float64(patches[0].Width), float64(patches[1].Width))
	near(t, "half width at the end of the patches", spindleHalf(float64(s.Length), long/2), wide/2, 1e-6)
	// A circular segment of radius R and half angle a has the area R² (a - sin a cos a).
	w, l := float64(s.Width), float64(s.Length)
	r := (l*l + w*w) / (4 * w)
	a := math.Asin(l / 2 / r)
	near(t, "area", shoelace(s.Outline), 2*r*r*(a-math.Sin(a)*math.Cos(a)), 0.002*l*w)
	if empty := SpindleFor(nil); empty.Outline != nil {
		t.Error("a spindle for no patch")
	}
}
