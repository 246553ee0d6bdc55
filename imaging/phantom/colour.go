package phantom

import "math"

// midGrey is the linear light of the middle of the 8-bit scale.
const midGrey = 0.2140

// encodedTable holds the sRGB encoding of linear light in even steps.
var encodedTable = func() (t [8193]float64) {
	for i := range t {
		t[i] = srgb(float64(i) / 8192)
	}
	return t
}()

// srgb encodes linear light by IEC 61966-2-1.
func srgb(v float64) float64 {
	if v <= 0.0031308 {
		return 12.92 * v
	}
	return 1.055*math.Pow(v, 1/2.4) - 0.055
}

func encodedSlope(v float64) float64 { return (srgb(v+1e-4) - srgb(v-1e-4)) / 2e-4 }

// encoded is linear light as an 8-bit sRGB value. The table's first steps are
// too coarse for the steep start of the curve, so that part is computed.
func encoded(v float64) uint8 {
	switch {
	case v <= 0:
		return 0
	case v >= 1:
		return 255
	case v < 0.01:
		return uint8(math.Floor(255*srgb(v) + 0.5))
	}
	at := v * 8192
	i := int(at)
	f := at - float64(i)
	return uint8(math.Floor(255*(encodedTable[i]+f*(encodedTable[i+1]-encodedTable[i])) + 0.5))
}

// lab is the linear colour of CIELAB values under D65 (CIE 15; matrix of
// IEC 61966-2-1).
func lab(l, a, b float64) rgb {
	fy := (l + 16) / 116
	x := 0.95047 * labInverse(fy+a/500)
	y := labInverse(fy)
	z := 1.08883 * labInverse(fy-b/200)
	return rgb{
		math.Max(0, 3.2404542*x-1.5371385*y-0.4985314*z),
		math.Max(0, -0.9692660*x+1.8760108*y+0.0415560*z),
		math.Max(0, 0.0556434*x-0.2040259*y+1.0572252*z),
	}
}

func labInverse(f float64) float64 {
	if f > 6.0/29 {
		return f * f * f
	}
	return 3 * (6.0 / 29) * (6.0 / 29) * (f - 4.0/29)
}
