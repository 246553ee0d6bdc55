package phantom

import (
	"fmt"

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

// rulerMake is what a ruler is made of.
type rulerMake struct {
	ground, ink rgb
	streaks     float64 // brushing along the ruler
	shine       float64 // bands of mirrored light
	grain       float64
	corner      plane.Millimetre
}

var rulerMakes = map[Reference]rulerMake{
	WhiteRuler: {lab(92, -0.5, 1), lab(12, 0, 0), 0.004, 0.03, 0.004, 1.2},
	SteelRuler: {lab(69, -0.5, -1), lab(10, 0, 0), 0.07, 0.28, 0.02, 0.6},
	PaperRuler: {lab(95, -0.3, 3), lab(20, 4, -10), 0, 0, 0.02, 0.05},
}

// layRuler paints the ruler; light is the light on the cloth.
func layRuler(pic *canvas, c Case, s strip, cam camera, light func(x, y float64) float64) error {
	made := rulerMakes[c.Reference]
	grain := noise(c.Seed*3 + 70)
	pic.lay(cover(c.Width, c.Height, s.rounded(cam, 0, s.length, 0, s.wide, made.corner)), func(i, j int) rgb {
		px, py := float64(i)+0.5, float64(j)+0.5
		x, y := project(&cam.toPlane.H, px, py)
		along, down := s.within(plane.Pt(plane.Millimetre(x), plane.Millimetre(y)))
		u, v := float64(along), float64(down)
		k := 1 + made.streaks*grain.octaves(u/14, v/0.12, 2) +
			made.shine*0.5*((grain+1).at(u/45, 0.3)+0.6*(grain+2).at(u/17, 0.7)) + made.grain*(grain+3).at(u/0.25, v/0.25)
		if v < 0.5 { // the edge is bevelled
			k *= 0.9 + 0.2*v
		}
		return made.ground.scaled(k * light(px, py))
	})
	print := func(shapes [][]plane.PixelPoint) {
		pic.lay(cover(c.Width, c.Height, shapes...), func(i, j int) rgb {
			return made.ink.scaled(light(float64(i), float64(j)))
		})
	}
	print(s.ticks(cam))
	figures, err := s.figures(c, cam)
	if err != nil {
		return err
	}
	print(figures)
	return nil
}

// figures is the numbers at each 10 mm and the name of the unit: whole
// millimetres, but centimetres on white plastic.
func (s strip) figures(c Case, cam camera) ([][]plane.PixelPoint, error) {
	l, err := newLettering()
	if err != nil {
		return nil, err
	}
	per, name := 1, "mm"
	if c.Reference == WhiteRuler {
		per, name = 10, "cm"
	}
	var out [][]plane.PixelPoint
	add := func(text string, along, down, em plane.Millimetre) error {
		shapes, err := l.set(text, s, cam, along, down, em)
		out = append(out, shapes...)
		return err
	}
	for mm := 0; mm <= rulerLength; mm += 10 {
		at := rulerZero + plane.Millimetre(mm)
		if mm == 0 {
			at += 0.6
		}
		if err := add(fmt.Sprint(mm/per), at, 9.1, 3.9); err != nil {
			return nil, err
		}
	}
	return out, add(name, rulerZero+5, s.wide-2.2, 2.8)
}
