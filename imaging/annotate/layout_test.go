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
			anchors = append(anchors, spot{rapid.Float64Range(-w, 2*w).Draw(t, "x"), rapid.Float64Range(-h, 2*h).Draw(t, "y")})
		}
		along := side(rapid.IntRange(0, 3).Draw(t, "side"))
		m := layOut(w, h, along, sizes, anchors, gap)
		whole := box{0, 0, w + m.left + m.right, h + m.top + m.bottom}
		photograph := boxAt(m.left, m.top, w, h)
		for i, c := range m.cards {
			if !c.within(whole.grown(1e-6)) {
				t.Fatalf("card %d at %v leaves the picture %v", i, c, whole)
			}
			if c.meets(photograph.grown(-1e-6)) {
				t.Fatalf("card %d at %v covers the photograph %v", i, c, photograph)
			}
			if math.Abs(c.width()-sizes[i].w) > 1e-6 || math.Abs(c.height()-sizes[i].h) > 1e-6 {
				t.Fatalf("card %d lost its size", i)
			}
			for j := range i {
				if c.grown(gap/2 - 1e-6).meets(m.cards[j].grown(gap/2 - 1e-6)) {
					t.Fatalf("cards %d and %d stand closer than %v: %v, %v", i, j, gap, c, m.cards[j])
				}
				if d := anchors[i].x - anchors[j].x; along.row() && math.Abs(d) > 1e-6 && d*(c.left-m.cards[j].left) < 0 {
					t.Fatalf("cards %d and %d do not stand in the order of their webs", i, j)
				}
			}
		}
	})
}

func TestACardStandsOverItsWebWhereThereIsRoom(t *testing.T) {
	m := layOut(1000, 800, above, []size{{100, 60}, {100, 60}, {100, 60}}, []spot{{700, 400}, {200, 400}, {450, 400}}, 10)
	for i, want := range []float64{650, 150, 400} {
		if got := m.cards[i].left; math.Abs(got-want) > 1e-9 {
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
	}{{spot{}, above}, {spot{0.3, -0.9}, above}, {spot{0.3, 0.9}, below}, {spot{-0.9, 0.3}, leftOf}, {spot{0.9, 0.3}, rightOf}} {
		if got := sideTowards(c.v); got != c.want {
			t.Errorf("fingers towards %v: side %d, want %d", c.v, got, c.want)
		}
	}
}

func TestCoverWeighsABoxAsTheSumOfItsCells(t *testing.T) {
	c := newCover(box{0, 0, 100, 50}, 5)
	c.add(spot{12, 12}, 3)
	c.add(spot{52, 42}, 4)
	c.add(spot{500, 500}, 9)
	c.sum()
	for _, w := range []struct {
		b    box
		want float64
	}{{box{0, 0, 100, 50}, 7}, {box{10, 10, 15, 15}, 3}, {box{15, 10, 50, 40}, 0}, {box{-50, -50, 15, 15}, 3}} {
		if got := c.under(w.b); math.Abs(got-w.want) > 1e-9 {
			t.Errorf("under %v lies %v, want %v", w.b, got, w.want)
		}
	}
	if got := c.along(spot{2.5, 12}, spot{97.5, 12}, 0); got == 0 {
		t.Error("a line over a marked cell runs over nothing")
	}
}
