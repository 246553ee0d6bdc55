package phantom

import (
	"slices"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
)

// outline is the closed silhouette of the hand, from the forearm over the thumb
// and the fingers back to the forearm.
func (a *anatomy) outline(step plane.Millimetre) []point {
	l := float64(a.size)
	thumb, index, little := a.digits[hand.Thumb], a.digits[hand.IndexFinger], a.digits[hand.Little]
	offset := func(p point, x, y float64) point {
		return p.Add(plane.Vec(plane.Millimetre(x*l), plane.Millimetre(y*l)))
	}
	wristR := offset(point{}, -0.52, -1.8)
	wristU := offset(wristR, 1.28, 0)
	forearmR, forearmU := offset(wristR, -0.3, -9), offset(wristU, 0.3, -9)

	line := []point{forearmR}
	line = append(line, bezier(forearmR, offset(forearmR, 0.1, 5), offset(wristR, 0.02, -0.8), wristR, step)...)
	base := thumb.flankPoint(0.25*thumb.bones[0], radial)
	line = append(line, bezier(wristR, offset(wristR, 0, 0.3), base.Add(thumb.axis.Scale(-0.6*l)), base, step)...)
	line = append(line, thumb.flankLine(0.25*thumb.bones[0], radial, step)...)
	line = append(line, thumb.tipLine(step)...)
	cleft := 0.5 * thumb.bones[0]
	line = append(line, reversed(thumb.flankLine(cleft, ulnar, step))...)
	from, to := thumb.flankPoint(cleft, ulnar), index.flankPoint(0.12*index.bones[0], radial)
	line = append(line, bezier(from, from.Add(thumb.axis.Scale(-0.46*l)), to.Add(index.axis.Scale(-0.44*l)), to, step)...)

	from0 := 0.12 * index.bones[0]
	for d := hand.IndexFinger; d <= hand.Little; d++ {
		f := a.digits[d]
		line = append(line, f.flankLine(from0, radial, step)...)
		line = append(line, f.tipLine(step)...)
		if d == hand.Little {
			break
		}
		web := a.webs[hand.Web(d)]
		line = append(line, reversed(f.flankLine(f.along(web.springing(radial)), ulnar, step))...)
		line = append(line, reversed(web.side(radial, step))...)
		line = append(line, web.side(ulnar, step)[1:]...)
		from0 = a.digits[d+1].along(web.springing(ulnar))
	}
	end := 0.45 * little.bones[0]
	line = append(line, reversed(little.flankLine(end, ulnar, step))...)
	edge := little.flankPoint(end, ulnar)
	heel := offset(plane.Pt(max(little.mcp.X+0.03*a.size, 0.95*a.size), 0), 0, -1.0)
	line = append(line, bezier(edge, edge.Add(little.axis.Scale(-0.62*l)), offset(heel, 0.06, 0.45), heel, step)...)
	line = append(line, bezier(heel, offset(heel, -0.06, -0.36), offset(wristU, 0.0, 0.3), wristU, step)...)
	line = append(line, bezier(wristU, offset(wristU, 0, -0.8), offset(forearmU, -0.1, 5), forearmU, step)...)
	return line
}

// border lists the true border of web w from the radial digit over the crown to
// the ulnar one, each end a little beyond the straight part.
func (a *anatomy) border(w hand.Web, step plane.Millimetre) []point {
	web := a.webs[w]
	r, u := w.Digits()
	line := reversed(a.borderSide(*a.digits[r], ulnar, web.springing(radial), step))
	line = append(line, reversed(web.side(radial, step))...)
	line = append(line, web.side(ulnar, step)[1:]...)
	return append(line, a.borderSide(*a.digits[u], radial, web.springing(ulnar), step)...)
}

// borderSide lists the border of flank s of f, the springing left out.
func (a *anatomy) borderSide(f digit, s flank, springing point, step plane.Millimetre) []point {
	from := f.along(springing)
	to := min(f.straight[s]+0.12*f.bones[0], f.tipStart())
	n := divisions(to-from, step)
	line := make([]point, 0, n)
	for i := 1; i <= n; i++ {
		line = append(line, f.flankPoint(from+(to-from)*plane.Millimetre(i)/plane.Millimetre(n), s))
	}
	return line
}

// bezier lists a cubic Bezier curve, its first point left out.
func bezier(p, q, r, s point, step plane.Millimetre) []point {
	n := divisions(p.Distance(q)+q.Distance(r)+r.Distance(s), step)
	line := make([]point, 0, n)
	for i := 1; i <= n; i++ {
		t := float64(i) / float64(n)
		a, b, c := p.Towards(q, t), q.Towards(r, t), r.Towards(s, t)
		ab, bc := a.Towards(b, t), b.Towards(c, t)
		line = append(line, ab.Towards(bc, t))
	}
	return line
}

func reversed(line []point) []point {
	slices.Reverse(line)
	return line
}
