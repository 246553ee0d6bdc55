package skincolour

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"ogive/assets"
	"ogive/geometry/norms"
	"ogive/geometry/plane"
)

func sample(p Place, photograph string, l, a, b float64) Sample {
	return Sample{Place: p, Colour: Lab{l, a, b}, Spread: Lab{0.5, 0.4, 0.4},
		Balance: Balance{Photograph: photograph, Neutral: true, Channels: 0.01, Level: 0.02}}
}

// Chardon A, Cretois I, Hourseau C. Int J Cosmet Sci 1991;13:191-208 (from
// memory); the classes below brown from Del Bino S (from memory).
func TestTheAngleTellsTheTone(t *testing.T) {
	for _, c := range []struct {
		degrees float64
		want    Tone
	}{{70, VeryLight}, {55.1, VeryLight}, {55, LightTone}, {41.1, LightTone}, {41, Intermediate}, {28, Tan}, {10, Brown}, {-29, Brown}, {-30.1, Dark}, {-80, Dark}} {
		if got := ToneOf(plane.Degrees(c.degrees)); got != c.want {
			t.Errorf("%g degrees is %v, want %v", c.degrees, got, c.want)
		}
	}
	if got := (Lab{L: 65, B: 15}).ITA().Degrees(); math.Abs(got-45) > 1e-9 {
		t.Errorf("L 65, b 15 has an angle of %g degrees, want 45", got)
	}
	if got := (Lab{L: 50 - 15*math.Sqrt(3), B: 15}).ITA().Degrees(); math.Abs(got+60) > 1e-9 {
		t.Errorf("dark skin has an angle of %g degrees, want -60", got)
	}
}

func TestLightAndColourAreInverse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		unit := rapid.Float64Range(0, 1)
		in := Light{unit.Draw(t, "r"), unit.Draw(t, "g"), unit.Draw(t, "b")}
		out := in.Lab().Light()
		if math.Abs(in.R-out.R)+math.Abs(in.G-out.G)+math.Abs(in.B-out.B) > 1e-9 {
			t.Fatalf("%v came back as %v", in, out)
		}
	})
}

func TestAnErrorOfTheBalanceCancelsWithinAPhotograph(t *testing.T) {
	back, palm := sample(Back, "one", 60, 11, 18), sample(Palm, "one", 66, 13, 16)
	back.Balance.Level, palm.Balance.Level = 0.2, 0.2
	same := Compare(back, palm).CIEDE2000
	palm.Balance.Photograph = "another"
	apart := Compare(back, palm).CIEDE2000
	if same.Value != apart.Value || same.U95 > 0.5*apart.U95 {
		t.Errorf("in one photograph %v, in two %v: want the same value and less doubt in one", same, apart)
	}
}

func TestWithoutANeutralPatchTheDoubtIsLarge(t *testing.T) {
	back, palm := sample(Back, "one", 60, 11, 18), sample(Palm, "two", 66, 13, 16)
	balanced := Compare(back, palm)
	back.Balance, palm.Balance = Unbalanced("one"), Unbalanced("two")
	loose := Compare(back, palm)
	if !balanced.Neutral() || loose.Neutral() || loose.CIEDE2000.U95 < 2*balanced.CIEDE2000.U95 {
		t.Errorf("balanced ± %.1f, unbalanced ± %.1f", balanced.CIEDE2000.U95, loose.CIEDE2000.U95)
	}
}

// 95 of 100 true differences have to lie within the interval, also where the
// two colours are nearly the same and the difference can't be negative.
func TestTheIntervalHoldsTheTruth(t *testing.T) {
	for _, distance := range []float64{0, 1, 6} {
		const n = 150
		held := 0
		for _, d := range draws()[:n] {
			truth, other := sample(Back, "one", 60, 11, 18), sample(Palm, "two", 60+distance, 11, 18)
			want := CIEDE2000(truth.Colour, other.Colour)
			truth.Colour = d.of(truth, truth.Colour.Light(), first, d.balance[first])
			other.Colour = d.of(other, other.Colour.Light(), second, d.balance[second])
			if Compare(truth, other).CIEDE2000.Holds(want) {
				held++
			}
		}
		if part := float64(held) / n; part < 0.92 {
			t.Errorf("at a distance of %g the interval holds the truth in %.0f %% of cases", distance, 100*part)
		}
	}
}

