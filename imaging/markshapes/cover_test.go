package markshapes

import (
	"math"
	"testing"
)

func TestCoverWeighsABoxAsTheSumOfItsCells(t *testing.T) {
	c := NewCover(BoxOf(0, 0, 100, 50), 5)
	c.Add(XY(12, 12), 3)
	c.Add(XY(52, 42), 4)
	c.Add(XY(500, 500), 9)
	c.Sum()
	for _, w := range []struct {
		b    Box
		want float64
	}{{BoxOf(0, 0, 100, 50), 7}, {BoxOf(10, 10, 15, 15), 3}, {BoxOf(15, 10, 50, 40), 0}, {BoxOf(-50, -50, 15, 15), 3}} {
		if got := c.Under(w.b); math.Abs(got-w.want) > 1e-9 {
			t.Errorf("under %v lies %v, want %v", w.b, got, w.want)
		}
	}
	if got := c.Along(XY(2.5, 12), XY(97.5, 12), 0); got == 0 {
		t.Error("a line over a marked cell runs over nothing")
	}
}
