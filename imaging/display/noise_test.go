package display

import (
	"image"
	"math/rand/v2"
)

func noiseRGBA(size image.Point) *image.RGBA {
	m := image.NewRGBA(image.Rectangle{Max: size})
	r := rand.New(rand.NewPCG(3, 4))
	for i := range m.Pix {
		m.Pix[i] = uint8(r.Uint32())
		if i%4 == 3 {
			m.Pix[i] = 0xff
		}
	}
	return m
}

func noiseYCbCr(size image.Point) *image.YCbCr {
	m := image.NewYCbCr(image.Rectangle{Max: size}, image.YCbCrSubsampleRatio420)
	r := rand.New(rand.NewPCG(3, 4))
	for i := range m.Y {
		m.Y[i] = uint8(100 + r.Uint32()&31)
	}
	for i := range m.Cb {
		m.Cb[i], m.Cr[i] = uint8(118+r.Uint32()&15), uint8(130+r.Uint32()&15)
	}
	return m
}
