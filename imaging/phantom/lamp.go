package phantom

import "math"

// lamp is the light that falls on the scene, in the picture's directions, z
// towards the camera.
type lamp struct {
	x, y, z  float64 // towards the lamp, one long
	hx, hy   float64 // half way between lamp and camera
	hz       float64
	shadow   float64
	softness float64
	room     float64 // the part of the light that comes from all sides
	w, h     float64
}

func newLamp(c Case) lamp {
	s, t := c.Light.Elevation.Sin(), c.Light.Elevation.Cos()
	l := lamp{
		x: c.Light.Azimuth.Cos() * t, y: c.Light.Azimuth.Sin() * t, z: s,
		shadow: c.Light.Shadow, softness: c.Light.Softness, room: 0.45,
		w: float64(c.Width), h: float64(c.Height),
	}
	n := math.Sqrt(l.x*l.x + l.y*l.y + (1+l.z)*(1+l.z))
	l.hx, l.hy, l.hz = l.x/n, l.y/n, (1+l.z)/n
	return l
}

// falloff is how the light fades away from the lamp and towards the corners.
func (l lamp) falloff(x, y float64) float64 {
	u, v := x/l.w-0.5, y/l.w-0.5*l.h/l.w
	return 1 + 0.16*(u*l.x+v*l.y)/math.Hypot(l.x, l.y) - 0.22*(u*u+v*v)
}

// diffuse is the light on a matt surface of that slope (mm per mm), 1 on a level
// one; lit is how much of the lamp reaches it. Skin passes light on inside, so
// its darker side is still lit, by wrap.
func (l lamp) diffuse(dx, dy, lit, wrap float64) float64 {
	n := 1 / math.Sqrt(1+dx*dx+dy*dy)
	cos := (l.z - dx*l.x - dy*l.y) * n
	direct := math.Max(0, cos+wrap) / (l.z + wrap)
	return l.room*(0.45+0.55*n) + (1-l.room)*direct*lit
}

// gloss is the mirrored light, by the eighth and the sixty-fourth power of the
// cosine, for skin and for nails.
func (l lamp) gloss(dx, dy float64) (soft, sharp float64) {
	n := 1 / math.Sqrt(1+dx*dx+dy*dy)
	c := math.Max(0, (l.hz-dx*l.hx-dy*l.hy)*n)
	c2 := c * c
	c4 := c2 * c2
	c8 := c4 * c4
	c16 := c8 * c8
	return c16, c16 * c16 * c16 * c16
}

// shade is how much of the lamp reaches the cloth in each cell past a body that
// rises to top (in cells) above it.
func (l lamp) shade(top *field, highest float64) *field {
	out := newField(top.w*top.cell, top.h*top.cell, top.cell)
	flat := math.Hypot(l.x, l.y)
	ux, uy, rise := l.x/flat, l.y/flat, l.z/flat
	reach := highest / rise * 1.3
	steps := int(math.Max(1, math.Min(40, reach)))
	step := reach / float64(steps)
	cell := float64(top.cell)
	out.fill(func(k int, x, y float64) float64 {
		dark := 0.0
		for n := 1; n < steps; n++ {
			s := float64(n) * step
			t := top.at(x+s*ux*cell, y+s*uy*cell)
			edge := 0.5 + (t-s*rise)/(0.5*l.softness*(s+0.12*highest))
			dark = math.Max(dark, math.Min(1, edge)*math.Min(1, t/(0.2*highest)))
		}
		return 1 - dark
	})
	out.soften(1.2)
	return out
}
