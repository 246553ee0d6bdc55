package guide

import (
	"image/color"
	"math"

	"ogive/geometry/hand"
	"ogive/imaging/palette"
	"ogive/ui/look"
	"ogive/ui/marking"
)

// marks draws every spot of the step of the wanted one, or of all steps when
// none is wanted.
func (d pen) marks(s marking.State, wanted *marking.Spot) {
	for _, p := range s.Order() {
		if wanted != nil && (p.Step() != wanted.Step() || p == *wanted) || wanted == nil && p.Kind == marking.ScalePoint {
			continue
		}
		at := d.f.at(place(s, p))
		_, placed := s.Points[p]
		switch {
		case placed:
			d.mark(p, at)
		case s.Skipped[p]:
			d.cross(at, 3)
		default:
			d.SetColor(look.Colour(look.SkinLine))
			d.DrawCircle(at.x, at.y, 2*d.px)
			d.Fill()
		}
	}
	if wanted != nil {
		d.want(*wanted, d.f.at(place(s, *wanted)))
	}
}

// mark draws a placed spot with the shape and the colour that it has on the
// photograph: a light core in an ink casing.
func (d pen) mark(p marking.Spot, at spot) {
	const r = 4.2
	switch p.Kind {
	case marking.ScalePoint:
		d.cased(palette.Reference, func() {
			d.DrawCircle(at.x, at.y, 4.5*d.px)
			d.openCross(at, 2, 7.5)
		})
	case marking.JointPoint:
		d.solid(palette.Joint, jointShape(p.Joint, at, r*d.px))
	case marking.SeedPoint:
		d.cased(palette.Border, func() {
			if p.N == 1 {
				d.openCross(at, 1.5, 6)
				return
			}
			d.saltire(at, r*d.px)
		})
	case marking.AxisPoint:
		d.cased(palette.Joint, func() { d.DrawCircle(at.x, at.y, r*d.px) })
	default:
		d.solid(palette.Junction, jointShape(hand.DIP, at, 0.85*r*d.px))
	}
}

// jointShape is a diamond for MCP, a disc for PIP, a square for DIP, a triangle
// for the tip.
func jointShape(j hand.Joint, q spot, r float64) []spot {
	switch j {
	case hand.MCP:
		return []spot{{q.x, q.y - 1.3*r}, {q.x + 1.3*r, q.y}, {q.x, q.y + 1.3*r}, {q.x - 1.3*r, q.y}}
	case hand.DIP:
		return []spot{{q.x - r, q.y - r}, {q.x + r, q.y - r}, {q.x + r, q.y + r}, {q.x - r, q.y + r}}
	case hand.Tip:
		return []spot{{q.x, q.y - 1.3*r}, {q.x + 1.2*r, q.y + 0.9*r}, {q.x - 1.2*r, q.y + 0.9*r}}
	}
	var disc []spot
	const n = 24
	for i := range n {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / n)
		disc = append(disc, spot{q.x + r*cos, q.y + r*sin})
	}
	return disc
}

// solid fills a shape that is already in device pixels.
func (d pen) solid(kind palette.Kind, shape []spot) {
	for _, q := range shape {
		d.LineTo(q.x, q.y)
	}
	d.ClosePath()
	d.SetColor(look.Casing())
	d.SetLineWidth(3 * d.px)
	d.StrokePreserve()
	d.SetColor(look.Mark(kind))
	d.Fill()
}

// cased strokes a path, light on a wider casing.
func (d pen) cased(kind palette.Kind, path func()) {
	for _, pass := range []struct {
		width float64
		ink   color.Color
	}{{4.4, look.Casing()}, {1.8, look.Mark(kind)}} {
		path()
		d.SetColor(pass.ink)
		d.SetLineWidth(pass.width * d.px)
		d.Stroke()
	}
}

// openCross is an upright cross that leaves its middle open.
func (d pen) openCross(at spot, from, to float64) {
	for _, v := range []spot{{1, 0}, {0, 1}, {-1, 0}, {0, -1}} {
		d.MoveTo(at.x+v.x*from*d.px, at.y+v.y*from*d.px)
		d.LineTo(at.x+v.x*to*d.px, at.y+v.y*to*d.px)
	}
}

func (d pen) saltire(at spot, r float64) {
	d.MoveTo(at.x-r, at.y-r)
	d.LineTo(at.x+r, at.y+r)
	d.MoveTo(at.x-r, at.y+r)
	d.LineTo(at.x+r, at.y-r)
}

func (d pen) cross(at spot, r float64) {
	d.saltire(at, r*d.px)
	d.SetColor(look.Colour(look.SkinLine))
	d.SetLineWidth(1.2 * d.px)
	d.Stroke()
}

// want rings the wanted spot: a ring with four rays, which no placed mark has.
func (d pen) want(p marking.Spot, at spot) {
	for _, pass := range []struct {
		width float64
		ink   color.Color
	}{{6.5, look.Colour(look.Card)}, {3, look.Colour(look.Accent)}} {
		d.SetColor(pass.ink)
		d.SetLineWidth(pass.width * d.px)
		d.DrawCircle(at.x, at.y, ringRadius*d.px)
		d.Stroke()
		for i := range 4 {
			sin, cos := math.Sincos(math.Pi/4 + math.Pi/2*float64(i))
			d.DrawLine(at.x+cos*ringRadius*d.px, at.y+sin*ringRadius*d.px, at.x+cos*20*d.px, at.y+sin*20*d.px)
			d.Stroke()
		}
	}
	d.mark(p, at)
}
