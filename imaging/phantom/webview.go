package phantom

import (
	"math"
	"math/rand/v2"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
)

// webScene is one web looked into from the side: the far digit lies across the
// picture, the near one is spread towards the camera, and the web hangs between
// them. Its coordinates are millimetres, x distal along the far digit, y towards
// the back of the hand, in the plane of the far digit's side.
type webScene struct {
	size  float64
	slope plane.Angle
	web   hand.Web
}

// backLine and palmLine are the profile of the far digit and the hand, by the
// length MCP to PIP: pairs of x and y.
var (
	backLine = [][2]float64{{-9, 0.56}, {-2.5, 0.44}, {-1.9, 0.47}, {-0.9, 0.61}, {-0.35, 0.56}, {-0.08, 0.545}, {0.2, 0.43}, {0.5, 0.34}, {0.85, 0.305},
		{1.0, 0.32}, {1.2, 0.285}, {1.5, 0.25}, {1.6, 0.255}, {1.78, 0.225}, {2.0, 0.17}}
	palmLine = [][2]float64{{-9, -0.75}, {-2.5, -0.62}, {-1.9, -0.7}, {-1, -0.95}, {-0.1, -0.95}, {0.12, -0.8}, {0.22, -0.55}, {0.3, -0.4}, {0.42, -0.29}, {0.58, -0.255},
		{0.78, -0.25}, {0.98, -0.205}, {1.06, -0.205}, {1.3, -0.235}, {1.52, -0.185}, {1.6, -0.19}, {1.78, -0.225}, {2.0, -0.16}}
)

// junctionAt is the middle of the straight part of the junction, straightHalf
// half its length, junctionBend the length over which it turns into the lines
// along the sides of the digits.
var junctionAt = [2]float64{0.2, 0.1}

const (
	straightHalf = 0.235
	junctionBend = 0.22
)

func (w webScene) at(x, y float64) point {
	return plane.Pt(plane.Millimetre(x*w.size), plane.Millimetre(y*w.size))
}

// far is the silhouette of the far digit, the web and the hand behind it.
func (w webScene) far() []point {
	var line []point
	const steps = 2750
	for i := range steps {
		x := -9 + 11*float64(i)/steps
		line = append(line, w.at(x, throughKnots(backLine, x)))
	}
	top, bottom := 0.17, -0.16
	mid, half := (top+bottom)/2, (top-bottom)/2
	for i := 1; i < 120; i++ {
		s, c := math.Sincos(math.Pi * float64(i) / 120)
		line = append(line, w.at(2+0.13*math.Pow(s, 0.9), mid+half*c))
	}
	for i := range steps {
		x := 2 - 11*float64(i)/steps
		line = append(line, w.at(x, throughKnots(palmLine, x)))
	}
	return line
}

// nearAxis is the line of the near digit, which comes towards the camera.
var nearAxis = [2][2]float64{{-1.6, -0.3}, {0.2, -0.72}}

// near is the silhouette of the near digit: wide, because it is foreshortened.
func (w webScene) near() []point {
	p, q := w.at(nearAxis[0][0], nearAxis[0][1]), w.at(nearAxis[1][0], nearAxis[1][1])
	u := q.Sub(p).Direction()
	side := u.Left()
	length := float64(q.Distance(p))
	half := func(t float64) float64 {
		return w.size * throughKnots([][2]float64{{0, 0.32}, {0.35, 0.27}, {0.55, 0.285}, {0.8, 0.265}, {1, 0.25}}, t)
	}
	var line []point
	const steps = 300
	for i := 0; i <= steps; i++ {
		t := float64(i) / steps
		line = append(line, p.Add(u.Scale(t*length)).Add(side.Scale(half(t))))
	}
	for i := 1; i < 120; i++ {
		s, c := math.Sincos(math.Pi * float64(i) / 120)
		line = append(line, q.Add(u.Scale(0.27*w.size*math.Pow(s, 0.95))).Add(side.Scale(half(1)*math.Copysign(math.Pow(math.Abs(c), 0.9), c))))
	}
	for i := steps; i >= 0; i-- {
		t := float64(i) / steps
		line = append(line, p.Add(u.Scale(t*length)).Add(side.Scale(-half(t))))
	}
	return line
}

// junction lists the line between glabrous and pigmented skin: straight at the
// slope over the web, running out along the hand and the digit at either end.
func (w webScene) junction() []point {
	forward := w.junctionArm(1)
	line := reversed(w.junctionArm(-1))
	return append(line, forward[1:]...)
}

