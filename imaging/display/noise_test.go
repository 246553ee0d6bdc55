package display

import (
	"image"
	"math/rand/v2"
)

func noiseRGBA(size image.Point) *image.RGBA {
	m := image.NewRGBA(image.Rectangle{Max: size})
	r := rand.New(rand.NewPCG(3, 4))
	for i := range m.Pix {
		switch {
		case i%4 == 3:
			m.Pix[i] = 0xff
		case i < 1<<20:
			m.Pix[i] = uint8(r.Uint32())
		default:
			m.Pix[i] = m.Pix[i-(1<<20-4)]
		}
	}
	return m
}

func noiseYCbCr(size image.Point) *image.YCbCr {
	m := image.NewYCbCr(image.Rectangle{Max: size}, image.YCbCrSubsampleRatio420)
	r := rand.New(rand.NewPCG(3, 4))
	const period = 1<<18 - 1
	for i := range m.Y {
		if i < period {
			m.Y[i] = uint8(100 + r.Uint32()&31)
			continue
		}
		m.Y[i] = m.Y[i-period]
	}
	for i := range m.Cb {
		if i < period {
			m.Cb[i], m.Cr[i] = uint8(118+r.Uint32()&15), uint8(130+r.Uint32()&15)
			continue
		}
		m.Cb[i], m.Cr[i] = m.Cb[i-period], m.Cr[i-period]
	}
	return m
}
