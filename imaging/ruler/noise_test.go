package ruler

import (
	"image"
	"image/color"
	"math/rand/v2"
	"testing"

	"ogive/geometry/plane"
	"ogive/imaging/photo"
)

// Cloth and skin hold no ticks, whatever their grain looks like.
func TestGrainGivesNoWarning(t *testing.T) {
	rng := rand.New(rand.NewPCG(4, 4))
	for range 12 {
		img := image.NewGray(image.Rect(0, 0, 600, 400))
		for j := range 400 {
			level := 90 + 60*rng.Float64()*float64(j%3)
			for i := range 600 {
				img.SetGray(i, j, color.Gray{Y: uint8(level + 40*rng.Float64())})
			}
		}
		corner := func() plane.PixelPoint {
			return plane.Pt(plane.Pixel(600*rng.Float64()), plane.Pixel(400*rng.Float64()))
		}
		from, to := corner(), corner()
		f, err := FindTicks(photo.From(img), from, to)
		if err != nil {
			continue
		}
		if w := Check(f, 50); w != "" {
			t.Errorf("from %v to %v: %s", from, to, w)
		}
	}
}
