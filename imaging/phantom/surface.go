package phantom

import "math"

// surface is the lit skin: the round body, the coarse and the fine relief.
type surface struct {
	cam      camera
	l        lamp
	square   *field // square of the height of the body, in cells
	rise     *field // mm
	cuts     *relief
	grain    noise
	size     float64
	perPixel float64
}

// ground is one pixel of a surface.
type ground struct {
	px, py float64 // its middle
	dx, dy float64 // slopes, mm per mm
	fine   float64 // light and dark of the skin's grain
	deep   float64 // 0 on the skin, 1 at the bottom of a crease
}

// roundness of a finger's section against a circle, seen from above.
const roundness = 0.8

// at is the pixel in column i and row j; where a nail covers it by the part
// plate it is smoother and flatter.
func (f surface) at(i, j int, plate float64) ground {
	g := ground{px: float64(i) + 0.5, py: float64(j) + 0.5}
	x, y := project(&f.cam.toPlane.H, g.px, g.py)
	u, ux, uy := f.square.smooth(g.px, g.py)
	_, rx, ry := f.rise.smooth(g.px, g.py)
	z, zx, zy := f.cuts.at(i, j)
	// The height is the root of the square; near the rim its slope is held finite.
	k := roundness * 0.5 * float64(f.square.cell) / math.Sqrt(math.Max(u, 0)+0.9)
	k *= 1 - 0.3*plate
	n1 := (f.grain + 20).at(x/f.size*60, y/f.size*60)
	n2 := (f.grain + 21).at(x/f.size*150, y/f.size*110)
	n3 := (f.grain + 22).at((x+y)/f.size*95, (x-y)/f.size*210)
	rough := 1 - plate
	g.dx = ux*k + (rx+zx)/f.perPixel + rough*(0.05*n1+0.07*n3)
	g.dy = uy*k + (ry+zy)/f.perPixel + rough*(0.09*n2+0.05*n3)
	g.fine = (0.035*n1 + 0.035*n2 + 0.03*n3) * rough
	g.deep = math.Min(1, -z/(0.02*f.size))
	return g
}

// lit is the light that comes from g: red light wanders furthest in the skin
// and softens the dark side.
func (f surface) lit(g ground, colour rgb, plate float64) rgb {
	fall := f.l.falloff(g.px, g.py)
	red := f.l.diffuse(g.dx, g.dy, 1, 0.32)
	other := f.l.diffuse(g.dx, g.dy, 1, 0.2)
	soft, sharp := f.l.gloss(g.dx, g.dy)
	shine := 0.035*soft + 0.10*plate*sharp
	return rgb{fall * (colour[0]*red + shine), fall * (colour[1]*other + shine), fall * (colour[2]*other + shine)}
}
