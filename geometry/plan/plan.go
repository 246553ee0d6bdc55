// Package plan places the arch of a web that is yet to be made, on the
// photograph of a hand whose fingers are still joined.
//
//	p, err := plan.FromOtherHand(ground, hand.ThirdWeb, other)   // or plan.FromHand
//	a := plan.Dragged(p.Arch, plan.SpanRight, cursor)            // a handle follows the cursor
//	f := plan.Read(a, hand.ThirdWeb, ground, beside)             // index, span ... and verdicts
//
// The arch is one of the family of package arch, on the plane of the best map of
// the photograph's scale. Nothing here has been cut: the figures tell what the
// drawn web would measure.
package plan

import (
	"ogive/geometry/hand"
	"ogive/geometry/norms"
	"ogive/geometry/plane"
	"ogive/geometry/reading"
	"ogive/geometry/scale"
)

// Ground is the photograph that is drawn on: its marks and its scale.
type Ground struct {
	Marks hand.Marks
	// Absent are the joints said not to be there or not to be seen.
	Absent map[hand.Digit]map[hand.Joint]bool
	Fit    scale.Fit
}

// Beside is what a planned web is judged by.
type Beside struct {
	Table norms.Table
	// Webs are the webs of the same hand as they were read.
	Webs []reading.Web
	// Other is the same web of the other hand, nil where it was not read.
	Other *reading.Web
}

// Figures are what the planned web would measure. A figure that can't be told
// is nil, and a remark says why.
type Figures struct {
	Web hand.Web

	Index      *plane.Estimate[plane.Ratio]
	Depth      *plane.Estimate[plane.Millimetre]
	Span       *plane.Estimate[plane.Millimetre] // nil for a V, which has none
	Rise       *plane.Estimate[plane.Millimetre] // nil for a V
	RiseToSpan *plane.Estimate[plane.Ratio]      // nil for a V
	Flare      *plane.Estimate[plane.Angle]
	CrownAngle *plane.Estimate[plane.Angle]

	// Verdicts judge the index by the published band, the span by the other webs
	// of the same hand, and both by the other hand.
	Verdicts []norms.Verdict
	// Patterns say how shape and place fit what sources say of this web.
	Patterns []Pattern
	Remarks  []string
}

// Pattern is what one source says of the shape or the order of webs, beside the
// planned web.
type Pattern struct {
	// Figure is "shape" or "order".
	Figure string
	// Says is the source's value in words, Source where it comes from.
	Says, Source string
	// Agrees reports whether the planned web is as the source says.
	Agrees bool
	// Sure is false where the order of two webs lies within their uncertainty.
	Sure bool
}
