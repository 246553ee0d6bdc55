package board

// rim is how far outside the frame lines are still drawn.
const rim = 40

// clipped is what of a path is in the frame or near it. At a high zoom most of a
// line lies far outside, and a pen would follow it there dash by dash. Points
// less than half a screen pixel from the one before are left out.
func (p *pen) clipped(path []spot) [][]spot {
	var out [][]spot
	var run []spot
	end := func() {
		if len(run) > 1 {
			out = append(out, run)
		}
		run = nil
	}
	for i := 1; i < len(path); i++ {
		a, b, ok := p.clippedSegment(path[i-1], path[i])
		if !ok {
			end()
			continue
		}
		if len(run) == 0 {
			run = append(run, a)
		} else if a != path[i-1] {
			end()
			run = append(run, a)
		}
		if b.sub(run[len(run)-1]).length() >= 0.5 || i == len(path)-1 {
			run = append(run, b)
		}
		if b != path[i] {
			end()
		}
	}
	end()
	return out
}

// clippedSegment is the part of a segment inside the frame and its rim (Liang
// YD, Barsky BA. A new concept and method for line clipping. ACM Trans Graph
// 1984;3:1-22).
func (p *pen) clippedSegment(a, b spot) (from, to spot, ok bool) {
	d := b.sub(a)
	t0, t1 := 0.0, 1.0
	low, high := -rim*p.scale, spot{float64(p.img.Rect.Dx()) + rim*p.scale, float64(p.img.Rect.Dy()) + rim*p.scale}
	for _, side := range [4][2]float64{{-d.x, a.x - low}, {d.x, high.x - a.x}, {-d.y, a.y - low}, {d.y, high.y - a.y}} {
		slope, room := side[0], side[1]
		switch {
		case slope == 0 && room < 0:
			return a, b, false
		case slope < 0:
			t0 = max(t0, room/slope)
		case slope > 0:
			t1 = min(t1, room/slope)
		}
	}
	if !(t0 <= t1) {
		return a, b, false
	}
	from, to = a, b
	if t0 > 0 {
		from = a.to(b, t0)
	}
	if t1 < 1 {
		to = a.to(b, t1)
	}
	return from, to, true
}
