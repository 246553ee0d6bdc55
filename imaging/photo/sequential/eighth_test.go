package sequential

import (
	"image"
	"math/rand/v2"
	"testing"
)

// blockMean is the mean of a block of one plane.
func blockMean(pix []uint8, stride, x, y int) int {
	sum := 0
	for j := range 8 {
		for i := range 8 {
			sum += int(pix[(8*y+j)*stride+8*x+i])
		}
	}
	return (sum + 32) / 64
}

func TestAnEighthIsTheMeanOfEachBlock(t *testing.T) {
	for _, size := range []image.Point{{640, 480}, {333, 211}, {9, 17}, {8, 8}, {1, 1}} {
		for _, quality := range []int{30, 75, 95, 100} {
			for name, img := range map[string]image.Image{"colour": scene(size.X, size.Y, 3), "grey": gray(scene(size.X, size.Y, 3))} {
				data := encoded(t, img, quality)
				whole, ok := Decode(data)
				small, also := Eighth(data)
				if !ok || !also || small.Bounds() != image.Rect(0, 0, (size.X+7)/8, (size.Y+7)/8) {
					t.Fatalf("%s %v: decoded %v, an eighth %v", name, size, ok, also)
				}
				planes := func(img image.Image) ([]uint8, int, []uint8, int) {
					if m, colour := img.(*image.YCbCr); colour {
						return m.Y, m.YStride, m.Cb, m.CStride
					}
					m := img.(*image.Gray)
					return m.Pix, m.Stride, nil, 0
				}
				y, ys, cb, cs := planes(whole)
				sy, sys, scb, scs := planes(small)
				for j := range size.Y / 8 {
					for i := range size.X / 8 {
						if want, got := blockMean(y, ys, i, j), int(sy[j*sys+i]); want-got > 2 || got-want > 2 {
							t.Fatalf("%s %v at quality %d: block (%d, %d) is %d, its mean %d", name, size, quality, i, j, got, want)
						}
						if cb == nil || i >= size.X/16 || j >= size.Y/16 {
							continue
						}
						if want, got := blockMean(cb, cs, i, j), int(scb[j*scs+i]); want-got > 2 || got-want > 2 {
							t.Fatalf("%s %v at quality %d: colour block (%d, %d) is %d, its mean %d", name, size, quality, i, j, got, want)
						}
					}
				}
			}
		}
	}
}

func TestDamageEndsAnEighth(t *testing.T) {
	sound := encoded(t, scene(200, 150, 8), 90)
	r := rand.New(rand.NewPCG(7, 8))
	said := 0
	for range 3000 {
		data := append([]byte(nil), sound...)
		for range 1 + r.IntN(4) {
			data[r.IntN(len(data))] = byte(r.Uint32())
		}
		if _, ok := Eighth(data[:len(data)-r.IntN(2)*r.IntN(len(data))]); !ok {
			said++
		}
	}
	if said < 500 {
		t.Errorf("only %d of 3000 damaged files were noticed", said)
	}
}
