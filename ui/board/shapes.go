package board

import (
	"ogive/imaging/markshapes"
	"ogive/imaging/palette"
	"ogive/ui/marking"
)

// mark draws one placed point. Each kind has a shape of its own; the marked
// place itself stays open to the eye or is a small ink point.
func (p *pen) mark(m marking.Placed, proposed bool) {
	q, u := p.at(m.At), p.size*p.room[m.Spot]
	if !p.sees(q, 30) {
		return
	}
	switch m.Spot.Kind {
	case marking.ScalePoint:
		p.scaleEnd(q, u)
	case marking.JointPoint:
		p.Joint(m.Spot.Joint, q, markSize*u)
	case marking.SeedPoint:
		st := stroke{Core: palette.Cores[palette.Border], Width: 1.6}
		if proposed {
			st.Width = 1
		}
		if m.Spot.N == 1 {
			p.Lines(st, markshapes.OpenCross(q, 2*u, 6*u)...)
		} else {
			p.Lines(st, markshapes.Saltire(q, 4*u)...)
		}
	case marking.JunctionPoint:
		r := 0.8 * markSize * u
		p.Solid(palette.Cores[palette.Junction], markshapes.Quadrate(q, r))
		p.Point(q, markSize*u)
	case marking.AxisPoint:
		p.Ring(stroke{Core: palette.Cores[palette.Joint], Width: 1.6}, markshapes.Disc(q, markSize*u))
		p.Point(q, markSize*u)
	}
}

// scaleEnd is an open cross with a ring: thin enough to be set on a tick.
func (p *pen) scaleEnd(q spot, u float64) {
	st := stroke{Core: palette.Cores[palette.Reference], Width: 1.2, Thin: true}
	p.Ring(st, markshapes.Disc(q, 8*u))
	p.Lines(st, markshapes.OpenCross(q, 2.5*u, 12*u)...)
}

const bracketReach = 15 // in units of Fyne's

// brackets stand around the selected mark, fine and open so that what lies
// around it can still be read.
func (p *pen) brackets(q spot, room float64) {
	const leg = 5
	reach := bracketReach * max(room, 0.7)
	st := stroke{Core: palette.Paper, Width: 1.2, Thin: true}
	var paths [][]spot
	for _, c := range []spot{xy(-1, -1), xy(1, -1), xy(1, 1), xy(-1, 1)} {
		corner := q.Add(c.Times(reach * p.scale))
		paths = append(paths, []spot{
			corner.Sub(xy(c.X*leg*p.scale, 0)), corner, corner.Sub(xy(0, c.Y*leg*p.scale)),
		})
	}
	p.Lines(st, paths...)
}
