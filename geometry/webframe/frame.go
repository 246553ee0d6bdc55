// Package webframe holds the frame of one web: the MCP and PIP joints of its two
// digits, from which its axis, index and depth are told.
//
//	f, ok := webframe.Of(marks, fit.Best, hand.ThirdWeb)
//	f.Index(crown), f.Depth(crown)
//	f.Middle(0.5)   // the place of index 0.5 midway between the digits
package webframe

import (
	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/geometry/scale"
)

// Frame is MCP and PIP of the two digits on the plane of the reference, radial
// digit first. In the palmar view creases stand for the joints.
type Frame struct{ MCP, PIP [2]plane.Position }

// Of is the frame of w on the plane of m. There is none unless all four joints
// are marked, each MCP apart from its PIP.
func Of(marks hand.Marks, m scale.Map, w hand.Web) (Frame, bool) {
	if !w.Valid() {
		return Frame{}, false
	}
	var f Frame
	radial, ulnar := w.Digits()
	for i, d := range [2]hand.Digit{radial, ulnar} {
		mcp, okM := marks.Joint(d, hand.MCP)
		pip, okP := marks.Joint(d, hand.PIP)
		if !okM || !okP {
			return Frame{}, false
		}
		f.MCP[i], f.PIP[i] = m.Position(mcp), m.Position(pip)
	}
	return f, f.sound()
}

func (f Frame) sound() bool {
	return f.MCP[0] != f.PIP[0] && f.MCP[1] != f.PIP[1] && f.Axis() != (plane.Vector[plane.Millimetre]{})
}

// Axis is the web's axis d: the direction of the sum of the unit vectors from
// MCP to PIP, distal positive.
func (f Frame) Axis() plane.Vector[plane.Millimetre] {
	return f.direction(0).Add(f.direction(1)).Direction()
}

func (f Frame) direction(i int) plane.Vector[plane.Millimetre] {
	return f.PIP[i].Sub(f.MCP[i]).Direction()
}

// Across is one long, square to the axis, and points to the ulnar digit.
func (f Frame) Across() plane.Vector[plane.Millimetre] {
	across := f.Axis().Turned(plane.RightAngle)
	if across.Dot(f.MCP[1].Sub(f.MCP[0])) < 0 {
		return across.Scale(-1)
	}
	return across
}

// Phalanx is the mean distance from MCP to PIP.
func (f Frame) Phalanx() plane.Millimetre {
	return (f.PIP[0].Distance(f.MCP[0]) + f.PIP[1].Distance(f.MCP[1])) / 2
}

// Apart is the distance between the two MCP joints, across the axis.
func (f Frame) Apart() plane.Millimetre { return f.MCP[1].Sub(f.MCP[0]).Dot(f.Across()) }

// Index is the index of a crown: 0 at the MCP joints, 1 at the PIP joints, the
// mean over both digits (Tonkin MA et al. J Hand Surg Am 2015;40:456-61).
func (f Frame) Index(crown plane.Position) plane.Ratio {
	sum := plane.Ratio(0)
	for i := range f.MCP {
		sum += plane.Ratio(crown.Sub(f.MCP[i]).Dot(f.direction(i)) / f.PIP[i].Distance(f.MCP[i]))
	}
	return sum / 2
}

// Depth is the distance along the axis from a crown to the middle between the
// PIP joints.
func (f Frame) Depth(crown plane.Position) plane.Millimetre {
	return f.PIP[0].Mid(f.PIP[1]).Sub(crown).Dot(f.Axis())
}

// Middle is the place of the given index on the line from the middle between the
// MCP joints to the middle between the PIP joints.
func (f Frame) Middle(index plane.Ratio) plane.Position {
	from, to := f.MCP[0].Mid(f.MCP[1]), f.PIP[0].Mid(f.PIP[1])
	low, high := f.Index(from), f.Index(to) // the index is linear in the place
	return from.Towards(to, float64((index-low)/(high-low)))
}

// Shifted is the crown moved along the axis to the given index.
func (f Frame) Shifted(crown plane.Position, index plane.Ratio) plane.Position {
	perMillimetre := f.Index(crown.Add(f.Axis())) - f.Index(crown) // the index is linear in the place
	return crown.Add(f.Axis().Scale(float64((index - f.Index(crown)) / perMillimetre)))
}

// Joints are the four joints: both MCP, then both PIP, radial first.
func (f Frame) Joints() []plane.Position {
	return []plane.Position{f.MCP[0], f.MCP[1], f.PIP[0], f.PIP[1]}
}
