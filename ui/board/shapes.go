package board

import (
	"math"

	"ogive/geometry/hand"
	"ogive/imaging/palette"
	"ogive/ui/marking"
)

// mark draws one placed point. Each kind has a shape of its own; the marked
// place itself stays open to the eye or is a small ink point.
func (p *pen) mark(m marking.Placed, proposed bool) {
	q, u := p.at(m.At), p.size
	if !p.sees(q, 30) {
		return
	}
	switch m.Spot.Kind {
	case marking.ScalePoint:
		p.scaleEnd(q)
	case marking.JointPoint:
		p.solid(palette.Cores[palette.Joint], jointShape(m.Spot.Joint, q, markSize*u))
		p.point(q)
	case marking.SeedPoint:
		st := stroke{core: palette.Cores[palette.Border], width: 1.6}
		if proposed {
			st.width = 1
		}
		p.seed(q, m.Spot.N == 1, st)
	case marking.JunctionPoint:
		r := 0.8 * markSize * u
		p.solid(palette.Cores[palette.Junction], square(q, r))
		p.point(q)
	case marking.AxisPoint:
		p.hollow(stroke{core: palette.Cores[palette.Joint], width: 1.6}, disc(q, markSize*u))
		p.point(q)
	}
}

// jointShape is the outline of a joint's mark: a diamond for MCP, a disc for
// PIP, a square for DIP, a triangle for the tip.
func jointShape(j hand.Joint, q spot, r float64) []spot {
	switch j {
	case hand.MCP:
		return diamond(q, r)
	case hand.DIP:
		return square(q, r)
	case hand.Tip:
		return triangle(q, r)
	}
	return disc(q, r)
}

func diamond(q spot, r float64) []spot {
	return []spot{q.add(spot{0, -1.3 * r}), q.add(spot{1.3 * r, 0}), q.add(spot{0, 1.3 * r}), q.add(spot{-1.3 * r, 0})}
}

func square(q spot, r float64) []spot {
	return []spot{q.add(spot{-r, -r}), q.add(spot{r, -r}), q.add(spot{r, r}), q.add(spot{-r, r})}
}

func triangle(q spot, r float64) []spot {
	return []spot{q.add(spot{0, -1.3 * r}), q.add(spot{1.2 * r, 0.9 * r}), q.add(spot{-1.2 * r, 0.9 * r})}
}

// point is the marked place in the middle of a solid mark.
func (p *pen) point(q spot) {
	p.fill(palette.Ink, disc(q, math.Max(p.size, 0.9)))
}

// scaleEnd is an open cross with a ring: thin enough to be set on a tick.
func (p *pen) scaleEnd(q spot) {
	u := p.size
	st := stroke{core: palette.Cores[palette.Reference], width: 1.4}
	p.hollow(st, disc(q, 8*u))
	for _, v := range []spot{{1, 0}, {0, 1}, {-1, 0}, {0, -1}} {
		p.lines(st, []spot{q.add(v.times(2.5 * u)), q.add(v.times(12 * u))})
	}
}

// seed is a slanting cross on a border, an open upright one at the crown.
func (p *pen) seed(q spot, crown bool, st stroke) {
	u := p.size
	if crown {
		for _, v := range []spot{{1, 0}, {0, 1}, {-1, 0}, {0, -1}} {
			p.lines(st, []spot{q.add(v.times(2 * u)), q.add(v.times(6 * u))})
		}
		return
	}
	const d = 4
	p.lines(st, []spot{q.add(spot{-d * u, -d * u}), q.add(spot{d * u, d * u})},
		[]spot{q.add(spot{-d * u, d * u}), q.add(spot{d * u, -d * u})})
}

// brackets stand around the selected mark.
func (p *pen) brackets(q spot) {
	const reach, leg = 15, 6
	st := stroke{core: palette.Paper, width: 2}
	var paths [][]spot
	for _, c := range []spot{{-1, -1}, {1, -1}, {1, 1}, {-1, 1}} {
		corner := q.add(c.times(reach * p.scale))
		paths = append(paths, []spot{
			corner.sub(spot{c.x * leg * p.scale, 0}), corner, corner.sub(spot{0, c.y * leg * p.scale}),
		})
	}
	p.lines(st, paths...)
}
