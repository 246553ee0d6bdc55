package rounds

import (
	"math/rand/v2"

	"ogive/geometry/arch"
	"ogive/geometry/hand"
	"ogive/geometry/norms"
	"ogive/geometry/plane"
	"ogive/imaging/phantom"
)

// margin is how far from a limit a figure lies: from least to most beyond it where
// it is a fault, inside it where it is none (but never past the middle of the band).
type margin struct{ least, most, inside float64 }

// of is the margin as a part of a limit, which for a span differs from hand to hand.
func (m margin) of(limit float64) margin {
	return margin{m.least * limit, m.most * limit, m.inside * limit}
}

// margins are this project's own: what is told at a glance, what is told by
// looking, and what lies a little above the uncertainty of a good reading. The
// span's are parts of it, the slope's degrees.
var margins = map[Difficulty]struct{ index, span, slope margin }{
	Clear: {margin{0.10, 0.16, 0.06}, margin{0.28, 0.45, 0.12}, margin{11, 18, 5}},
	Usual: {margin{0.05, 0.10, 0.03}, margin{0.13, 0.28, 0.06}, margin{6, 11, 3}},
	Close: {margin{0.02, 0.05, 0.01}, margin{0.06, 0.13, 0.03}, margin{3, 6, 1.5}},
}

// figure draws a figure for which the finding is true; below is the finding under
// the lower limit. Within limits, a close one lies near either of them.
func figure(rng *rand.Rand, m margin, finding, below string, limits [2]float64) float64 {
	low, high := limits[0], limits[1]
	by := m.least + (m.most-m.least)*rng.Float64()
	switch finding {
	case below:
		return low - by
	case norms.WithinLimits:
		in := min(m.inside*(1+rng.Float64()), (high-low)/2)
		if rng.IntN(2) == 0 {
			return low + in
		}
		return high - in
	}
	return high + by
}

// scene draws all but the webs: the harder, the more the camera is tilted and the
// more the cloth is like the skin.
func scene(d Difficulty, rng *rand.Rand) phantom.Case {
	within := func(low, high float64) float64 { return low + (high-low)*rng.Float64() }
	c := phantom.Case{
		Side: pick(rng, hand.Left, hand.Right), View: hand.Dorsal,
		Width: pictureWidth, Height: pictureHeight,
		Turn: plane.Degrees(within(-8, 8)), TiltDirection: plane.Degrees(within(-180, 180)),
		Light: phantom.Light{
			Azimuth: plane.Degrees(within(-180, 180)), Elevation: plane.Degrees(within(45, 62)),
			Shadow: within(0.2, 0.45), Softness: within(0.9, 1.8),
		},
		BlurSD: 0.8, NoiseSD: within(0.5, 1.5), JPEGQuality: 90,
		Reference: pick(rng, phantom.WhiteRuler, phantom.SteelRuler, phantom.PaperRuler, phantom.IDCard),
	}
	switch d {
	case Clear:
		c.Size, c.Tilt = plane.Millimetre(within(32, 45)), plane.Degrees(within(0, 3))
		c.Skin, c.Drape = contrasting(rng)
		c.Reference = pick(rng, phantom.WhiteRuler, phantom.PaperRuler)
	case Close:
		c.Size, c.Tilt = plane.Millimetre(within(15, 42)), plane.Degrees(within(5, 12))
		c.Skin, c.Drape = alike(rng)
		c.BlurSD, c.Light.Shadow, c.NoiseSD = 1.2, within(0.4, 0.7), within(1.5, 3)
	default:
		c.Size, c.Tilt = plane.Millimetre(within(18, 45)), plane.Degrees(within(0, 8))
		c.Skin = phantom.VeryFair + phantom.SkinTone(rng.IntN(int(phantom.VeryDark)))
		c.Drape = pick(rng, phantom.TheatreGreen, phantom.Blue, phantom.White, phantom.Grey, phantom.DarkTeal)
	}
	c.Build = plane.Ratio(within(0.95, 1.05) + 0.12*(46-float64(c.Size))/32)
	return c
}

// contrasting is a skin on a cloth of another hue and lightness.
func contrasting(rng *rand.Rand) (phantom.SkinTone, phantom.Drape) {
	skin := phantom.VeryFair + phantom.SkinTone(rng.IntN(int(phantom.VeryDark)))
	if skin <= phantom.Tan {
		return skin, pick(rng, phantom.TheatreGreen, phantom.Blue, phantom.DarkTeal)
	}
	return skin, pick(rng, phantom.White, phantom.Blue, phantom.TheatreGreen)
}

// alike is a skin on a cloth of about its own lightness, or a cloth with a weave.
func alike(rng *rand.Rand) (phantom.SkinTone, phantom.Drape) {
	if rng.IntN(2) == 0 {
		return pick(rng, phantom.VeryFair, phantom.Fair, phantom.Beige), pick(rng, phantom.White, phantom.Weave, phantom.Checked)
	}
	return pick(rng, phantom.Tan, phantom.Brown, phantom.Dark, phantom.VeryDark), pick(rng, phantom.Grey, phantom.DarkTeal, phantom.Weave)
}

// form gives a web of its shape the rest of its form: the clearer the round, the
// further from the neighbouring shapes.
func form(s *phantom.WebShape, d Difficulty, rng *rand.Rand) {
	within := func(low, high float64) float64 { return low + (high-low)*rng.Float64() }
	turn, flat := [2]float64{46, 64}, [2]float64{0.35, 0.55}
	switch d {
	case Clear:
		turn, flat = [2]float64{44, 54}, [2]float64{0.45, 0.6}
	case Close:
		turn, flat = [2]float64{60, 69}, [2]float64{0.24, 0.36}
	}
	switch s.Shape {
	case arch.V:
		s.Span, s.Flare = 0, plane.Degrees(within(5, 10))
	case arch.Gothic:
		s.Turn = plane.Degrees(within(turn[0], turn[1]))
	case arch.U:
		s.Flat = plane.Ratio(within(flat[0], flat[1]))
	}
}

func pick[T any](rng *rand.Rand, from ...T) T { return from[rng.IntN(len(from))] }
