package markshapes

// rim is how far outside the picture lines are still drawn, in units.
const rim = 40

// Seen is what of a path is in the picture or near it. Far outside, where most
// of a line may lie at a high zoom, a pen would follow it dash by dash. Points
// less than half a pixel from the one before are left out.
func (p *Pen) Seen(path []Spot) [][]Spot {
	var out [][]Spot
	var run []Spot
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
		if b.Sub(run[len(run)-1]).Length() >= 0.5 || i == len(path)-1 {
			run = append(run, b)
		}
		if b != path[i] {
			end()
		}
	}
	end()
	return out
}

// clippedSegment is the part of a segment inside the picture and its rim (Liang
// YD, Barsky BA. A new concept and method for line clipping. ACM Trans Graph
// 1984;3:1-22).
func (p *Pen) clippedSegment(a, b Spot) (from, to Spot, ok bool) {
	d := b.Sub(a)
	t0, t1 := 0.0, 1.0
	low, high := -rim*p.unit, Spot{float64(p.img.Rect.Dx()) + rim*p.unit, float64(p.img.Rect.Dy()) + rim*p.unit}
	for _, side := range [4][2]float64{{-d.X, a.X - low}, {d.X, high.X - a.X}, {-d.Y, a.Y - low}, {d.Y, high.Y - a.Y}} {
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
		from = a.To(b, t0)
	}
	if t1 < 1 {
		to = a.To(b, t1)
	}
	return from, to, true
}
