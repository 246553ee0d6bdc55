package rounds

import (
	"image"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
)

func seeded(seed uint64) *rand.Rand { return rand.New(rand.NewPCG(seed, seed)) }

// clicks is blind rounds of one who misses every landmark by sd pixels and by a
// bias of his own, a part of the phalanx, whose landmarks alone are scored: nothing need be painted.
func clicks(t *testing.T, pictures int, sd plane.Pixel, bias float64, wild bool) []*Round {
	t.Helper()
	r := begin(t, Setup{Kind: Blind, Count: pictures, Seed: 17, Faults: []Fault{TooDeep, TooShallow}})
	rng := seeded(5)
	for i := range pictures {
		p := unpainted(t, r, i)
		m := clicked(t, r, p, sd, rng).Marks
		for d, joints := range m.Joints {
			along, _ := p.Truth.along(d)
			f := p.Truth.Plane.Position(p.Truth.Joints[d][hand.PIP]).Distance(p.Truth.Plane.Position(p.Truth.Joints[d][hand.MCP]))
			for j, at := range joints {
				joints[j] = p.Truth.Plane.Pixel(p.Truth.Plane.Position(at).Add(along.Scale(bias * float64(f))))
			}
		}
		if wild && i == 0 {
			m.Joints[hand.Ring][hand.MCP], m.Joints[hand.Middle][hand.MCP] = m.Joints[hand.Middle][hand.MCP], m.Joints[hand.Ring][hand.MCP]
		}
		result := Result{Picture: i, At: noon, Exact: true, Longer: p.longer()}
		result.landmarks(p.Truth, m)
		if err := r.keep(result); err != nil {
			t.Fatal(err)
		}
	}
	return []*Round{r}
}

func TestAnObserversScatterIsFoundWhateverHisBiasAndOneWildClick(t *testing.T) {
	for _, c := range []struct {
		claim string
		sd    plane.Pixel
		bias  float64
		wild  bool
	}{{"steady", 1.5, 0, false}, {"biased", 1.5, 0.06, false}, {"two fingers mixed up once", 3, 0, true}} {
		got, ok := Repeatability(clicks(t, 10, c.sd, c.bias, c.wild), "AB")
		if !ok || got.Clicks != 10*19 || got.Rounds != 1 {
			t.Fatalf("%s: %+v, %v", c.claim, got, ok)
		}
		// 380 deviations tell a robust deviation to some 6 per cent (one sd).
		if math.Abs(float64(got.SD/c.sd)-1) > 0.2 {
			t.Errorf("%s: %.2f px, want about %v", c.claim, float64(got.SD), float64(c.sd))
		}
		if on := got.On(image.Pt(3000, 4000)); math.Abs(float64(on/got.SD)-4000.0/1200) > 1e-9 {
			t.Errorf("%s: on a large photograph %v of %v", c.claim, on, got.SD)
		}
		if s := got.Sentence(image.Pt(1200, 900)); !strings.Contains(s, "190 clicks of a blind round on phantoms") {
			t.Errorf("%s: %s", c.claim, s)
		}
	}
}

func TestFewClicksTellNoScatterNorDoThoseOfOthersOrOfRoundsByEye(t *testing.T) {
	few := clicks(t, 2, 1, 0, false)
	if got, ok := Repeatability(few, "AB"); ok || got.Clicks != 38 {
		t.Errorf("%+v, %v", got, ok)
	}
	many := clicks(t, 4, 1, 0, false)
	if _, ok := Repeatability(many, "CD"); ok {
		t.Error("the clicks of another count")
	}
	many[0].Setup.Kind = ByEye
	if _, ok := Repeatability(many, "AB"); ok {
		t.Error("a round by eye counts")
	}
}
