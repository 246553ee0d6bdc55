package phantom

import (
	"math"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
)

// skin is the colour and the coarse shape of the skin, per cell.
type skin struct {
	base rgb
	// blood reddens, pigment browns, blue shows veins: all about zero.
	blood, pigment, blue *field
	// rise is what joints, tendons and pads add to the height, in millimetres.
	rise  *field
	grain noise
	tone  SkinTone
	size  float64
	palm  bool
}

func newSkin(c Case, a *anatomy, at layout, cam camera, mask *field) *skin {
	s := &skin{base: c.Skin.back(), grain: noise(c.Seed*17 + 3), tone: c.Skin, size: float64(c.Size), palm: c.View == hand.Palmar}
	if s.palm {
		s.base = c.Skin.palm()
	}
	s.blood, s.pigment = newField(c.Width, c.Height, mask.cell), newField(c.Width, c.Height, mask.cell)
	s.blue, s.rise = newField(c.Width, c.Height, mask.cell), newField(c.Width, c.Height, mask.cell)
	local := s.back
	if s.palm {
		local = s.front
	}
	veins := newVeins(c, a)
	s.rise.fill(func(k int, px, py float64) float64 {
		if mask.v[k] == 0 && !beside(mask, k) {
			return 0
		}
		x, y := project(&cam.toPlane.H, px, py)
		q := at.hand.hand(plane.Pt(plane.Millimetre(x), plane.Millimetre(y)))
		look := local(a, q)
		if !s.palm {
			v := veins.at(float64(q.X), float64(q.Y))
			look.blue += 0.55 * v
			look.rise += 0.008 * s.size * v
		}
		u, w := x/s.size, y/s.size
		if !s.palm {
			look.pigment += s.freckles(float64(q.X)/s.size, float64(q.Y)/s.size)
		}
		mottle := s.grain.octaves(7*u, 7*w, 3)
		s.blood.v[k] = look.blood + 0.09*mottle + 0.05*(s.grain+7).octaves(26*u, 26*w, 2)
		s.pigment.v[k] = look.pigment + 0.05*(s.grain+9).octaves(11*u, 11*w, 3)
		s.blue.v[k] = look.blue
		return look.rise
	})
	return s
}

// freckles are a few small brown spots; an infant has none.
func (s *skin) freckles(x, y float64) float64 {
	sum := 0.0
	for i := range uint64(7) {
		r := func(k uint64) float64 { return unit(uint64(s.grain), 200+10*i+k) }
		dx, dy := x+0.6-1.6*r(0), y+1.4-2.9*r(1)
		sum += (0.1 + 0.35*r(2)*r(2)) * bell(math.Hypot(dx, dy), 0.008+0.014*r(3))
	}
	return sum * smoothstep((s.size-18)/15)
}

func beside(f *field, k int) bool {
	i, j := k%f.w, k/f.w
	return f.sample(i-1, j) > 0 || f.sample(i+1, j) > 0 || f.sample(i, j-1) > 0 || f.sample(i, j+1) > 0
}

// look is the departure of one place from plain skin.
type look struct{ blood, pigment, blue, rise float64 }

func bell(x, sd float64) float64 {
	x /= sd
	if x > 5 || x < -5 {
		return 0
	}
	return math.Exp(-x * x / 2)
}

// back is the look of the back of the hand: knuckles, tendons, tips.
func (s *skin) back(a *anatomy, q point) (l look) {
	size := s.size
	chubby := smoothstep((30 - size) / 14) // an infant has dimples for knuckles
	dark := smoothstep(float64(s.tone-Beige) / 4)
	for _, d := range hand.Digits {
		f := a.digits[d]
		t, v := float64(f.along(q))/size, float64(f.across(q))/size
		if t < -1.4 || t > 2.4 || math.Abs(v) > 0.45 {
			continue
		}
		pip := float64(f.bones[0]) / size
		dip := pip + float64(f.bones[1])/size
		knuckle := bell(v, 0.13) * bell(t, 0.13)
		joint := bell(v, 0.15) * (bell(t-pip, 0.1) + 0.6*bell(t-dip, 0.07))
		if d == hand.Thumb {
			knuckle *= 0.5
			joint = bell(v, 0.15) * bell(t-pip, 0.1)
		}
		l.rise += size * (knuckle*(0.075*(1-1.5*chubby)) + 0.022*joint*(1-chubby))
		l.blood += 0.16*knuckle + 0.22*joint + 0.16*bell(v, 0.2)*smoothstep((t-dip-0.1)/0.3)
		l.pigment += (0.06 + 0.3*dark) * (0.35*knuckle + joint)
		if d != hand.Thumb && t < 0 {
			wrist := 1 + 0.45*t // tendons run together towards the wrist
			tendon := bell(v*wrist, 0.035) * smoothstep(-t/0.2) * smoothstep((1.35+t)/0.6)
			l.rise += size * 0.008 * tendon * (1 - chubby)
			l.pigment -= 0.03 * tendon
		}
	}
	return l
}

