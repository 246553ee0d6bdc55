package annotate

import (
	"math"

	"ogive/geometry/hand"
	"ogive/imaging/markshapes"
)

// jointRadius is the size of a joint's mark.
func (s *sheet) jointRadius() float64 { return 0.4 * s.em }

func (sc *scene) drawJoints() {
	for _, f := range hand.Digits {
		for _, j := range hand.Joints {
			if p, ok := sc.marks.Joint(f, j); ok && sc.near(p) {
				sc.Joint(j, sc.at(p), sc.jointRadius())
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
		paths = append(paths, markshapes.Axis(mcp, pip, 0.28*sc.pen, 0.5*sc.pen)...)
	}
	sc.Lines(stroke{Core: cores[kindJoint], Width: sc.fine()}, paths...)
}

// fine is the width of a fine line's core, bold that of a bold one.
func (s *sheet) fine() float64 { return math.Max(0.1*s.pen, 1) }
func (s *sheet) bold() float64 { return math.Max(0.32*s.pen, 3) }
