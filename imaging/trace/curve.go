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
