package trace

import (
	"testing"

	"ogive/geometry/plane"
)

func TestADraftLiesCloseToTheBorder(t *testing.T) {
	p, seeds, truth := largeScene(1400, 130)
	seeds[1] = seeds[1].Add(plane.Vec[plane.Pixel](2, -2))
	b, err := Draft(p, seeds)
	if err != nil {
		t.Fatal(err)
	}
	var off []float64
	for _, q := range b.Points {
		off = append(off, distanceTo(truth, q, 8))
	}
	if median(off) > 0.5 || quantile(off, 0.95) > 1.5 {
		t.Errorf("median off %.2f, 95 per cent within %.2f px", median(off), quantile(off, 0.95))
	}
}
