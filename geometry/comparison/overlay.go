package comparison

import (
	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/geometry/reading"
)

// Overlay is both arches as they lie over each other, for a drawing at true
// proportion: millimetres on the plane of the operated hand, the operated crown
// at the origin, the web opening upwards (y points down, as on a picture). The
// other arch is mirrored and brought to the operated hand's size, as its Ghost
// is. A line is empty where no arch was fitted.
type Overlay struct {
	Operated, Other []plane.Position
	OtherCrown      plane.Position
}

// overlay turns the operated web and its ghost so that its axis points upwards.
func (p *pair) overlay(w reading.Web, g *Ghost) *Overlay {
	var axis plane.Vector[plane.Millimetre]
	radial, ulnar := w.Web.Digits()
	for _, d := range []hand.Digit{radial, ulnar} {
		if j, ok := p.operated.chain(d, hand.MCP, hand.PIP); ok {
			at := p.operated.Scale.Best.Positions(j)
			axis = axis.Add(at[1].Sub(at[0]).Direction())
		}
	}
	up := axis.Direction()
	if up.Norm() == 0 {
		return nil
	}
	right := up.Left().Scale(-1)
	crown := p.operated.Scale.Best.Position(w.Crown)
	into := func(q plane.Position) plane.Position {
		v := q.Sub(crown)
		return plane.Pt(v.Dot(right), -v.Dot(up))
	}
	out := &Overlay{OtherCrown: into(g.Crown)}
	for _, q := range p.operated.Scale.Best.Positions(w.Curve) {
		out.Operated = append(out.Operated, into(q))
	}
	for _, q := range g.Curve {
		out.Other = append(out.Other, into(q))
	}
	return out
}
