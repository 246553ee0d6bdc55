package trace

import (
	"image"
	"image/color"
	"math/rand/v2"
	"testing"

	"ogive/geometry/plane"
	"ogive/imaging/photo"
)

// BenchmarkWeb times the tracing of one web on one core, on photographs as a
// JPEG decoder leaves them.
func BenchmarkWeb(b *testing.B) {
	for _, c := range []struct {
		name string
		size int
		gap  float64
	}{{"2MP", 1400, 130}, {"24MP", 4900, 500}} {
		p, seeds, _ := largeScene(c.size, c.gap)
		b.Run(c.name, func(b *testing.B) {
			for b.Loop() {
				if _, err := Web(p, seeds); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func TestHugePhotographIsTracedToAThirdOfAPixel(t *testing.T) {
	p, seeds, truth := largeScene(4900, 500)
	rng := rand.New(rand.NewPCG(3, 3))
	for i := range seeds {
		seeds[i] = seeds[i].Add(vector{X: plane.Pixel(10 * rng.NormFloat64()), Y: plane.Pixel(10 * rng.NormFloat64())})
	}
	b, err := Web(p, seeds)
	if err != nil {
		t.Fatal(err)
	}
	var off []float64
	for _, q := range b.Points {
		off = append(off, distanceTo(truth, q, 8))
	}
	if median(off) > 0.33 || quantile(off, 0.95) > 1 {
		t.Errorf("median off %.2f, 95 per cent within %.2f px", median(off), quantile(off, 0.95))
	}
}

// largeScene is a U on a square photograph of so many pixels a side, with four
// pixels to one chroma sample, and its border.
func largeScene(size int, gap float64) (*photo.Photograph, [3]point, []point) {
	s := scene{radius: 0.3 * gap, flat: 0.4 * gap, flare: 5, meet: 90, finger: 1.3 * gap, skin: skins["tan"], drape: plain(drapes["green"])}
	s.shaft = 1.2 * gap
	img := image.NewYCbCr(image.Rect(0, 0, size, size), image.YCbCrSubsampleRatio420)
	rng := rand.New(rand.NewPCG(1, 1))
	mid := float64(size) / 2
	at := func(x, y float64) point { return plane.Pt(plane.Pixel(mid+x), plane.Pixel(mid+gap-y)) }
	code := func(c colour) (y, cb, cr uint8) { return color.RGBToYCbCr(encode(c[0]), encode(c[1]), encode(c[2])) }
	sy, sb, sr := code(s.skin)
	dy, db, dr := code(drapes["green"])
	for j := range size {
		for i := range size {
			fx, fy := float64(i)+0.5-mid, mid+gap-float64(j)-0.5
			y, cb, cr := sy, sb, sr
			if half := s.halfWidth(fy); fy > 0 && (fx < half && fx > -half || fx > half+s.finger || fx < -half-s.finger) {
				y, cb, cr = dy, db, dr
			}
			img.Y[img.YOffset(i, j)] = y + uint8(rng.IntN(7)) - 3
			img.Cb[img.COffset(i, j)], img.Cr[img.COffset(i, j)] = cb, cr
		}
	}
	y := s.rise() + 0.9*s.shaft
	var border []point
	for _, q := range s.outline() {
		border = append(border, at(q[0], q[1]))
	}
	return photo.From(img), [3]point{at(s.halfWidth(y), y), at(0, 0), at(-s.halfWidth(y), y)}, border
}