// junctionArm is one half, from the middle distally (+1) or proximally (-1).
func (w webScene) junctionArm(sign float64) []point {
	x, y := junctionAt[0], junctionAt[1]
	line := []point{w.at(x, y)}
	run := func(length, turn float64) {
		// Distally the line falls towards the palm.
		x += sign * length * math.Cos(turn)
		y -= sign * length * math.Sin(turn)
		line = append(line, w.at(x, y))
	}
	run(straightHalf, float64(w.slope))
	const steps = 24
	for i := range steps {
		run(junctionBend/steps, float64(w.slope)*(1-smoothstep((float64(i)+0.5)/steps)))
	}
	run(11, 0)
	return line
}

func (w webScene) truth(p placement, cam camera, c Case) Truth {
	pixel := func(q point) plane.PixelPoint { return cam.pixel(p.plane(q)) }
	j := JunctionTruth{Web: w.web, Slope: w.slope}
	const points = 9
	for i := range points {
		s := straightHalf * 0.95 * (2*float64(i)/(points-1) - 1)
		j.Line = append(j.Line, pixel(w.at(junctionAt[0]+s*w.slope.Cos(), junctionAt[1]-s*w.slope.Sin())))
	}
	j.Axis = [2]plane.PixelPoint{pixel(w.at(0.55, 0.04)), pixel(w.at(1.85, 0.04))}
	return Truth{Side: c.Side, View: c.View, Plane: cam.toPlane, Junctions: []JunctionTruth{j}}
}

// lay places the scene and the reference below it, and fills c.Distance.
func (w webScene) lay(c *Case) layout {
	mirror := 1.0
	if c.Side == hand.Left {
		mirror = -1
	}
	ref, wide := refSize(*c)
	long := float64(ref)
	width, height := 3.1*w.size, 1.9*w.size
	below := 0.1*w.size + float64(wide)
	if c.Reference == IDCard {
		width = math.Max(width, long*1.05)
	}
	frame := frameOf(*c, width, (height+below)*1.04)
	if c.Distance == 0 {
		c.Distance = plane.Millimetre(frame * float64(c.FocalPx))
	}
	fw, fh := frame*float64(c.Width), frame*float64(c.Height)
	p := placement{mirror: mirror, turn: c.Turn / 2}
	p.shift = plane.Vec(plane.Millimetre(-mirror*(2.3*w.size-fw/2)), plane.Millimetre(-fh/2+0.47*(fh-float64(wide))-0.15*w.size))
	askew := plane.Degrees(3 * (unit(c.Seed, 77) - 0.5))
	s := strip{length: ref, wide: wide,
		along: plane.Vec[plane.Millimetre](1, 0).Turned(askew), down: plane.Vec[plane.Millimetre](0, 1).Turned(askew)}
	left := -0.46 * fw
	if c.Reference == IDCard {
		left = -long / 2
	}
	s.corner = plane.Pt(plane.Millimetre(left), plane.Millimetre(fh/2-0.035*fh)-wide)
	return layout{hand: p, ref: s}
}

// paintWeb lays drape, far digit, near digit and reference over each other.
func paintWeb(c Case, w webScene, at layout, cam camera) (*canvas, error) {
	perPixel := float64(c.Distance) / float64(c.FocalPx)
	pic := newCanvas(c.Width, c.Height)
	far := cover(c.Width, c.Height, cam.pixels(at.hand.planes(w.far())))
	near := cover(c.Width, c.Height, cam.pixels(at.hand.planes(w.near())))
	w.merge(near, at.hand, cam)
	l := newLamp(c)
	both := shrunk(far, cellSize)
	nearMask := shrunk(near, cellSize)
	farMask := &field{both.w, both.h, both.cell, append([]float64(nil), both.v...)}
	for k, v := range nearMask.v {
		both.v[k] = math.Max(both.v[k], v)
	}
	b := newBody(c, both, l, perPixel)
	paintDrape(pic, c, cam, l, b)
	v := newWebSkin(c, w, at, cam, nearMask, perPixel)
	v.lay(pic, far, farMask, l, v.cuts, true)
	v.lay(pic, near, nearMask, l, v.nearCuts, false)
	light := func(x, y float64) float64 { return b.light(x, y, l) }
	layGrey(pic, c, at.grey, cam, light)
	err := layReference(pic, c, at.ref, cam, light)
	pic.blur(c.BlurSD)
	return pic, err
}

// webSkin is the skin of a web view: pigmented above the junction, glabrous
// below it.
type webSkin struct {
	c        Case
	cam      camera
	perPixel float64
	back     rgb
	palm     rgb
	grain    noise
	above    *field // mm from the junction, positive on the pigmented side
	nearSide *field // the same on the near digit, from its own side line
	hollow   *field // how much the near digit shades the far one
	blood    *field
	rise     *field
	cuts     *relief
	nearCuts *relief
}

