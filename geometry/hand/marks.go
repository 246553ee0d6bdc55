package hand

import "ogive/geometry/plane"

// DefaultClickSD is the standard deviation of placing a point, in pixels, that
// is assumed where an observer's own is not known (common practice, no source).
const DefaultClickSD plane.Pixel = 2

// Marks is everything one observer placed on one photograph, in pixels of the
// upright photograph. The scale is marked apart: see package scale.
type Marks struct {
	Side    Side
	View    View
	ClickSD plane.Pixel
	Joints  map[Digit]map[Joint]plane.PixelPoint
	Webs    []WebMarks
	// Junctions are marked in the web view only.
	Junctions []JunctionMarks
}

// WebMarks is the border of one web: Edge where it has been traced, in order
// from one finger past the crown to the other; else the three Seeds (border,
// crown, border) from which a tracer makes it.
type WebMarks struct {
	Web   Web
	Edge  []plane.PixelPoint
	Seeds []plane.PixelPoint
}

// JunctionMarks is the junction between glabrous and pigmented skin of one web:
// points along it, and two points on the digit's long axis.
type JunctionMarks struct {
	Web  Web
	Line []plane.PixelPoint
	Axis [2]plane.PixelPoint
}

// Joint is the place of joint j of digit d, if it was marked.
func (m Marks) Joint(d Digit, j Joint) (plane.PixelPoint, bool) {
	p, ok := m.Joints[d][j]
	return p, ok
}
