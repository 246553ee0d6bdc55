package phantom

import (
	"math/rand/v2"

	"ogive/geometry/arch"
	"ogive/geometry/hand"
	"ogive/geometry/plane"
)

// Random is a dorsal or palmar case drawn for that seed: any skin, drape, size,
// shape and index from too deep to crept, tilted by up to 12 degrees.
func Random(seed uint64) Case {
	rng := rand.New(rand.NewPCG(seed, 0x0617))
	c := randomScene(seed, rng)
	c.View = pick(rng, hand.Dorsal, hand.Dorsal, hand.Palmar)
	c.Webs = map[hand.Web]WebShape{}
	for _, w := range measured {
		c.Webs[w] = randomWeb(c, rng)
	}
	return c
}

// randomScene draws everything but the webs and the view.
func randomScene(seed uint64, rng *rand.Rand) Case {
	between := func(low, high float64) float64 { return low + (high-low)*rng.Float64() }
	c := Case{
		Seed:          seed,
		Side:          pick(rng, hand.Left, hand.Right),
		Size:          plane.Millimetre(between(14, 46)),
		Skin:          VeryFair + SkinTone(rng.IntN(int(VeryDark))),
		Drape:         TheatreGreen + Drape(rng.IntN(int(Checked))),
		Reference:     pick(rng, WhiteRuler, SteelRuler, PaperRuler, IDCard),
		Turn:          plane.Degrees(between(-10, 10)),
		Tilt:          plane.Degrees(between(0, 12)),
		TiltDirection: plane.Degrees(between(-180, 180)),
		BlurSD:        plane.Pixel(between(0.6, 1.5)),
		NoiseSD:       between(0.5, 3),
		JPEGQuality:   84 + rng.IntN(13),
		Light: Light{
			Azimuth: plane.Degrees(between(-180, 180)), Elevation: plane.Degrees(between(38, 65)),
			Shadow: between(0.15, 0.75), Softness: between(0.6, 2),
		},
	}
	c.Build = plane.Ratio(between(0.95, 1.05) + 0.15*(46-float64(c.Size))/32)
	c.Width = 1600 + 16*rng.IntN(51)
	c.Height = c.Width * 3 / 4
	if rng.IntN(5) == 0 {
		c.Width, c.Height = c.Height, c.Width
	}
	c.FocalPx = plane.Pixel(float64(max(c.Width, c.Height)) * between(1.3, 2.4))
	return c
}

func randomWeb(c Case, rng *rand.Rand) WebShape {
	between := func(low, high float64) float64 { return low + (high-low)*rng.Float64() }
	s := WebShape{Shape: arch.Shapes[rng.IntN(len(arch.Shapes))], Index: plane.Ratio(between(0.28, 0.78))}
	wide := between(0.17, 0.30)
	if rng.IntN(5) == 0 {
		wide = between(0.3, 0.4) // too wide
	}
	s.Span = c.Size * plane.Millimetre(wide)
	switch s.Shape {
	case arch.V:
		s.Span = 0
		s.Flare = plane.Degrees(between(5, 10))
	case arch.Gothic:
		s.Turn = plane.Degrees(between(42, 70))
	case arch.U:
		s.Flat = plane.Ratio(between(0.3, 0.6))
	}
	if c.View == hand.Palmar {
		s.Index = (s.Index - basalCrease) / (1 - basalCrease)
	}
	return s
}

func pick[T any](rng *rand.Rand, from ...T) T { return from[rng.IntN(len(from))] }

// RandomWebView is a case in the web view drawn for that seed.
func RandomWebView(seed uint64) Case {
	rng := rand.New(rand.NewPCG(seed, 0x5107e))
	c := randomScene(seed, rng)
	c.View = hand.WebView
	c.JunctionSlope = plane.Degrees(20 + 50*rng.Float64())
	return c
}