func newWebSkin(c Case, w webScene, at layout, cam camera, near *field, perPixel float64) *webSkin {
	back, palm := webColours(c)
	v := &webSkin{c: c, cam: cam, perPixel: perPixel, back: back, palm: palm, grain: noise(c.Seed*23 + 1)}
	cells := func() *field { return newField(c.Width, c.Height, cellSize) }
	v.above, v.nearSide, v.blood, v.rise = cells(), cells(), cells(), cells()
	line := w.junction()
	p, q := w.at(nearAxis[0][0], nearAxis[0][1]), w.at(nearAxis[1][0], nearAxis[1][1])
	nearDir := q.Sub(p).Direction()
	size := w.size
	v.above.fill(func(k int, px, py float64) float64 {
		x, y := project(&cam.toPlane.H, px, py)
		s := at.hand.hand(plane.Pt(plane.Millimetre(x), plane.Millimetre(y)))
		v.nearSide.v[k] = float64(nearDir.Cross(s.Sub(p))) + 0.04*size
		v.blood.v[k] = 0.09*v.grain.octaves(7*x/size, 7*y/size, 3) + 0.05*(v.grain+3).octaves(25*x/size, 25*y/size, 2)
		sx, sy := float64(s.X)/size, float64(s.Y)/size
		v.rise.v[k] = size * (0.05*bell(sx+0.05, 0.2)*bell(sy-0.45, 0.2) - 0.10*bell(sx-0.2, 0.24)*bell(sy+0.15, 0.26) +
			0.03*bell(sx-1.85, 0.2)*bell(sy+0.14, 0.1) + 0.02*bell(sx-1.3, 0.15)*bell(sy+0.14, 0.1))
		return signedDistance(line, s)
	})
	v.hollow = &field{near.w, near.h, near.cell, append([]float64(nil), near.v...)}
	v.hollow.soften(0.16 * size / perPixel / cellSize)
	v.cuts = newRelief(c.Width, c.Height)
	pixel := func(q point) plane.PixelPoint { return cam.pixel(at.hand.plane(q)) }
	v.nearCuts = newRelief(c.Width, c.Height)
	e := engraver{v.cuts, pixel, perPixel, size, rand.New(rand.NewPCG(c.Seed, 0xC1))}
	w.engrave(e)
	e.to = v.nearCuts
	w.engraveNear(e)
	return v
}

// webColours are the colours of the two skins at a web.
func webColours(c Case) (back, palm rgb) {
	back, palm = c.Skin.back(), c.Skin.palm()
	if c.Skin <= Beige { // the back of a fair hand is a little tanned
		return back.tinted(0, 0.11, 0), palm.tinted(0, -0.03, 0)
	}
	return back, palm
}

// signedDistance is how far p lies from a line drawn distally, positive on its
// dorsal side.
func signedDistance(line []point, p point) float64 {
	best, sign := math.Inf(1), 1.0
	px, py := float64(p.X), float64(p.Y)
	for i := 1; i < len(line); i++ {
		ax, ay := float64(line[i-1].X), float64(line[i-1].Y)
		ux, uy := float64(line[i].X)-ax, float64(line[i].Y)-ay
		t := math.Max(0, math.Min(1, ((px-ax)*ux+(py-ay)*uy)/(ux*ux+uy*uy)))
		dx, dy := px-ax-t*ux, py-ay-t*uy
		if d := dx*dx + dy*dy; d < best {
			best, sign = d, ux*dy-uy*dx
		}
	}
	return math.Copysign(math.Sqrt(best), sign)
}

// merge lets the base of the near digit pass into the hand.
func (w webScene) merge(near coverage, at placement, cam camera) {
	p, q := w.at(nearAxis[0][0], nearAxis[0][1]), w.at(nearAxis[1][0], nearAxis[1][1])
	u, length := q.Sub(p).Direction(), float64(q.Distance(p))
	eachRow(near.y0, near.y1, func(j int) {
		for i := range near.w {
			k := j*near.w + i
			if near.part[k] == 0 {
				continue
			}
			x, y := project(&cam.toPlane.H, float64(i)+0.5, float64(j)+0.5)
			s := at.hand(plane.Pt(plane.Millimetre(x), plane.Millimetre(y)))
			near.part[k] *= smoothstep((float64(s.Sub(p).Dot(u))/length - 0.05) / 0.45)
		}
	})
}

