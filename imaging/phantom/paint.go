package phantom

import "ogive/geometry/plane"

// paintHand lays drape, reference and hand over each other and blurs them.
func paintHand(c Case, a *anatomy, at layout, cam camera) *canvas {
	pic := newCanvas(c.Width, c.Height)
	pic.paint(func(x, y int) rgb { return drapeColour[c.Drape] })
	pic.lay(cover(c.Width, c.Height, at.ref.rectangle(cam, 0, at.ref.length, 0, at.ref.wide)), func(x, y int) rgb { return rgb{0.7, 0.7, 0.68} })
	if c.Reference != IDCard {
		pic.lay(cover(c.Width, c.Height, at.ref.ticks(cam)...), func(x, y int) rgb { return rgb{0.02, 0.02, 0.02} })
	}
	perPixel := plane.Millimetre(float64(c.Distance) / float64(c.FocalPx))
	outline := cam.pixels(at.hand.planes(a.outline(0.7 * perPixel)))
	skin := c.Skin.back()
	pic.lay(cover(c.Width, c.Height, outline), func(x, y int) rgb { return skin })
	pic.blur(c.BlurSD)
	return pic
}

var drapeColour = [...]rgb{
	TheatreGreen: lab(42, -22, 4),
	Blue:         lab(45, -8, -28),
	White:        lab(88, 0, 1),
	Grey:         lab(55, 0, -1),
	DarkTeal:     lab(26, -12, -9),
	Weave:        lab(62, 0, 8),
	Checked:      lab(78, 2, 4),
}
