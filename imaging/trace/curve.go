package trace

import "ogive/geometry/plane"

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

// unbent undoes what blur does to a bent border: the middle of a blurred edge
// moves towards the inner side of the bend, by half the blur's variance times
// the curvature.
func (c curve) unbent(turn, blur float64) curve {
	even := c.smoothed(2 + int(blur*blur))
	normals := even.normals(turn)
	offsets := make([]float64, len(c))
	for i := 1; i < len(c)-1; i++ {
		a, b := even[i].Sub(even[i-1]), even[i+1].Sub(even[i])
		if a.Norm()+b.Norm() == 0 {
			continue
		}
		bend := b.Direction().Sub(a.Direction()).Dot(normals[i]) / ((a.Norm() + b.Norm()) / 2)
		offsets[i] = -max(-0.5*blur, min(0.5*blur, float64(bend)*blur*blur/2))
	}
	return c.moved(normals, offsets)
}
