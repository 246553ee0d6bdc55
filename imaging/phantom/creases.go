package phantom

import (
	"math"
	"math/rand/v2"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
)

// engraver cuts wrinkles and creases, given in hand coordinates, into a relief.
type engraver struct {
	to       *relief
	pixel    func(point) plane.PixelPoint
	perPixel float64
	size     float64
	rng      *rand.Rand
}

// cut engraves a line; wide and deep are thousandths of the hand's size.
func (e engraver) cut(line []point, wide, deep, fade float64) {
	on := make([]plane.PixelPoint, len(line))
	for i, p := range line {
		on[i] = e.pixel(p)
	}
	sd := math.Max(0.7, wide/1000*e.size/e.perPixel)
	e.to.groove(on, sd, deep/1000*e.size, fade)
}

// across is a line across digit f at t, bowed distally by bow in its middle and
// trembling a little, from part a to part b of the half width.
func (e engraver) across(f digit, t, a, b, bow, tremble float64) []point {
	n := noise(e.rng.Uint64())
	const steps = 24
	line := make([]point, 0, steps+1)
	for i := 0; i <= steps; i++ {
		v := a + (b-a)*float64(i)/steps
		at := t + bow*(1-v*v) + tremble*n.at(2.2*v, 0)*v*v
		half := f.half(plane.Millimetre(at), ulnar)
		line = append(line, f.at(plane.Millimetre(at)).Add(towards(f.axis, ulnar).Scale(v*float64(half))))
	}
	return line
}

func (e engraver) between(low, high float64) float64 { return low + (high-low)*e.rng.Float64() }

// back engraves the wrinkles over the joints of the back of the hand.
func (e engraver) back(a *anatomy) {
	l := e.size
	age := math.Min(1, 0.35+l/60)
	for _, d := range hand.Digits {
		f := *a.digits[d]
		pip := float64(f.bones[0])
		e.wrinkles(f, pip, 0.135*l, 7, 0.8, 15*age)
		if d != hand.Thumb {
			e.wrinkles(f, pip+float64(f.bones[1]), 0.055*l, 4, 0.68, 9*age)
		}
	}
	for range 130 {
		e.fineLine(a)
	}
}

// wrinkles cuts count lines over a joint at t, which bow away from it.
func (e engraver) wrinkles(f digit, t, spread float64, count int, wide, deep float64) {
	l := e.size
	for i := range count {
		off := (float64(i)/float64(count-1) - 0.5) * 2
		at := t + spread*(off+e.between(-0.12, 0.12))
		reach := wide * (1 - 0.35*off*off)
		mid := e.between(-0.08, 0.08)
		bow := 0.05*l*off + e.between(-0.008, 0.008)*l
		strength := deep * (1 - 0.5*math.Abs(off)) * e.between(0.5, 1.1)
		e.cut(e.across(f, at, mid-reach, mid+reach, bow, 0.03*l), e.between(3.5, 6), strength, 0.3)
		if e.rng.IntN(2) == 0 { // a shorter branch
			from := mid + e.between(-0.6, 0.2)*reach
			e.cut(e.across(f, at+0.02*l, from, from+0.5*reach, bow, 0.03*l), 3, 0.5*strength, 0.4)
		}
	}
}

// fineLine is one of many short shallow lines of the back of the hand.
func (e engraver) fineLine(a *anatomy) {
	l := e.size
	f := *a.digits[hand.Digit(int(hand.IndexFinger)+e.rng.IntN(4))]
	t := e.between(-1.1, 0.85) * float64(f.bones[0])
	mid := e.between(-0.8, 0.8)
	e.cut(e.across(f, t, mid-0.25, mid+0.25, 0.02*l, 0.05*l), 4, e.between(0.5, 1.6), 0.45)
}

// palm engraves the creases of the fingers and of the palm. The basal and the
// PIP crease pass through the landmarks exactly at the digit's axis.
func (e engraver) palm(a *anatomy) {
	l := e.size
	for _, d := range hand.Digits[1:] {
		f := *a.digits[d]
		pip := float64(f.bones[0])
		through := func(t, bow, deep float64) {
			e.cut(e.across(f, t-bow, -1.02, 1.02, bow, 0.03*l), 8, deep, 0.3)
		}
		through(pip, -0.012*l, 22)
		e.cut(e.across(f, pip+0.06*l, -0.85, 0.8, -0.01*l, 0.03*l), 5, 11, 0.25)
		through(pip+float64(f.bones[1]), -0.01*l, 17)
		through(basalCrease*pip, -0.02*l, 20)
		if d == hand.Middle || d == hand.Ring {
			e.cut(e.across(f, (basalCrease+0.075)*pip, -0.9, 0.9, -0.02*l, 0.03*l), 5, 9, 0.2)
		}
		for range 9 {
			mid := e.between(-0.7, 0.7)
			e.cut(e.across(f, e.between(0.5, 1.5)*pip, mid-0.3, mid+0.3, 0, 0.05*l), 3.5, e.between(0.6, 1.8), 0.45)
		}
	}
	thumb := *a.digits[hand.Thumb]
	e.cut(e.across(thumb, float64(thumb.bones[0]), -1, 1, 0, 0.02*l), 6, 17, 0.06)
	e.cut(e.across(thumb, 0.12*l, -0.9, 0.9, 0, 0.02*l), 6, 14, 0.15)
	e.palmLines(a)
}

func (e engraver) palmLines(a *anatomy) {
	l := e.size
	index, little := a.digits[hand.IndexFinger], a.digits[hand.Little]
	near := func(p point, x, y float64) point {
		return p.Add(plane.Vec(plane.Millimetre(x*l), plane.Millimetre(y*l)))
	}
	radialEdge := near(index.mcp, -0.2, -0.28)
	curve := func(p, q, r, s point, wide, deep, fade float64) {
		line := append([]point{p}, bezier(p, q, r, s, plane.Millimetre(0.02*l))...)
		n := noise(e.rng.Uint64())
		for i := range line {
			line[i] = near(line[i], 0.012*n.at(float64(i)*0.13, 0), 0.012*n.at(0, float64(i)*0.13))
		}
		e.cut(line, wide, deep, fade)
	}
	curve(radialEdge, near(index.mcp, 0.25, -0.5), near(index.mcp, 0.42, -1.1), near(index.mcp, 0.3, -1.68), 7, 22, 0.12)
	curve(near(radialEdge, 0, 0.05), near(index.mcp, 0.4, -0.42), near(little.mcp, -0.4, -0.62), near(little.mcp, 0.0, -0.75), 7, 20, 0.15)
	curve(near(index.mcp, 0.32, 0.2), near(index.mcp, 0.4, -0.16), near(little.mcp, -0.5, -0.14), near(little.mcp, 0.3, -0.14), 7, 20, 0.15)
	for range 26 {
		p := near(point{}, e.between(-0.4, 0.85), e.between(-1.5, -0.3))
		q := near(p, e.between(-0.2, 0.2), e.between(-0.3, -0.05))
		curve(p, p.Towards(q, 0.3), p.Towards(q, 0.7), q, 4, e.between(1, 5), 0.45)
	}
}
