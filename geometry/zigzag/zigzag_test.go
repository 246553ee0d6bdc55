package zigzag

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"ogive/geometry/plane"
	"ogive/geometry/scale"
)

// upright is a join of 40 mm straight up the picture.
var upright = Join{From: plane.Pt[plane.Millimetre](70, 90), To: plane.Pt[plane.Millimetre](70, 50)}

var exact = scale.Fit{Best: scale.Map{H: [9]float64{0.1, 0, 0, 0, 0.1, 0, 0, 0, 1}}}

func near(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s is %v, want %v", what, got, want)
	}
}

// By hand: four flaps over 40 mm have a half period of 8 mm; with a reach of
// 8 sqrt 3 each limb stands at 30 degrees and each tip has 60.
func TestARegularZigzagHasTheAnglesOfItsHalfPeriodAndReach(t *testing.T) {
	reach := 8 * math.Sqrt(3)
	z := Regular(upright, 4, plane.Millimetre(reach), true)
	f := Of(z, exact)
	if len(f.Limbs) != 5 || len(f.Flaps) != 4 || z.FlapCount() != 4 || !z.BeginsRight() {
		t.Fatalf("%d limbs, %d flaps", len(f.Limbs), len(f.Flaps))
	}
	for _, l := range f.Limbs {
		near(t, "obliquity", l.Obliquity.Value.Degrees(), 30, 1e-9)
		near(t, "limb", float64(l.Length.Value), 16, 1e-9)
	}
	for _, p := range f.Flaps {
		near(t, "tip angle", p.TipAngle.Value.Degrees(), 60, 1e-9)
	}
	near(t, "length", float64(f.Length.Value), 80, 1e-9)
	near(t, "reach", float64(z.Reach()), reach, 1e-9)
	if len(f.Notes) != 0 {
		t.Errorf("notes %q", f.Notes)
	}
}

func TestTheAnglesFollowTheFormulaForAnyNumberAndReach(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, MostFlaps).Draw(t, "flaps")
		reach := rapid.Float64Range(2, 30).Draw(t, "reach")
		j := Join{From: plane.Pt[plane.Millimetre](10, 20), To: plane.Pt(plane.Millimetre(rapid.Float64Range(30, 60).Draw(t, "x")), plane.Millimetre(rapid.Float64Range(-60, 0).Draw(t, "y")))}
		f := Of(Regular(j, n, plane.Millimetre(reach), rapid.Bool().Draw(t, "right")), exact)
		want := math.Atan(float64(j.Length()) / float64(n+1) / reach)
		for _, l := range f.Limbs {
			if math.Abs(float64(l.Obliquity.Value)-want) > 1e-9 {
				t.Fatalf("obliquity %v, want %v", l.Obliquity.Value, want)
			}
		}
		for _, p := range f.Flaps {
			if math.Abs(float64(p.TipAngle.Value)-2*want) > 1e-9 || p.Narrow != (2*want < math.Pi/6-1e-9) {
				t.Fatalf("tip %v, want %v", p.TipAngle.Value, 2*want)
			}
		}
	})
}

// Of a regular zigzag the other face is the same shifted by half a period, and
// every tip meets a bay.
func TestThePalmarZigzagIsTheDorsalOneShiftedByHalfAPeriod(t *testing.T) {
	dorsal := Regular(upright, 4, 12, true)
	palmar := dorsal.Opposite()
	for i := 1; i < len(palmar.Points); i++ {
		shifted := dorsal.Points[i-1].Add(plane.Vec[plane.Millimetre](0, -8))
		if d := palmar.Points[i].Distance(shifted); d > 1e-9 {
			t.Errorf("point %d lies %v mm off", i, d)
		}
	}
	if d := max(dorsal.Mismatch(palmar), palmar.Mismatch(dorsal)); d > 1e-9 {
		t.Errorf("a tip misses its bay by %v mm", d)
	}
	if d := dorsal.Mismatch(dorsal); math.Abs(float64(d)-8) > 1e-9 {
		t.Errorf("two equal faces, tip on tip, miss by %v mm, want the half period", d)
	}
}

func TestADraggedZigzagTellsEachFlapOnItsOwn(t *testing.T) {
	z := Regular(upright, 4, 12, true)
	z.Points[2] = z.Points[2].Add(plane.Vec[plane.Millimetre](0, -3)) // the second tip 3 mm further distal
	f := Of(z, exact)
	near(t, "limb before it", f.Limbs[1].Obliquity.Value.Degrees(), math.Atan(11.0/12)*180/math.Pi, 1e-9)
	near(t, "limb after it", f.Limbs[2].Obliquity.Value.Degrees(), math.Atan(5.0/12)*180/math.Pi, 1e-9)
	near(t, "its tip", f.Flaps[1].TipAngle.Value.Degrees(), (math.Atan(11.0/12)+math.Atan(5.0/12))*180/math.Pi, 1e-9)
	near(t, "an untouched limb", f.Limbs[4].Obliquity.Value.Degrees(), math.Atan(8.0/12)*180/math.Pi, 1e-9)
	near(t, "mismatch", float64(z.Mismatch(Regular(upright, 4, 12, false))), 3, 1e-9)
}

func TestAVeryNarrowTipIsCautionedAgainst(t *testing.T) {
	f := Of(Regular(upright, 9, 20, true), exact) // 2 atan(4 / 20) = 22.6 degrees
	if len(f.Notes) != 1 || !strings.Contains(f.Notes[0], "Flaps 1, 2, 3, 4, 5, 6, 7, 8, 9, counted from proximal, have tips down to 23 degrees, below 30") {
		t.Errorf("%q", f.Notes)
	}
	thirty := Of(Regular(upright, 1, plane.Millimetre(20/math.Tan(math.Pi/12)), true), exact)
	near(t, "tip", thirty.Flaps[0].TipAngle.Value.Degrees(), 30, 1e-9)
	if thirty.Flaps[0].Narrow {
		t.Error("a tip of just 30 degrees is called narrow")
	}
}

func TestAFlatPhotographLeavesAnglesOfASimilarScaleCertain(t *testing.T) {
	fit := exact
	for i := range 401 {
		k := 0.1 * (1 + 0.02*float64(i-200)/190)
		fit.Likely = append(fit.Likely, scale.Map{H: [9]float64{k, 0, 0, 0, k, 0, 0, 0, 1}})
	}
	f := Of(Regular(upright, 4, 12, true), fit)
	near(t, "U95 of a tip", f.Flaps[0].TipAngle.U95.Degrees(), 0, 1e-9)
	near(t, "U95 of the length", float64(f.Length.U95), 0.02*float64(f.Length.Value), 0.05)
}

func TestAJoinWithoutLengthGivesNoFigureThatIsNoNumber(t *testing.T) {
	at := plane.Pt[plane.Millimetre](1, 1)
	for _, l := range Of(Regular(Join{at, at}, 3, 10, true), exact).Limbs {
		if math.IsNaN(float64(l.Length.Value)) || math.IsNaN(float64(l.Obliquity.Value)) {
			t.Errorf("%+v", l)
		}
	}
}
