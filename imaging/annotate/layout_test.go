package annotate

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func TestCardsNeverOverlapEachOtherOrThePhotographAndStayInside(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, h := rapid.Float64Range(10, 5000).Draw(t, "w"), rapid.Float64Range(10, 5000).Draw(t, "h")
		gap := rapid.Float64Range(1, 50).Draw(t, "gap")
		var sizes []size
		var anchors []spot
		for range rapid.IntRange(1, 5).Draw(t, "cards") {
			sizes = append(sizes, size{rapid.Float64Range(20, 900).Draw(t, "cw"), rapid.Float64Range(20, 900).Draw(t, "ch")})
			anchors = append(anchors, xy(rapid.Float64Range(-w, 2*w).Draw(t, "x"), rapid.Float64Range(-h, 2*h).Draw(t, "y")))
		}
		along := side(rapid.IntRange(0, 3).Draw(t, "side"))
		m := layOut(w, h, along, sizes, anchors, gap)
		whole := boxOf(0, 0, w+m.left+m.right, h+m.top+m.bottom)
		photograph := boxAt(m.left, m.top, w, h)
		for i, c := range m.cards {
			if !c.Within(whole.Grown(1e-6)) {
				t.Fatalf("card %d at %v leaves the picture %v", i, c, whole)
			}
			if c.Meets(photograph.Grown(-1e-6)) {
				t.Fatalf("card %d at %v covers the photograph %v", i, c, photograph)
			}
			if math.Abs(c.Width()-sizes[i].w) > 1e-6 || math.Abs(c.Height()-sizes[i].h) > 1e-6 {
				t.Fatalf("card %d lost its size", i)
			}
			for j := range i {
				if c.Grown(gap/2 - 1e-6).Meets(m.cards[j].Grown(gap/2 - 1e-6)) {
					t.Fatalf("cards %d and %d stand closer than %v: %v, %v", i, j, gap, c, m.cards[j])
				}
				if d := anchors[i].X - anchors[j].X; along.row() && math.Abs(d) > 1e-6 && d*(c.Left-m.cards[j].Left) < 0 {
					t.Fatalf("cards %d and %d do not stand in the order of their webs", i, j)
				}
			}
		}
	})
}

func TestACardStandsOverItsWebWhereThereIsRoom(t *testing.T) {
	m := layOut(1000, 800, above, []size{{100, 60}, {100, 60}, {100, 60}}, []spot{xy(700, 400), xy(200, 400), xy(450, 400)}, 10)
	for i, want := range []float64{650, 150, 400} {
		if got := m.cards[i].Left; math.Abs(got-want) > 1e-9 {
			t.Errorf("card %d starts at %v, want %v", i, got, want)
		}
	}
}

func TestCrowdedCardsShareTheWay(t *testing.T) {
	// By hand: two intervals of 100 that both want their middle at 500, 10
	// apart, lie as far to either side: 395 to 495 and 505 to 605.
	got := spread([]float64{500, 500}, []float64{100, 100}, 10, 1000)
	if math.Abs(got[0]-395) > 1e-9 || math.Abs(got[1]-505) > 1e-9 {
		t.Errorf("they start at %v, want 395 and 505", got)
	}
}

func TestCardsStandWhereTheFingersPoint(t *testing.T) {
	for _, c := range []struct {
		v    spot
		want side
	}{{spot{}, above}, {xy(0.3, -0.9), above}, {xy(0.3, 0.9), below}, {xy(-0.9, 0.3), leftOf}, {xy(0.9, 0.3), rightOf}} {
		if got := sideTowards(c.v); got != c.want {
			t.Errorf("fingers towards %v: side %d, want %d", c.v, got, c.want)
		}
	}
}
