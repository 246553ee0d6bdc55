package followup_test

import (
	"math"
	"testing"
	"time"

	"ogive/geometry/followup"
	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/geometry/scale"
)

type ratio = plane.Estimate[plane.Ratio]

func near(t *testing.T, what string, got, want, by float64) {
	t.Helper()
	if !(math.Abs(got-want) <= by) {
		t.Errorf("%s is %v, want %v within %v", what, got, want, by)
	}
}

func day(t *testing.T, s string) followup.Day {
	t.Helper()
	d, err := followup.ParseDay(s)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// Worked by hand: from 0.50 to 0.60, 0.10 of the 0.50 that were left, is 0.20;
// u² = (0.02/0.5)² + (0.02 x 0.4/0.25)² = 0.0016 + 0.001024.
func TestCreepIsTheShareOfTheDistanceLeft(t *testing.T) {
	c := followup.Creep(ratio{Value: 0.60, U95: 0.02}, ratio{Value: 0.50, U95: 0.02})
	near(t, "creep", float64(c.Value), 0.2, 1e-12)
	near(t, "its uncertainty", float64(c.U95), math.Sqrt(0.002624), 1e-12)
}

func TestCreepIsNegativeWhereTheWebHasDeepened(t *testing.T) {
	c := followup.Creep(ratio{Value: 0.40, U95: 0.02}, ratio{Value: 0.50, U95: 0.02})
	near(t, "creep", float64(c.Value), -0.2, 1e-12)
	g := followup.Grade(c, followup.Soft)
	if g.Movement != followup.Deepened || g.Grade != 0 || !g.Certain {
		t.Errorf("a web that has certainly deepened and is soft is graded %+v", g)
	}
}

func TestCreepAllTheWayIsOne(t *testing.T) {
	c := followup.Creep(ratio{Value: 1, U95: 0.01}, ratio{Value: 0.5, U95: 0.01})
	near(t, "creep", float64(c.Value), 1, 1e-12)
	near(t, "its uncertainty", float64(c.U95), 0.02, 1e-12) // the baseline no longer matters
}

func TestThereIsNoCreepFromAWebNotReleased(t *testing.T) {
	c := followup.Creep(ratio{Value: 0.6, U95: 0.02}, ratio{Value: 0.98, U95: 0.03})
	if !math.IsNaN(float64(c.Value)) || !math.IsNaN(float64(c.U95)) {
		t.Errorf("creep from a baseline that may lie at the PIP joints is %v", c)
	}
	if g := followup.Grade(c, followup.Soft); g.Movement != followup.NotKnown || g.Least != 0 || g.Most != 4 || g.Certain {
		t.Errorf("creep that is not known is graded %+v", g)
	}
}

func TestGradesGoByThirdsAndAreCertainOnlyWithinOne(t *testing.T) {
	for _, c := range []struct {
		creep   ratio
		feel    followup.Feel
		want    followup.Grading
		because string
	}{
		{ratio{Value: 0.2, U95: 0.1}, followup.Soft, followup.Grading{followup.Advanced, 2, 2, 2, true}, "all within the first third"},
		{ratio{Value: 0.3, U95: 0.1}, followup.Soft, followup.Grading{followup.Advanced, 2, 2, 3, false}, "reaching into the second third"},
		{ratio{Value: 0.5, U95: 0.1}, followup.NotFelt, followup.Grading{followup.Advanced, 3, 3, 3, true}, "all within the second third"},
		{ratio{Value: 0.9, U95: 0.2}, followup.NotFelt, followup.Grading{followup.Advanced, 4, 4, 4, true}, "all within the last third"},
		{ratio{Value: 0.7, U95: 0.4}, followup.NotFelt, followup.Grading{followup.Advanced, 4, 2, 4, false}, "anywhere"},
		{ratio{Value: 0.02, U95: 0.05}, followup.Soft, followup.Grading{followup.NoneTold, 0, 0, 2, false}, "no advance told, soft"},
		{ratio{Value: 0.02, U95: 0.05}, followup.Thickened, followup.Grading{followup.NoneTold, 1, 1, 2, false}, "no advance told, thickened"},
		{ratio{Value: 0.02, U95: 0.05}, followup.NotFelt, followup.Grading{followup.NoneTold, 0, 0, 2, false}, "no advance told, not felt"},
		{ratio{Value: -0.2, U95: 0.05}, followup.NotFelt, followup.Grading{followup.Deepened, 0, 0, 1, false}, "deepened, not felt"},
		{ratio{Value: -0.2, U95: 0.05}, followup.Thickened, followup.Grading{followup.Deepened, 1, 1, 1, true}, "deepened, thickened"},
	} {
		if got := followup.Grade(c.creep, c.feel); got != c.want {
			t.Errorf("%s: %v is graded %+v, want %+v", c.because, c.creep, got, c.want)
		}
	}
}

func TestMonthsAreThoseOfTheCalendar(t *testing.T) {
	for _, c := range []struct {
		from, to string
		want     float64
	}{
		{"2024-01-15", "2024-04-15", 3},
		{"2024-01-15", "2024-04-30", 3.5}, // 15 of the 30 days from 15 April
		{"2024-01-31", "2024-02-29", 1},   // a leap year's February ends the month
		{"2023-01-31", "2023-02-28", 1},
		{"2023-11-10", "2026-11-10", 36},
		{"2024-04-15", "2024-01-15", -3},
		{"2024-03-01", "2024-03-01", 0},
		{"2023-02-14", "2023-02-28", 0.5},
	} {
		near(t, "from "+c.from+" to "+c.to, followup.Months(day(t, c.from), day(t, c.to)), c.want, 1e-12)
	}
}

func TestADayIsReadAsItIsWrittenAndNothingElse(t *testing.T) {
	if d := day(t, "2024-02-29"); d != (followup.Day{Year: 2024, Month: time.February, Day: 29}) || d.String() != "2024-02-29" {
		t.Errorf("2024-02-29 is read as %v", d)
	}
	for _, s := range []string{"", "2023-02-29", "1.3.2024", "2024-3-1"} {
		if d, err := followup.ParseDay(s); err == nil {
			t.Errorf("%q is read as the day %v", s, d)
		}
	}
}

func sitting(t *testing.T, photograph int64, on string, index plane.Ratio) followup.Sitting {
	return followup.Sitting{
		Photograph: photograph, Day: day(t, on), Index: ratio{Value: index, U95: 0.02},
		Method: scale.ByRuler, View: hand.Dorsal, Observer: "A",
	}
}

func TestASeriesMeasuresCreepFromTheFirstSittingAfterTheRelease(t *testing.T) {
	before := sitting(t, 1, "2023-01-10", 0.95)
	before.Before = true
	again := sitting(t, 4, "2026-01-20", 0.60)
	again.Method, again.Observer = scale.ByCard, "B"
	s := followup.Follow(followup.History{
		Operated: day(t, "2023-01-20"),
		Sittings: []followup.Sitting{again, sitting(t, 3, "2024-01-20", 0.51), before, sitting(t, 2, "2023-01-20", 0.50)},
	})
	if s.Baseline != 1 || len(s.Points) != 4 {
		t.Fatalf("the baseline is point %d of %d", s.Baseline, len(s.Points))
	}
	if s.Points[0].Creep != nil || s.Points[1].Creep != nil {
		t.Error("creep is told before the release, or at the baseline itself")
	}
	near(t, "months of the last", s.Points[3].Months, 36, 1e-12)
	near(t, "creep of the last", float64(s.Points[3].Creep.Value), 0.2, 1e-12)
	if d := s.Points[3].Differs; len(d) != 2 || d[0] != followup.OtherScale || d[1] != followup.OtherObserver {
		t.Errorf("scale and observer differ, said is %v", d)
	}
	if len(s.Points[2].Differs) != 0 {
		t.Errorf("nothing differs, said is %v", s.Points[2].Differs)
	}
	if last, ok := s.Latest(); !ok || last.Photograph != 4 {
		t.Errorf("the latest creep is that of photograph %d", last.Photograph)
	}
}

func TestOfSeveralReadingsOnTheLastDayTheOneLikeTheBaselineIsTheLatest(t *testing.T) {
	alike, other := sitting(t, 2, "2024-06-01", 0.6), sitting(t, 3, "2024-06-01", 0.7)
	other.Observer = "B"
	s := followup.Follow(followup.History{Sittings: []followup.Sitting{sitting(t, 1, "2023-06-01", 0.5), alike, other}})
	if last, ok := s.Latest(); !ok || last.Photograph != 2 {
		t.Errorf("the latest is photograph %d", last.Photograph)
	}
}

func TestNoCreepIsToldAcrossViews(t *testing.T) {
	palm := sitting(t, 2, "2024-06-01", 0.3)
	palm.View = hand.Palmar
	s := followup.Follow(followup.History{Sittings: []followup.Sitting{sitting(t, 1, "2023-06-01", 0.5), palm}})
	if p := s.Points[1]; p.Creep != nil || len(p.Differs) != 1 || p.Differs[0] != followup.OtherView {
		t.Errorf("the palmar index is held against the dorsal one: %+v", p)
	}
	if s.Since != followup.SinceFirstSitting {
		t.Error("without a day of operation months do not count from the first sitting")
	}
}

func TestAChosenBaselineIsUsed(t *testing.T) {
	s := followup.Follow(followup.History{Baseline: 2, Sittings: []followup.Sitting{
		sitting(t, 1, "2023-06-01", 0.5), sitting(t, 2, "2023-09-01", 0.6), sitting(t, 3, "2024-06-01", 0.6),
	}})
	near(t, "creep", float64(s.Points[2].Creep.Value), 0, 1e-12)
}

func TestAReadingThatIsNoNumberIsLeftOut(t *testing.T) {
	s := followup.Follow(followup.History{Sittings: []followup.Sitting{
		sitting(t, 1, "2023-06-01", plane.Ratio(math.NaN())), {Index: ratio{Value: 0.5}}, sitting(t, 2, "2023-09-01", 0.6),
	}})
	if len(s.Points) != 1 || s.Points[0].Photograph != 2 {
		t.Errorf("the series has %d points", len(s.Points))
	}
	if empty := followup.Follow(followup.History{}); len(empty.Points) != 0 || empty.Baseline != -1 {
		t.Errorf("nothing gives %+v", empty)
	}
}

// Worked by hand: 0.50 ± 0.02 and 0.53 ± 0.04 weigh 4 to 1: 0.506 ± 0.02/sqrt(1.25).
// They lie 0.03 apart, chi square is 4 (0.006² / 0.02² + 0.024² / 0.04²) = 1.8,
// so the interval is widened by sqrt(1.8).
func TestTheOtherHandsReadingsArePooledByTheirUncertainty(t *testing.T) {
	p := followup.Pooled([]ratio{{Value: 0.50, U95: 0.02}, {Value: 0.53, U95: 0.04}})
	near(t, "mean", float64(p.Value), 0.506, 1e-12)
	near(t, "uncertainty", float64(p.U95), 0.02/math.Sqrt(1.25)*math.Sqrt(1.8), 1e-12)
	agreeing := followup.Pooled([]ratio{{Value: 0.50, U95: 0.02}, {Value: 0.50, U95: 0.02}})
	near(t, "uncertainty of two that agree", float64(agreeing.U95), 0.02/math.Sqrt2, 1e-12)
	exact := followup.Pooled([]ratio{{Value: 0.5}, {Value: 0.52, U95: 0.02}})
	near(t, "mean with one of no uncertainty", float64(exact.Value), 0.51, 1e-12)
	near(t, "its uncertainty", float64(exact.U95), 0.02, 1e-12)
}

func TestTheBandHoldsOnePointForEveryDayInTheBaselinesView(t *testing.T) {
	palm := sitting(t, 9, "2023-06-01", 0.2)
	palm.View = hand.Palmar
	s := followup.Follow(followup.History{
		Sittings: []followup.Sitting{sitting(t, 1, "2023-06-01", 0.5)},
		Other:    []followup.Sitting{sitting(t, 6, "2024-06-01", 0.49), sitting(t, 7, "2023-06-01", 0.48), sitting(t, 8, "2023-06-01", 0.50), palm},
	})
	if len(s.Band) != 2 || s.Band[0].Readings != 2 || s.Band[1].Readings != 1 {
		t.Fatalf("the band is %+v", s.Band)
	}
	near(t, "first", float64(s.Band[0].Index.Value), 0.49, 1e-12)
	near(t, "months of the second", s.Band[1].Months, 12, 1e-12)
}
