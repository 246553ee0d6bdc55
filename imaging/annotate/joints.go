package annotate

import (
	"math"

	"ogive/geometry/hand"
)

// jointRadius is the size of a joint's mark.
func (s *sheet) jointRadius() float64 { return 0.4 * s.em }

// jointShape is the outline of a joint's mark: a diamond for MCP, a disc for
// PIP, a square for DIP, a triangle for the tip.
func jointShape(j hand.Joint, q spot, r float64) []spot {
	switch j {
	case hand.MCP:
		return []spot{q.add(spot{0, -1.3 * r}), q.add(spot{1.3 * r, 0}), q.add(spot{0, 1.3 * r}), q.add(spot{-1.3 * r, 0})}
	case hand.DIP:
		return []spot{q.add(spot{-r, -r}), q.add(spot{r, -r}), q.add(spot{r, r}), q.add(spot{-r, r})}
	case hand.Tip:
		return []spot{q.add(spot{0, -1.3 * r}), q.add(spot{1.2 * r, 0.9 * r}), q.add(spot{-1.2 * r, 0.9 * r})}
	}
	return disc(q, r)
}

// drawJoint draws one joint's mark; the ink point in it is the marked place.
func (s *sheet) drawJoint(j hand.Joint, q spot, r float64) {
	s.solid(cores[kindJoint], jointShape(j, q, r))
	s.trace(disc(q, math.Max(0.16*r, 0.8)))
	s.gg.ClosePath()
	s.gg.SetColor(ink)
	s.gg.Fill()
}

func (sc *scene) drawJoints() {
	for _, f := range hand.Digits {
		for _, j := range hand.Joints {
			if p, ok := sc.marks.Joint(f, j); ok && sc.near(p) {
				sc.drawJoint(j, sc.at(p), sc.jointRadius())
			}
		}
	}
}

// drawAxes draws the digits' axes from MCP to PIP, with marks at each quarter
// so that the index can be checked by eye.
func (sc *scene) drawAxes() {
	var paths [][]spot
	for _, f := range hand.Digits {
		mcp, pip, ok := sc.axis(f)
		if !ok {
			continue
		}
		paths = append(paths, []spot{mcp, pip})
		across := pip.sub(mcp).unit().square()
		for quarter := 1; quarter <= 3; quarter++ {
			half := 0.28 * sc.pen
			if quarter == 2 {
				half = 0.5 * sc.pen
			}
			q := mcp.to(pip, float64(quarter)/4)
			paths = append(paths, []spot{q.add(across.times(-half)), q.add(across.times(half))})
		}
	}
	sc.lines(stroke{core: cores[kindJoint], width: sc.fine()}, paths...)
}

// fine is the width of a fine line's core, bold that of a bold one.
func (s *sheet) fine() float64 { return math.Max(0.1*s.pen, 1) }
func (s *sheet) bold() float64 { return math.Max(0.32*s.pen, 3) }
