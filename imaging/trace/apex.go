package trace

import (
	"math"

	"ogive/geometry/plane"
)

// apex is a corner of the border: where it lies on the curve, and where the two
// sides would meet if they ran on.
type apex struct {
	at, from, to int
	corner       point
	half         float64 // half the angle between the sides, radians
}

// leastTurn is the turn above which a corner is worth carrying on: of a blunter
// one, such as a gothic arch has, blur takes less than a pixel or two.
const leastTurn = 110 * math.Pi / 180

// apex is the sharpest corner of the curve for a blur in points. The narrower
// the gap the further its tip is out of sight, and the longer the sides must be
// looked at to tell where they are heading.
func (c curve) apex(blur float64) (apex, bool) {
	a := apex{from: 7 + int(2*blur)}
	sharpest := leastTurn
	for i, off := a.from, a.from; i < len(c)-off; i++ {
		if turn := float64(c[i].Sub(c[i-off]).AngleTo(c[i+off].Sub(c[i]))); turn > sharpest {
			sharpest, a.at = turn, i
		}
	}
	if a.at == 0 {
		return a, false
	}
	flare := math.Tan((math.Pi - sharpest) / 2)
	off := int(3 + 1.5*blur + 0.6/max(flare, 0.06))
	side := int(max(6, min(20, 2.5/max(flare, 0.01))))
	a.from, a.to = a.at-off, a.at+off
	if a.from < side || a.to+side >= len(c) {
		return a, false
	}
	p, u := c[a.from-side : a.from+1].line()
	q, v := c[a.to : a.to+side+1].line()
	cross := u.Cross(v)
	if cross == 0 {
		return a, false
	}
	a.corner = p.Add(u.Scale(float64(q.Sub(p).Cross(v) / cross)))
	a.half = (math.Pi - float64(u.AngleTo(v))) / 2
	return a, q.Sub(a.corner).Dot(v) > 0 && a.corner.Sub(p).Dot(u) > 0
}

// line is the centroid and the direction of the curve's points.
func (c curve) line() (point, vector) {
	var m vector
	for _, p := range c {
		m = m.Add(p.Sub(c[0]))
	}
	centre := c[0].Add(m.Scale(1 / float64(len(c))))
	var xx, xy, yy float64
	for _, p := range c {
		d := p.Sub(centre)
		xx += float64(d.X * d.X)
		xy += float64(d.X * d.Y)
		yy += float64(d.Y * d.Y)
	}
	sin, cos := math.Sincos(math.Atan2(2*xy, xx-yy) / 2)
	u := vector{X: plane.Pixel(cos), Y: plane.Pixel(sin)}
	if u.Dot(c[len(c)-1].Sub(c[0])) < 0 {
		u = u.Scale(-1)
	}
	return centre, u
}

// sharpened carries the sides of an apex on to where they meet, if what is
// missing there is no more than blur takes from a sharp corner, and if the
// photograph, of which share tells how much of a place is drape, shows at least
// half of what a blurred tip would. A corner that is rounder stays.
func (c curve) sharpened(blur, step float64, share func(point) float64) curve {
	a, ok := c.apex(blur / step)
	if !ok {
		return c
	}
	missing, tip := math.Inf(1), a.corner
	for _, p := range c[a.from : a.to+1] {
		if d := float64(p.Distance(a.corner)); d < missing {
			missing, tip = d, p
		}
	}
	if 2*missing*math.Tan(a.half) > 3*step+0.9*blur || missing > 12*step+2*blur {
		return c
	}
	var seen, due float64
	for _, t := range []float64{0.1, 0.25, 0.4, 0.55} {
		seen += share(tip.Towards(a.corner, t))
		near, _ := bell((1 - t) * missing * math.Tan(a.half) / blur)
		due += 2*near - 1
	}
	if seen < due/2 {
		return c
	}
	out := append(curve(nil), c[:a.from+1]...)
	for _, side := range [][2]point{{c[a.from], a.corner}, {a.corner, c[a.to]}} {
		n := max(1, int(math.Round(float64(side[0].Distance(side[1]))/step)))
		for i := 1; i <= n; i++ {
			out = append(out, side[0].Towards(side[1], float64(i)/float64(n)))
		}
	}
	return append(out, c[a.to+1:]...)
}
