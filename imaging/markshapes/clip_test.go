package markshapes

import (
	"image"
	"math"
	"testing"

	"pgregory.net/rapid"
)

func TestALineIsCutToThePictureAndItsRim(t *testing.T) {
	p := NewPen(image.NewRGBA(image.Rect(0, 0, 300, 200)), 1, 1)
	rapid.Check(t, func(t *rapid.T) {
		var path []Spot
		for range rapid.IntRange(2, 6).Draw(t, "points") {
			path = append(path, Spot{rapid.Float64Range(-2000, 2000).Draw(t, "x"), rapid.Float64Range(-2000, 2000).Draw(t, "y")})
		}
		for _, run := range p.Seen(path) {
			for _, q := range run {
				if !(Box{0, 0, 300, 200}).Grown(rim + 1e-6).Holds(q) {
					t.Fatalf("%v of %v lies outside", q, path)
				}
			}
		}
		q := path[0].To(path[1], rapid.Float64Range(0, 1).Draw(t, "t"))
		if !(Box{0, 0, 300, 200}).Holds(q) {
			return
		}
		for _, run := range p.Seen(path) {
			if distanceFrom(q, run) < 1 {
				return
			}
		}
		t.Fatalf("%v, inside the picture, was cut away", q)
	})
}

// distanceFrom is how far q lies from the path, sampled at each tenth of a pixel.
func distanceFrom(q Spot, path []Spot) float64 {
	least := math.Inf(1)
	for i := 1; i < len(path); i++ {
		a, b := path[i-1], path[i]
		n := math.Ceil(10*b.Sub(a).Length()) + 1
		for k := 0.0; k <= n; k++ {
			least = min(least, a.To(b, k/n).Sub(q).Length())
		}
	}
	return least
}
