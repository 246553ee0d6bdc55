package annotate

import (
	"image/color"
	"math"
	"testing"
)

// The simulations of full colour deficiency in linear light: Machado GM,
// Oliveira MM, Fernandes LAF. IEEE Trans Vis Comput Graph 2009;15:1291-8,
// severity 1.0.
var (
	protanopia = [9]float64{
		0.152286, 1.052583, -0.204868,
		0.114503, 0.786281, 0.099216,
		-0.003882, -0.048116, 1.051998,
	}
	deuteranopia = [9]float64{
		0.367322, 0.860646, -0.227968,
		0.280085, 0.672501, 0.047413,
		-0.011820, 0.042940, 0.968881,
	}
	fullVision = [9]float64{1, 0, 0, 0, 1, 0, 0, 0, 1}
)

func TestKindsAreToldApartByEveryEye(t *testing.T) {
	const apart = 15 // CIELAB 1976; 2.3 is just noticeable (Mahy 1994, from memory)
	for name, sight := range map[string][9]float64{
		"full vision": fullVision, "protanopia": protanopia, "deuteranopia": deuteranopia,
	} {
		least := math.Inf(1)
		for a := kindReference; a <= kindJunction; a++ {
			for b := a + 1; b <= kindJunction; b++ {
				d := labDistance(seen(cores[a], sight), seen(cores[b], sight))
				least = math.Min(least, d)
				if d < apart {
					t.Errorf("with %s kinds %d and %d are %.1f apart, want %d", name, a, b, d, apart)
				}
			}
		}
		t.Logf("with %s the nearest two kinds are %.1f apart", name, least)
	}
}

func TestSimulationLeavesGreyGrey(t *testing.T) {
	for name, sight := range map[string][9]float64{"protanopia": protanopia, "deuteranopia": deuteranopia} {
		grey := color.RGBA{0x80, 0x80, 0x80, 0xff}
		if d := labDistance(seen(grey, sight), linear(grey)); d > 0.5 {
			t.Errorf("with %s grey is seen %.2f away from grey", name, d)
		}
	}
}

// Contrast is that of WCAG 2.1: (lighter + 0.05) / (darker + 0.05) of relative
// luminance; graphics need 3:1 (success criterion 1.4.11), text 4.5:1 (1.4.3).
func TestMarksAreSeenOnEverySkinAndDrape(t *testing.T) {
	for k, core := range cores {
		for level := range 256 {
			ground := color.RGBA{uint8(level), uint8(level), uint8(level), 0xff}
			if seen := math.Max(contrast(core, ground), contrast(ink, ground)); seen < 3 {
				t.Errorf("kind %d is lost on a ground as light as grey %d: contrast %.2f", k, level, seen)
			}
		}
		if c := contrast(core, ink); c < 7 {
			t.Errorf("core of kind %d in its casing has contrast %.1f", k, c)
		}
	}
	for name, skin := range map[string]color.RGBA{"fair": fair, "dark": dark} {
		if c := contrast(ink, skin); name == "fair" && c < 7 {
			t.Errorf("casing on %s skin has contrast %.1f", name, c)
		}
		for k, core := range cores {
			if c := contrast(core, skin); name == "dark" && c < 4.5 {
				t.Errorf("core of kind %d on %s skin has contrast %.1f", k, name, c)
			}
		}
	}
}

func TestWordsAreLegibleOnPaper(t *testing.T) {
	for _, c := range []color.RGBA{ink, faded} {
		if got := contrast(c, paper); got < 4.5 {
			t.Errorf("words in %v on paper have contrast %.1f", c, got)
		}
	}
}

func contrast(a, b color.RGBA) float64 {
	la, lb := luminance(a), luminance(b)
	return (math.Max(la, lb) + 0.05) / (math.Min(la, lb) + 0.05)
}

func luminance(c color.RGBA) float64 {
	l := linear(c)
	return 0.2126*l[0] + 0.7152*l[1] + 0.0722*l[2]
}

// linear undoes the transfer curve of sRGB (IEC 61966-2-1).
func linear(c color.RGBA) [3]float64 {
	var out [3]float64
	for i, v := range []uint8{c.R, c.G, c.B} {
		s := float64(v) / 255
		if s <= 0.04045 {
			out[i] = s / 12.92
			continue
		}
		out[i] = math.Pow((s+0.055)/1.055, 2.4)
	}
	return out
}

func seen(c color.RGBA, sight [9]float64) [3]float64 {
	l := linear(c)
	var out [3]float64
	for i := range out {
		for j := range l {
			out[i] += sight[3*i+j] * l[j]
		}
		out[i] = clamp(out[i], 0, 1)
	}
	return out
}

// labDistance is the CIELAB 1976 distance of two colours in linear sRGB, D65.
func labDistance(a, b [3]float64) float64 {
	p, q := lab(a), lab(b)
	return math.Sqrt((p[0]-q[0])*(p[0]-q[0]) + (p[1]-q[1])*(p[1]-q[1]) + (p[2]-q[2])*(p[2]-q[2]))
}

func lab(l [3]float64) [3]float64 {
	f := func(t float64) float64 {
		if t > 216.0/24389 {
			return math.Cbrt(t)
		}
		return (24389.0/27*t + 16) / 116
	}
	x := f((0.4124564*l[0] + 0.3575761*l[1] + 0.1804375*l[2]) / 0.95047)
	y := f(0.2126729*l[0] + 0.7151522*l[1] + 0.0721750*l[2])
	z := f((0.0193339*l[0] + 0.1191920*l[1] + 0.9503041*l[2]) / 1.08883)
	return [3]float64{116*y - 16, 500 * (x - y), 200 * (y - z)}
}
