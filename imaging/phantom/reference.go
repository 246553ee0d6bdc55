package phantom

import (
	"ogive/geometry/plane"
)

// rulerZero is how far from its end a ruler's zero lies, rulerLength the last
// figure on it, tickLine how far from the edge its ticks are best read.
const (
	rulerZero   plane.Millimetre = 4
	rulerLength                  = 150
	tickLine    plane.Millimetre = 1.5
)

// rulerTruth lists the ticks that are in the picture, from zero to the last
// figure.
func rulerTruth(s strip, cam camera) *RulerTruth {
	tick := func(mm int) plane.PixelPoint {
		return cam.pixel(s.at(rulerZero+plane.Millimetre(mm), tickLine))
	}
	last := 0
	for mm := 10; mm <= rulerLength && cam.sees(tick(mm), 12); mm += 10 {
		last = mm
	}
	t := &RulerTruth{From: tick(0), To: tick(last), Length: plane.Millimetre(last), Step: 1}
	for mm := 0; mm <= last; mm++ {
		t.Ticks = append(t.Ticks, tick(mm))
	}
	return t
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

// rectangle is a part of the strip as a polygon on the picture.
func (s strip) rectangle(cam camera, along0, along1, down0, down1 plane.Millimetre) []plane.PixelPoint {
	return []plane.PixelPoint{
		cam.pixel(s.at(along0, down0)), cam.pixel(s.at(along1, down0)),
		cam.pixel(s.at(along1, down1)), cam.pixel(s.at(along0, down1)),
	}
}

// ticks is every tick of a ruler as a polygon: longer at 5 and 10 mm.
func (s strip) ticks(cam camera) [][]plane.PixelPoint {
	var out [][]plane.PixelPoint
	for mm := 0; mm <= rulerLength; mm++ {
		at, long := rulerZero+plane.Millimetre(mm), plane.Millimetre(3)
		switch {
		case mm%10 == 0:
			long = 5.5
		case mm%5 == 0:
			long = 4.2
		}
		out = append(out, s.rectangle(cam, at-0.09, at+0.09, 0.15, long))
	}
	return out
}

// layReference paints the ruler or the card; light is the light on the cloth.
func layReference(pic *canvas, c Case, s strip, cam camera, light func(x, y float64) float64) {
	pic.lay(cover(c.Width, c.Height, s.rectangle(cam, 0, s.length, 0, s.wide)), func(x, y int) rgb {
		return rgb{0.7, 0.7, 0.68}.scaled(light(float64(x), float64(y)))
	})
	if c.Reference != IDCard {
		pic.lay(cover(c.Width, c.Height, s.ticks(cam)...), func(x, y int) rgb { return rgb{0.02, 0.02, 0.02} })
	}
}
