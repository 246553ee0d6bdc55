// Package propose finds the webs of a hand on a photograph without clicks, so
// that their borders can be proposed for tracing.
//
//	for web, seeds := range propose.Webs(photograph, marks) {
//		border, err := trace.Web(photograph, seeds)
//	}
//
// Where the MCP and PIP joints of both digits are marked, they say where skin
// and drape must lie and the gap between the fingers is followed down to its
// bottom. Where they are not, the hand is told from the drape on a small copy
// of the photograph and its outline gives fingers and gaps. A web that is not
// clearly seen is left out: joined fingers have no gap, and a wrong proposal
// costs more than a missing one. The method is this project's own.
package propose

import (
	"maps"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/imaging/photo"
)

type (
	point  = plane.PixelPoint
	vector = plane.Vector[plane.Pixel]
)

// Webs proposes seeds for tracing the second to fourth web: a point on the
// border of the radial digit, the crown, a point on the border of the ulnar
// digit, each within a few pixels of what it means. Webs already among the
// marks are proposed too. There is none for the web view.
func Webs(p *photo.Photograph, m hand.Marks) map[hand.Web][3]plane.PixelPoint {
	found := map[hand.Web][3]plane.PixelPoint{}
	if m.View != hand.Dorsal && m.View != hand.Palmar {
		return found
	}
	known := map[hand.Web]phalanges{}
	for _, w := range measured {
		if f, ok := between(m, w); ok {
			known[w] = f
		}
	}
	propose := func(fingers map[hand.Web]phalanges, coarse glance) {
		for _, w := range measured {
			if f, ok := fingers[w]; ok {
				if seeds, ok := f.seeds(p, coarse); ok {
					found[w] = seeds
				}
			}
		}
	}
	propose(known, around(p, known))
	if len(known) < len(measured) {
		seen, g := outlined(p, m.Side, m.View)
		maps.DeleteFunc(seen, func(w hand.Web, _ phalanges) bool { _, ok := known[w]; return ok })
		propose(seen, g)
	}
	return found
}

var measured = []hand.Web{hand.SecondWeb, hand.ThirdWeb, hand.FourthWeb}

// phalanges are the axes of the proximal phalanges beside a web, radial first.
type phalanges struct{ mcp, pip [2]point }

func between(m hand.Marks, w hand.Web) (phalanges, bool) {
	var f phalanges
	radial, ulnar := w.Digits()
	for i, d := range [2]hand.Digit{radial, ulnar} {
		mcp, okM := m.Joint(d, hand.MCP)
		pip, okP := m.Joint(d, hand.PIP)
		if !okM || !okP || !mcp.Finite() || !pip.Finite() {
			return f, false
		}
		f.mcp[i], f.pip[i] = mcp, pip
	}
	return f, f.length() > shortest && f.mcp[0].Distance(f.mcp[1]) > shortest/4
}

// shortest is the length of a phalanx, in pixels, below which nothing can be
// told.
const shortest = 20

// length is the mean length of the two phalanges.
func (f phalanges) length() float64 {
	return float64(f.mcp[0].Distance(f.pip[0])+f.mcp[1].Distance(f.pip[1])) / 2
}

// at is the place at level s (0 PIP, 1 MCP) and the part t of the way from the
// radial to the ulnar axis.
func (f phalanges) at(s, t float64) point {
	return f.pip[0].Towards(f.mcp[0], s).Towards(f.pip[1].Towards(f.mcp[1], s), t)
}
