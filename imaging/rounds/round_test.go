package rounds

import (
	"context"
	"math/rand/v2"
	"testing"
	"time"

	"ogive/geometry/norms"
	"ogive/geometry/plane"
	"ogive/imaging/marksfile"
	"ogive/imaging/measure"
)

var noon = time.Date(2026, 3, 1, 12, 0, 0, 0, time.UTC)

func defaults(t testing.TB) measure.Settings {
	t.Helper()
	s, err := measure.Defaults()
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func begin(t testing.TB, s Setup) *Round {
	t.Helper()
	r, err := Begin(t.TempDir(), "AB", s, defaults(t).Norms, noon)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// unpainted is the picture of that number with its truth, and nothing to see.
func unpainted(t testing.TB, r *Round, number int) *Picture {
	t.Helper()
	truth, err := r.drawn[number].Truth()
	if err != nil {
		t.Fatal(err)
	}
	p := &Picture{Number: number, Truth: ofPhantom(truth, r.Limits), Web: r.Setup.wants()[number].web, Photograph: blank}
	p.ask(r.Setup, number)
	return p
}

// rightAnswer answers everything rightly, with the crown moved by so many
// millimetres along the axis from the middle of the band.
func rightAnswer(p *Picture, l Limits, at plane.Ratio, distal plane.Millimetre) Answer {
	a := Answer{Choices: map[Asked]string{}}
	web, _ := p.Truth.Web(p.Web)
	for _, q := range p.Questions {
		switch q.Of {
		case Crown:
			f, _ := p.Truth.frame(p.Web)
			at := p.Truth.Plane.Pixel(f.Middle(at).Add(f.Axis().Scale(float64(distal))))
			a.Crown = &at
		case Shape:
			a.Choices[Shape] = web.Shape.String()
		default:
			a.Choices[q.Of] = web.verdicts[q.Of].Finding
		}
	}
	return a
}

func TestAPerfectEyeScoresFullMarksAndIsToldNoBias(t *testing.T) {
	r := begin(t, Setup{Kind: ByEye, Count: 12, Seed: 5})
	for i := range 12 {
		p := unpainted(t, r, r.Order[i])
		f, err := r.Answer(p, rightAnswer(p, r.Limits, 0.56, 0), defaults(t), noon)
		if err != nil {
			t.Fatal(err)
		}
		if f.Result.Score() != 1 {
			t.Errorf("picture %d scores %v: %+v", i, f.Result.Score(), f.Lines)
		}
	}
	s := r.Summary()
	if s.Score.Value != 1 || s.Crowns.Distal.Told() || s.Crowns.Ulnar.Told() {
		t.Errorf("score %v, crowns %+v", s.Score, s.Crowns)
	}
}

func TestEveryFaultOfARoundOccursAndIsWhatThePictureTrulyShows(t *testing.T) {
	for _, d := range Difficulties {
		for seed := range uint64(6) {
			r := begin(t, Setup{Kind: ByEye, Count: 10, Seed: seed, Difficulty: d})
			seen := map[string]int{}
			for i, c := range r.drawn {
				p := unpainted(t, r, i)
				if truth, err := c.Truth(); err != nil || !inside(truth, c) {
					t.Errorf("%s, seed %d: picture %d can't be marked wholly: %v", d, seed, i, err)
				}
				web, _ := p.Truth.Web(p.Web)
				for of, v := range web.verdicts {
					if !v.Certain {
						t.Errorf("%s, seed %d: the truth of a phantom is in doubt: %+v", d, seed, v)
					}
					seen[string(of)+" "+v.Finding]++
				}
				if web.Shape != 0 {
					seen[web.Shape.String()]++
				}
			}
			for _, want := range []string{"place too deep", "place too shallow", "place " + norms.WithinLimits, "width too wide", "width too narrow",
				"width " + norms.WithinLimits, "slope too flat", "slope too steep", "slope " + norms.WithinLimits, "V", "round", "gothic", "U"} {
				if seen[want] == 0 {
					t.Errorf("%s, seed %d: none is %s: %v", d, seed, want, seen)
				}
			}
		}
	}
}

func TestBlindMarksWithinAPixelAreScoredNearlyRight(t *testing.T) {
	r := begin(t, Setup{Kind: Blind, Count: 3, Seed: 2, Difficulty: Clear})
	s, err := r.Supply(context.Background(), defaults(t), nil)
	if err != nil {
		t.Fatal(err)
	}
	defer s.Close()
	rng := rand.New(rand.NewPCG(1, 1))
	for !r.Done() {
		p, err := s.Next(context.Background())
		if err != nil {
			t.Fatal(err)
		}
		f, err := r.Answer(p, Answer{Marks: clicked(t, r, p, 0.7, rng)}, defaults(t), noon)
		if err != nil {
			t.Fatal(err)
		}
		for _, l := range f.Lines {
			t.Log(l.Right, l.Words)
		}
		t.Log(f.Look)
	}
	sum := r.Summary()
	if sum.Score.Value < 0.8 {
		t.Errorf("score %+v", sum.Score)
	}
	if _, err := s.Next(context.Background()); err != ErrNoMore {
		t.Errorf("after the last picture: %v", err)
	}
}

// clicked is what an observer marks who misses by sd pixels.
func clicked(t testing.TB, r *Round, p *Picture, sd plane.Pixel, rng *rand.Rand) *marksfile.File {
	t.Helper()
	truth, err := r.drawn[p.Number].Truth()
	if err != nil {
		t.Fatal(err)
	}
	marks, reference := truth.Marks(sd, rng)
	return &marksfile.File{Photograph: "phantom", Marks: marks, Reference: reference}
}
