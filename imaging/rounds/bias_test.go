package rounds

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"ogive/geometry/plane"
	"ogive/imaging/measure"
)

// judgedBy is a finished round of an observer who puts every crown the given
// distance along the axis from the lower limit, and answers all else rightly.
func judgedBy(t *testing.T, seed uint64, distal func() plane.Millimetre) *Round {
	t.Helper()
	r := begin(t, Setup{Kind: ByEye, Count: 10, Seed: seed})
	answerAll(t, r, defaults(t), func(p *Picture) Answer {
		return rightAnswer(p, r.Limits, plane.Ratio(r.Limits.Index[0]), distal())
	})
	return r
}

func answerAll(t *testing.T, r *Round, settings measure.Settings, answer func(*Picture) Answer) {
	t.Helper()
	for !r.Done() {
		p := unpainted(t, r, r.Order[len(r.Results)])
		if _, err := r.Answer(p, answer(p), settings, noon); err != nil {
			t.Fatal(err)
		}
	}
}

func TestOneWhoPlacesCrownsTooProximalIsToldByHowMuchAndWhichWayToCorrect(t *testing.T) {
	rng := rand.New(rand.NewPCG(4, 4))
	r := judgedBy(t, 11, func() plane.Millimetre { return -1.6 + plane.Millimetre(0.4*rng.NormFloat64()) })
	s := r.Summary()
	b := s.Crowns.Distal
	if !b.Told() || math.Abs(b.Value+1.6) > 0.5 || b.Low > -1.6 || b.High < -1.6 {
		t.Errorf("bias %+v, want about -1.6", b)
	}
	if s.Crowns.Ulnar.Told() {
		t.Errorf("a sideways bias is told where there is none: %+v", s.Crowns.Ulnar)
	}
	all := strings.Join(s.Sentences, " ")
	for _, want := range []string{"Correct the eye distally: your crowns were too proximal on 7 of 7 pictures, too distal on none; the median is 1.", "Sideways there is nothing to correct"} {
		if !strings.Contains(all, want) {
			t.Errorf("%q is not said: %s", want, all)
		}
	}
}

func TestOneWhoMissesBothWaysIsToldNoBias(t *testing.T) {
	r := begin(t, Setup{Kind: ByEye, Count: 10, Seed: 12, Faults: []Fault{TooDeep}})
	sign := 1
	answerAll(t, r, defaults(t), func(p *Picture) Answer {
		if sign = -sign; sign < 0 {
			return rightAnswer(p, r.Limits, plane.Ratio(r.Limits.Index[0]), -3)
		}
		return rightAnswer(p, r.Limits, plane.Ratio(r.Limits.Index[1]), 3)
	})
	s := r.Summary()
	if s.Crowns.Distal.Told() || math.Abs(s.Crowns.Spread-3) > 0.5 {
		t.Errorf("%+v", s.Crowns)
	}
	if got, want := s.Sentences[0], "Along the axis your crowns go no one way: too distal on 5 of 10 pictures, too proximal on 5."; got != want {
		t.Errorf("said: %s", got)
	}
}

// Anywhere between the limits a crown is right: the sources give a band, no point.
func TestACrownAnywhereInTheBandIsRightAndOneBesideTheMiddleIsNot(t *testing.T) {
	r := begin(t, Setup{Kind: ByEye, Count: 4, Seed: 3, Faults: []Fault{TooDeep}})
	p := unpainted(t, r, 0)
	f, ok := p.Truth.frame(p.Web)
	if !ok {
		t.Fatal("no frame")
	}
	q := Question{Of: Crown, Web: p.Web}
	for _, c := range []struct {
		index  plane.Ratio
		aside  float64 // parts of the phalanx
		given  string
		distal float64 // parts of the phalanx, about
	}{
		{0.46, 0, within, 0}, {0.66, 0, within, 0}, {0.55, 0.09, within, 0}, {0.55, -0.11, "aside", 0},
		{0.35, 0, "too deep", -0.1}, {0.77, 0.2, "too shallow", 0.1},
	} {
		at := p.Truth.Plane.Pixel(f.Middle(c.index).Add(f.Across().Scale(c.aside * float64(f.Phalanx()))))
		j := judgeCrown(p.Truth, q, &at, r.Limits)
		if j.Given != c.given || j.Right != (c.given == within) || math.Abs(float64(j.Off.Distal/f.Phalanx())-c.distal) > 0.02 ||
			math.Abs(float64(j.Off.Ulnar/f.Phalanx())-c.aside) > 0.005 {
			t.Errorf("at index %v, %v aside: %+v, off by %+v", c.index, c.aside, j, *j.Off)
		}
	}
}

func TestWhatIsNotAnsweredIsWrong(t *testing.T) {
	r := begin(t, Setup{Kind: ByEye, Count: 3, Seed: 8, Faults: []Fault{TooDeep, Shapes}})
	p := unpainted(t, r, 0)
	f, err := r.Answer(p, Answer{}, defaults(t), noon)
	if err != nil {
		t.Fatal(err)
	}
	if f.Result.Score() != 0 || f.Look == "" {
		t.Errorf("score %v, %q", f.Result.Score(), f.Look)
	}
	if _, err := r.Answer(p, Answer{}, defaults(t), noon); err == nil {
		t.Error("the same picture is answered twice")
	}
}

func TestConfusionsCountWhatWasTakenForWhat(t *testing.T) {
	r := begin(t, Setup{Kind: ByEye, Count: 12, Seed: 9, Faults: []Fault{TooDeep, TooShallow}})
	deep := 0
	answerAll(t, r, defaults(t), func(p *Picture) Answer {
		a := rightAnswer(p, r.Limits, 0.5, 0)
		if a.Choices[Place] == "too deep" {
			deep++
			a.Choices[Place] = within
		}
		return a
	})
	s := r.Summary()
	if len(s.Confusions) != 1 || s.Confusions[0].Of != Place || s.Confusions[0].Counts[0][1] != deep || deep != 4 {
		t.Errorf("%d of 12 too deep, confusions %+v", deep, s.Confusions)
	}
	if below, above := s.Confusions[0].Leaning(); below != 0 || above != deep {
		t.Errorf("leaning %d, %d", below, above)
	}
	if right := s.By[0].Share.Right; right != 8 {
		t.Errorf("%d right, want 8", right)
	}
}

const within = "within limits"
