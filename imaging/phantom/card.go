package phantom

import (
	"math"

	"ogive/geometry/plane"
)

// cardColours are the ground and the second colour of the cards.
var cardColours = [...][2]rgb{
	{lab(34, 8, -38), lab(58, -14, -30)},
	{lab(88, 0, 2), lab(52, 48, 30)},
	{lab(28, 2, -4), lab(60, 6, 34)},
	{lab(46, -30, 10), lab(80, -12, 20)},
	{lab(72, 6, 40), lab(40, 10, 10)},
}

func cardTruth(s strip, cam camera) *CardTruth {
	return &CardTruth{
		Corners: [4]plane.PixelPoint{
			cam.pixel(s.at(0, 0)), cam.pixel(s.at(s.length, 0)),
			cam.pixel(s.at(s.length, s.wide)), cam.pixel(s.at(0, s.wide)),
		},
		Width: s.length, Height: s.wide,
	}
}

// rounded is a part of the strip with rounded corners, as a polygon.
func (s strip) rounded(cam camera, along0, along1, down0, down1, radius plane.Millimetre) []plane.PixelPoint {
	centres := [4]point{
		plane.Pt(along1-radius, down1-radius), plane.Pt(along0+radius, down1-radius),
		plane.Pt(along0+radius, down0+radius), plane.Pt(along1-radius, down0+radius),
	}
	const steps = 24
	var line []plane.PixelPoint
	for k, c := range centres {
		for i := 0; i <= steps; i++ {
			sin, cos := math.Sincos(math.Pi / 2 * (float64(k) + float64(i)/steps))
			line = append(line, cam.pixel(s.at(c.X+radius*plane.Millimetre(cos), c.Y+radius*plane.Millimetre(sin))))
		}
	}
	return line
}

// layCard paints a card with a field of colour, a chip and lines of print.
func layCard(pic *canvas, c Case, s strip, cam camera, light func(x, y float64) float64) {
	colours := cardColours[int(unit(c.Seed, 60)*float64(len(cardColours)))]
	bend := 20 + 40*unit(c.Seed, 61)
	pic.lay(cover(c.Width, c.Height, s.rounded(cam, 0, s.length, 0, s.wide, CardCorner)), func(i, j int) rgb {
		px, py := float64(i)+0.5, float64(j)+0.5
		x, y := project(&cam.toPlane.H, px, py)
		u, v := s.within(plane.Pt(plane.Millimetre(x), plane.Millimetre(y)))
		wave := float64(v) + 9*math.Sin(float64(u)/bend) - 34
		sheen := 1 + 0.05*math.Sin(float64(u+v)/31+6*unit(c.Seed, 62))
		return colours[0].mixed(colours[1], 0.5+0.5*softSign(wave)).scaled(sheen * light(px, py))
	})
	print := func(k float64, shapes ...[]plane.PixelPoint) {
		ink := rgb{0.75, 0.75, 0.72}
		if colours[0][1] > 0.3 {
			ink = rgb{0.06, 0.06, 0.07}
		}
		pic.lay(cover(c.Width, c.Height, shapes...), func(i, j int) rgb {
			return ink.scaled(k * light(float64(i), float64(j)))
		})
	}
	var lines [][]plane.PixelPoint
	for row, at := range [...]plane.Millimetre{36, 42, 47} {
		from := plane.Millimetre(9)
		for word := range 3 - row/2 {
			to := from + plane.Millimetre(8+14*unit(c.Seed, uint64(63+5*row+word)))
			lines = append(lines, s.rounded(cam, from, to, at, at+2.2, 0.6))
			from = to + 3
		}
	}
	print(0.9, lines...)
	gold := rgb{0.55, 0.42, 0.18}
	pic.lay(cover(c.Width, c.Height, s.rounded(cam, 9, 20.5, 18, 27.5, 1.5)), func(i, j int) rgb {
		return gold.scaled(light(float64(i), float64(j)))
	})
	pic.lay(cover(c.Width, c.Height, s.rectangle(cam, 9, 20.5, 22.6, 22.9), s.rectangle(cam, 13, 13.3, 18, 27.5), s.rectangle(cam, 16.3, 16.6, 18, 27.5)), func(i, j int) rgb {
		return gold.scaled(0.45 * light(float64(i), float64(j)))
	})
}