// front is the look of the palm: pads, eminences, paler hollows.
func (s *skin) front(a *anatomy, q point) (l look) {
	size := s.size
	x, y := float64(q.X)/size, float64(q.Y)/size
	for _, d := range hand.Digits {
		f := a.digits[d]
		t, v := float64(f.along(q))/size, float64(f.across(q))/size
		if t < -0.5 || t > 2.4 || math.Abs(v) > 0.4 {
			continue
		}
		pip := float64(f.bones[0]) / size
		dip := pip + float64(f.bones[1])/size
		tip := dip + float64(f.bones[2])/size
		if d == hand.Thumb {
			tip, dip = dip, pip
		}
		pad := bell(v, 0.13) * (bell(t-(dip+tip)/2, 0.14) + 0.5*bell(t-(pip+dip)/2, 0.13) + 0.4*bell(t-(basalCrease+1)/2*pip, 0.12))
		l.rise += 0.03 * size * pad
		l.blood += 0.2*bell(v, 0.16)*smoothstep((t-dip)/0.25) + 0.06*pad
		head := bell(v, 0.17) * bell(t+0.02, 0.15)
		l.rise += 0.035 * size * head
		l.blood += 0.1 * head
	}
	thenar := bell(x+0.42, 0.26) * bell(y+1.05, 0.42)
	hypothenar := bell(x-0.78, 0.2) * bell(y+1.1, 0.45)
	l.rise += size * (0.16*thenar + 0.12*hypothenar)
	l.blood += 0.2*thenar + 0.2*hypothenar - 0.06*bell(x-0.2, 0.25)*bell(y+0.9, 0.4)
	return l
}

// albedo is the skin's colour at a pixel position, darker by fine.
func (s *skin) albedo(px, py, fine float64) rgb {
	blood, pigment, blue := s.blood.at(px, py), s.pigment.at(px, py), s.blue.at(px, py)
	// Blood shows less through darker skin.
	clear := 1 - 0.09*float64(s.tone-VeryFair)
	if s.palm {
		clear = 1 - 0.03*float64(s.tone-VeryFair)
	}
	b, v := blood*clear, blue*clear
	p := pigment + fine
	return s.base.tinted(b, p, v)
}

// tinted is c with more blood, pigment and vein blue.
func (c rgb) tinted(b, p, v float64) rgb {
	return rgb{
		c[0] * expNear(-0.10*b-0.8*p-0.26*v),
		c[1] * expNear(-0.85*b-1.0*p-0.10*v),
		c[2] * expNear(-0.75*b-1.15*p+0.02*v),
	}
}

// expNear is exp for small arguments.
func expNear(x float64) float64 { return 1 + x*(1+x*(0.5+x*(1.0/6+x/24))) }

// veins are the bluish lines of the back of the hand, as distances to a few
// curves in hand coordinates.
type veins struct {
	lines [][]point
	width float64
	seen  float64
	// wander bends the curves.
	wander noise
}

func newVeins(c Case, a *anatomy) veins {
	l := float64(c.Size)
	v := veins{width: 0.033 * l, wander: noise(c.Seed*7 + 41), seen: (0.25 + 0.75*unit(c.Seed, 40)) * smoothstep((l-12)/24)}
	at := func(x, y float64) point { return plane.Pt(plane.Millimetre(x*l), plane.Millimetre(y*l)) }
	for i, d := range []hand.Digit{hand.IndexFinger, hand.Middle, hand.Ring} {
		f, g := a.digits[d], a.digits[d+1]
		from := f.mcp.Mid(g.mcp).Add(plane.Vec(0, plane.Millimetre(0.1*l)))
		r := func(k uint64) float64 { return unit(c.Seed, 50+10*uint64(i)+k) - 0.5 }
		to := at(0.1+0.35*float64(i)-0.3+0.2*r(0), -1.7)
		line := append([]point{from}, bezier(from, from.Add(plane.Vec(plane.Millimetre(0.3*r(1)*l), plane.Millimetre(-0.5*l))),
			to.Add(plane.Vec(plane.Millimetre(0.5*r(2)*l), plane.Millimetre(0.6*l))), to, plane.Millimetre(0.06*l))...)
		v.lines = append(v.lines, line)
	}
	// An arch from one to the next, as most hands have.
	p, q := v.lines[0][len(v.lines[0])/3], v.lines[2][len(v.lines[2])/4]
	v.lines = append(v.lines, append([]point{p}, bezier(p, p.Add(plane.Vec(plane.Millimetre(0.12*l), plane.Millimetre(-0.5*l))),
		q.Add(plane.Vec(plane.Millimetre(-0.3*l), plane.Millimetre(0.05*l))), q, plane.Millimetre(0.06*l))...))
	return v
}

func (v veins) at(x, y float64) float64 {
	x, y = x+2.2*v.width*v.wander.at(x/v.width/9, y/v.width/9), y+2.2*v.width*v.wander.at(y/v.width/9+40, x/v.width/9)
	best := math.Inf(1)
	reach := 5 * v.width
	for _, line := range v.lines {
		for i := 1; i < len(line); i++ {
			px, py := float64(line[i-1].X), float64(line[i-1].Y)
			if math.Abs(x-px) > 2*reach || math.Abs(y-py) > 2*reach {
				continue // no part of this short segment is near enough to show
			}
			ux, uy := float64(line[i].X)-px, float64(line[i].Y)-py
			t := math.Max(0, math.Min(1, ((x-px)*ux+(y-py)*uy)/(ux*ux+uy*uy)))
			dx, dy := x-px-t*ux, y-py-t*uy
			best = math.Min(best, dx*dx+dy*dy)
		}
	}
	return v.seen * bell(math.Sqrt(best), v.width)
}