// engraveNear cuts a few wrinkles over the joints of the near digit.
func (w webScene) engraveNear(e engraver) {
	p, q := w.at(nearAxis[0][0], nearAxis[0][1]), w.at(nearAxis[1][0], nearAxis[1][1])
	up := q.Sub(p).Direction().Turned(plane.RightAngle)
	for _, t := range [...]float64{0.5, 0.54, 0.58, 0.62, 0.84, 0.87, 0.9} {
		foot := p.Towards(q, t+e.between(-0.01, 0.01))
		lean := q.Sub(p).Scale(0.02 * (t - 0.7))
		from, to := foot.Add(up.Scale(0.26*w.size)), foot.Add(up.Scale(w.size*e.between(0.08, 0.14)))
		e.cut(bezier(from, from.Towards(to, 0.3).Add(lean), to.Towards(from, 0.3).Add(lean), to, plane.Millimetre(0.02*w.size)), 5, e.between(5, 11), 0.4)
	}
}

// engrave cuts wrinkles over the joints on the back and creases on the palm.
func (w webScene) engrave(e engraver) {
	for _, joint := range [...]struct {
		x    float64
		n    int
		long float64
	}{{1.0, 7, 0.17}, {1.58, 4, 0.12}} {
		for i := range joint.n {
			x := joint.x + 0.16*(float64(i)/float64(joint.n-1)-0.5)*float64(joint.n)/6
			top := throughKnots(backLine, x)
			lean := 0.12 * (x - joint.x)
			long := joint.long * e.between(0.5, 1.1)
			line := bezier(w.at(x, top+0.01), w.at(x, top-0.3*long), w.at(x+lean, top-0.7*long), w.at(x+2*lean, top-long), plane.Millimetre(0.02*w.size))
			e.cut(line, 5, e.between(5, 12), 0.4)
		}
	}
	for _, crease := range [...][2]float64{{0.5, 16}, {0.58, 8}, {0.99, 19}, {1.05, 9}, {1.55, 17}} {
		x, deep := crease[0], crease[1]
		bottom := throughKnots(palmLine, x)
		long := 0.17 * e.between(0.85, 1.15)
		line := bezier(w.at(x, bottom-0.02), w.at(x, bottom+0.3*long), w.at(x-0.01, bottom+0.7*long), w.at(x+0.02, bottom+long), plane.Millimetre(0.02*w.size))
		e.cut(line, 7, deep, 0.5)
	}
	for range 70 {
		x, y := e.between(-0.9, 1.9), e.between(-0.3, 0.4)
		l := e.between(0.04, 0.14)
		line := bezier(w.at(x, y), w.at(x+0.02, y+0.3*l), w.at(x-0.02, y+0.7*l), w.at(x+e.between(-0.05, 0.05), y+l), plane.Millimetre(0.02*w.size))
		e.cut(line, 4, e.between(0.4, 1.4), 0.45)
	}
	nail := bezier(w.at(1.84, 0.2), w.at(1.86, 0.15), w.at(1.95, 0.1), w.at(2.1, 0.09), plane.Millimetre(0.02*w.size))
	e.cut(nail, 6, 12, 0.1)
}

// lay paints one body with that skin.
func (v *webSkin) lay(pic *canvas, shape coverage, mask *field, l lamp, cuts *relief, far bool) {
	size := float64(v.c.Size)
	f := surface{cam: v.cam, l: l, square: inflated(mask, 0.24*size/v.perPixel/cellSize), rise: v.rise, cuts: cuts, grain: v.grain, size: size, perPixel: v.perPixel}
	side := v.above
	if !far {
		side = v.nearSide
		f.rise = newField(v.c.Width, v.c.Height, cellSize)
	}
	pic.lay(shape, func(i, j int) rgb {
		g := f.at(i, j, 0)
		x, y := project(&v.cam.toPlane.H, g.px, g.py)
		// The junction is a line of about a millimetre, a little ragged.
		ragged := 0.008 * size * (v.grain+40).octaves(x/size*22, y/size*22, 2)
		t := smoothstep((side.at(g.px, g.py)+ragged)/(0.045*size) + 0.5)
		pigment := g.fine*(1+0.6*t) + 0.45*g.deep + 0.05*t*(v.grain+50).octaves(x/size*12, y/size*12, 3)
		if t < 1 { // fine ridges of glabrous skin
			pigment += (1 - t) * 0.03 * math.Sin(2*math.Pi*(y+0.3*x+0.06*size*(v.grain+60).at(x/size*4, y/size*4))/(0.014*size))
		}
		colour := v.palm.mixed(v.back, t).tinted(v.blood.at(g.px, g.py), pigment, 0)
		out := f.lit(g, colour, 0)
		if far {
			h := v.hollow.at(g.px, g.py)
			k := 1 - 0.75*h*h
			out = rgb{out[0] * math.Sqrt(k), out[1] * k, out[2] * k}
		}
		return out
	})
}