func limits(t *testing.T) Limits {
	t.Helper()
	table, err := norms.Parse(assets.NormalValues)
	if err != nil {
		t.Fatal(err)
	}
	l, err := LimitsOf(table)
	if err != nil {
		t.Fatal(err)
	}
	return l
}

// Leow MEL et al. Prosthet Orthot Int 2006;30: seen from 0.8 and accepted to
// 1.8 on fair skin, 1.3 and 2.6 on dark skin.
func TestLimitsComeFromTheTableAndFollowTheSkin(t *testing.T) {
	l := limits(t)
	for _, c := range []struct {
		claim         string
		lightness, by float64
		finding       string
		limit, u95    float64
		certain       bool
	}{
		{"0.5 is not seen on fair skin", 68, 0.5, NotSeen, 0.8, 0.2, true},
		{"1 is seen on fair skin", 68, 1, Accepted, 0.8, 0.1, true},
		{"1 is not seen on dark skin", 40, 1, NotSeen, 1.3, 0.2, true},
		{"2.2 is not accepted on fair skin", 68, 2.2, NotAccepted, 1.8, 0.3, true},
		{"2.2 is accepted on dark skin", 40, 2.2, Accepted, 2.6, 0.3, true},
		{"3 within 1 leaves doubt", 40, 3, NotAccepted, 2.6, 1, false},
	} {
		a, b := sample(Graft, "one", c.lightness, 10, 16), sample(Neighbour, "one", c.lightness+c.by, 10, 16)
		compared := Compare(a, b)
		compared.CIELAB.U95 = c.u95
		v := l.Judge(compared)
		if v.Finding != c.finding || v.Limit != c.limit || v.Certain != c.certain {
			t.Errorf("%s: %+v", c.claim, v)
		}
	}
}

func TestATableWithoutTheLimitsIsRefused(t *testing.T) {
	if _, err := LimitsOf(norms.Table{}); err == nil {
		t.Error("an empty table gives limits")
	}
	if _, err := LimitsOf(norms.Table{Rows: []norms.Row{{ID: LimitsRow}}}); err == nil {
		t.Error("a row without numbers gives limits")
	}
}

func TestTheColoursSpeakForAFlap(t *testing.T) {
	for _, c := range []struct {
		claim      string
		back, palm Sample
		favours    Flap
		certain    bool
	}{
		{"fair and close favours palmar", sample(Back, "one", 74, 11, 13), sample(Palm, "one", 75, 12, 13), PalmarFlap, true},
		{"a clear difference favours dorsal", sample(Back, "one", 42, 12, 17), sample(Palm, "one", 58, 13, 18), DorsalFlap, true},
		{"dark and close favours neither", sample(Back, "one", 42, 12, 17), sample(Palm, "one", 43, 12, 17), NoFlap, true},
		{"near the limit leaves doubt", sample(Back, "one", 68, 11, 16), sample(Palm, "one", 74, 12, 15), PalmarFlap, false},
	} {
		r := Reasoning(c.back, c.palm)
		if r.Favours != c.favours || r.Certain != c.certain || r.Because == "" {
			t.Errorf("%s: %v, certain %v at %v", c.claim, r.Favours, r.Certain, r.Difference)
		}
	}
}

func TestEveryPlaceIsFoundByItsKey(t *testing.T) {
	for _, p := range Places {
		if got, ok := PlaceOf(p.Key()); !ok || got != p || p.String() == "unknown place" {
			t.Errorf("%q is %v", p.Key(), got)
		}
	}
	if _, ok := PlaceOf(""); ok || Place(0).Key() != "" {
		t.Error("no place has a key")
	}
}

func BenchmarkCompare(b *testing.B) {
	back, palm := sample(Back, "one", 60, 11, 18), sample(Palm, "two", 66, 13, 16)
	for b.Loop() {
		Compare(back, palm)
	}
}
