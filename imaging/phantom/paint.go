package phantom

import (
	"math"
	"math/rand/v2"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
)

// cellSize is the pixels to a cell of the smooth fields.
const cellSize = 4

// paintHand lays drape, reference and hand over each other and blurs them.
func paintHand(c Case, a *anatomy, at layout, cam camera) (*canvas, error) {
	perPixel := float64(c.Distance) / float64(c.FocalPx)
	outline := cam.pixels(at.hand.planes(a.outline(plane.Millimetre(0.7 * perPixel))))
	silhouette := cover(c.Width, c.Height, outline)
	pic := newCanvas(c.Width, c.Height)
	if c.Plain {
		flat := c.Skin.back()
		if c.View == hand.Palmar {
			flat = c.Skin.palm()
		}
		pic.paint(func(x, y int) rgb { return drapeColour[c.Drape] })
		even := func(x, y float64) float64 { return 1 }
		layGrey(pic, c, at.grey, cam, even)
		err := layReference(pic, c, at.ref, cam, even)
		pic.lay(silhouette, func(x, y int) rgb { return flat })
		pic.blur(c.BlurSD)
		return pic, err
	}
	l := newLamp(c)
	mask := shrunk(silhouette, cellSize)
	body := newBody(c, mask, l, perPixel)
	paintDrape(pic, c, cam, l, body)
	light := func(x, y float64) float64 { return body.light(x, y, l) }
	layGrey(pic, c, at.grey, cam, light)
	if err := layReference(pic, c, at.ref, cam, light); err != nil {
		return nil, err
	}
	layHand(pic, c, a, at, cam, l, body, silhouette, mask)
	pic.blur(c.BlurSD)
	return pic, nil
}

// layReference paints the ruler or the card and the narrow shadow beneath it;
// light is the light on the cloth.
func layReference(pic *canvas, c Case, s strip, cam camera, light func(x, y float64) float64) error {
	if !c.Plain {
		under := s
		l := newLamp(c)
		high := 0.9 / l.z
		under.corner = s.corner.Add(plane.Vec(plane.Millimetre(-l.x*high), plane.Millimetre(-l.y*high)))
		layShadow(pic, c, under, cam)
	}
	if c.Reference == IDCard {
		layCard(pic, c, s, cam, light)
		return nil
	}
	return layRuler(pic, c, s, cam, light)
}

// layShadow darkens the cloth under a strip, softly.
func layShadow(pic *canvas, c Case, s strip, cam camera) {
	const soft plane.Millimetre = 0.7
	shape := cover(c.Width, c.Height, s.rectangle(cam, -soft, s.length+soft, -soft, s.wide+soft))
	eachRow(shape.y0, shape.y1, func(j int) {
		for i := range c.Width {
			if shape.part[j*c.Width+i] == 0 {
				continue
			}
			x, y := project(&cam.toPlane.H, float64(i)+0.5, float64(j)+0.5)
			u, v := s.within(plane.Pt(plane.Millimetre(x), plane.Millimetre(y)))
			inside := min(u, s.length-u, v, s.wide-v)
			k := 1 - 0.6*c.Light.Shadow*smoothstep(float64((inside+soft)/(2*soft)))
			at := pic.rgb[3*(j*c.Width+i):]
			at[0], at[1], at[2] = at[0]*k, at[1]*k, at[2]*k
		}
	})
}

// body is the hand as a solid that casts a shadow on the cloth.
type body struct {
	square *field // the square of its height above its middle, in cells
	lit    *field // how much of the lamp reaches the cloth
	near   *field // how much of the sky the hand hides from the cloth
}

func newBody(c Case, mask *field, l lamp, perPixel float64) body {
	size := float64(c.Size) / perPixel / cellSize
	b := body{square: inflated(mask, 0.2*size)}
	top := newField(c.Width, c.Height, cellSize)
	highest := 0.0
	for k, m := range mask.v {
		if m > 0.5 {
			top.v[k] = 0.17*size + math.Sqrt(b.square.v[k])
			highest = math.Max(highest, top.v[k])
		}
	}
	b.lit = l.shade(top, highest)
	b.near = &field{mask.w, mask.h, mask.cell, append([]float64(nil), mask.v...)}
	b.near.soften(0.11 * size)
	return b
}

// light is the light on level cloth.
func (b body) light(x, y float64, l lamp) float64 {
	dark := l.shadow * (1 - b.lit.at(x, y))
	open := 1 - 0.55*l.shadow*b.near.at(x, y)
	return l.falloff(x, y) * (l.room*open + (1-l.room)*(1-dark)*(0.5+0.5*open))
}

func paintDrape(pic *canvas, c Case, cam camera, l lamp, b body) {
	k := newCloth(c, float64(c.Distance)/float64(c.FocalPx))
	shade := folds(c, cam, l, cellSize)
	pic.paint(func(i, j int) rgb {
		px, py := float64(i)+0.5, float64(j)+0.5
		x, y := project(&cam.toPlane.H, px, py)
		return k.at(x, y).scaled(shade.at(px, py) * b.light(px, py, l))
	})
}

// layHand paints the skin with all that is on it.
func layHand(pic *canvas, c Case, a *anatomy, at layout, cam camera, l lamp, b body, silhouette coverage, mask *field) {
	perPixel := float64(c.Distance) / float64(c.FocalPx)
	pixel := func(q point) plane.PixelPoint { return cam.pixel(at.hand.plane(q)) }
	s := newSkin(c, a, at, cam, mask)
	cuts := newRelief(c.Width, c.Height)
	e := engraver{cuts, pixel, perPixel, float64(c.Size), rand.New(rand.NewPCG(c.Seed, 0xC0))}
	var p plates
	if c.View == hand.Palmar {
		e.palm(a)
		p = plates{cover(c.Width, c.Height), cover(c.Width, c.Height), cover(c.Width, c.Height)}
	} else {
		e.back(a)
		p = newPlates(a, pixel, c.Width, c.Height)
		for _, n := range nails(a) {
			e.cut(n.fold(), 7, 9, 0.05)
		}
	}
	f := surface{cam: cam, l: l, square: b.square, rise: s.rise, cuts: cuts, grain: s.grain, size: float64(c.Size), perPixel: perPixel}
	pic.lay(silhouette, func(i, j int) rgb {
		k := j*c.Width + i
		plate := p.bed.part[k]
		g := f.at(i, j, plate)
		colour := s.albedo(g.px, g.py, g.fine+0.85*g.deep*s.creaseDark())
		if plate > 0 {
			colour = s.nailed(colour, plate, p.lunula.part[k], p.edge.part[k])
		}
		return f.lit(g, colour, plate)
	})
}

func (s *skin) creaseDark() float64 {
	if s.palm {
		return 0.38 + 0.07*float64(s.tone-VeryFair)
	}
	return 0.7
}

// nailed is the colour of the nail over skin of that colour.
func (s *skin) nailed(under rgb, plate, lunula, edge float64) rgb {
	dark := smoothstep(float64(s.tone-Beige) / 4)
	bed := lab(71, 15, 13).mixed(lab(50, 12, 14), dark)
	moon := lab(78, 9, 10).mixed(lab(64, 9, 13), dark)
	white := lab(86, 1, 8).mixed(lab(78, 3, 12), dark)
	colour := bed.mixed(moon, 0.6*lunula).mixed(white, 0.85*edge)
	return under.mixed(colour, 0.82*plate)
}
