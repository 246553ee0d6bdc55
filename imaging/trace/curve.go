package trace

import (
	"math"

	"ogive/geometry/plane"
)

// curve is a line of points in order from the first click to the last.
type curve []point

// smoothed is the curve after so many passes of a 1-2-1 mean; the ends keep
// their place.
func (c curve) smoothed(passes int) curve {
	c = append(curve(nil), c...)
	for range passes {
		before := c[0]
		for i := 1; i < len(c)-1; i++ {
			here := c[i]
			c[i] = plane.Pt((before.X+2*here.X+c[i+1].X)/4, (before.Y+2*here.Y+c[i+1].Y)/4)
			before = here
		}
	}
	return c
}

func (c curve) length() float64 {
	var l float64
	for i := 1; i < len(c); i++ {
		l += float64(c[i].Distance(c[i-1]))
	}
	return l
}

// extended goes on beyond both ends as the curve runs near them. The ends
// themselves are left out: clicks that are a little off pull them aside.
func (c curve) extended(leave, look int, by float64) curve {
	leave = min(leave, (len(c)-2)/4)
	look = min(look, (len(c)-1)/2-leave)
	beyond := func(end, inner point) point { return end.Add(end.Sub(inner).Direction().Scale(by)) }
	kept := c[leave : len(c)-leave]
	n := len(kept) - 1
	out := curve{beyond(kept[0], kept[look])}
	out = append(out, kept...)
	return append(out, beyond(kept[n], kept[n-look]))
}

// within leaves out what lies distal of the clicks at either end.
func (c curve) within(f frame) curve {
	out := func(p point, side int) bool {
		along, _ := f.at(p)
		return along > f.level[side]+0.5
	}
	for len(c) > 8 && out(c[0], 0) {
		c = c[1:]
	}
	for len(c) > 8 && out(c[len(c)-1], 1) {
		c = c[:len(c)-1]
	}
	return c
}

// resampled has its points about step pixels apart along the curve, evenly.
func (c curve) resampled(step float64) curve {
	total := c.length()
	n := max(8, int(total/step+0.5))
	out := make(curve, 0, n+1)
	out = append(out, c[0])
	gone, next := 0.0, total/float64(n)
	for i := 1; i < len(c); i++ {
		d := float64(c[i].Distance(c[i-1]))
		for d > 0 && gone+d >= next*float64(len(out)) && len(out) < n {
			out = append(out, c[i-1].Towards(c[i], (next*float64(len(out))-gone)/d))
		}
		gone += d
	}
	return append(out, c[len(c)-1])
}

// normals are the unit vectors square to the curve, towards the drape.
func (c curve) normals(turn float64) []vector {
	n := make([]vector, len(c))
	for i := range c {
		a, b := c[max(0, i-2)], c[min(len(c)-1, i+2)]
		t := b.Sub(a).Direction()
		n[i] = vector{X: plane.Pixel(-turn) * t.Y, Y: plane.Pixel(turn) * t.X}
	}
	return n
}

// moved is the curve with every point set off along its normal. Points that
// overtake a neighbour where the normals cross are left out.
func (c curve) moved(normals []vector, offsets []float64) curve {
	out := make(curve, 0, len(c))
	for i, p := range c {
		q := p.Add(normals[i].Scale(offsets[i]))
		if len(out) > 0 {
			onward := c[min(len(c)-1, i+1)].Sub(c[max(0, i-1)])
			if q.Sub(out[len(out)-1]).Dot(onward) <= 0 {
				continue
			}
		}
		out = append(out, q)
	}
	return out
}

// reach is how far the drape extends along each normal, to the border opposite;
// far where there is none.
func (c curve) reach(normals []vector, far float64) []float64 {
	r := make([]float64, len(c))
	for i, p := range c {
		r[i] = far
		for j := 0; j < len(c); j += 4 {
			v := c[j].Sub(p)
			off := float64(v.Dot(normals[i]))
			if off <= 0 || off >= r[i] {
				continue
			}
			if skew := float64(v.Cross(normals[i])); skew < 0.35*off+1 && skew > -0.35*off-1 && (j > i+8 || j < i-8) {
				r[i] = off
			}
		}
	}
	return r
}

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
// missing there is no more than blur takes from a sharp corner: where the gap is
// hardly wider than the blur it can't be seen whether it ends in a point, and
// the sides are the best that is known. A corner that is rounder stays.
func (c curve) sharpened(blur, step float64) curve {
	a, ok := c.apex(blur / step)
	if !ok {
		return c
	}
	missing := math.Inf(1)
	for _, p := range c[a.from : a.to+1] {
		missing = min(missing, float64(p.Distance(a.corner)))
	}
	if 2*missing*math.Tan(a.half) > 3*step+0.9*blur || missing > 12*step+2*blur {
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
