package reading

import (
	"slices"

	"ogive/geometry/arch"
	"ogive/geometry/hand"
	"ogive/geometry/norms"
	"ogive/geometry/plane"
	"ogive/geometry/scale"
)

// Reading is what one observer's marks on one photograph come to.
type Reading struct {
	Side     hand.Side
	View     hand.View
	Method   scale.Method
	PerPixel plane.Estimate[plane.Millimetre]
	// Warnings concern the scale and the photograph as a whole.
	Warnings []string
	// Usual are those of Warnings that are true of every scale of its kind.
	Usual []string
	Webs  []Web
}

// Unusual are the warnings that say that something is amiss or contradicts
// something else: what must not be overlooked.
func (r Reading) Unusual() []string {
	return slices.DeleteFunc(slices.Clone(r.Warnings), func(w string) bool { return slices.Contains(r.Usual, w) })
}

// Web is the reading of one web. A figure that can't be computed is nil, and a
// warning says why.
type Web struct {
	Web hand.Web

	Index       *plane.Estimate[plane.Ratio]
	Depth       *plane.Estimate[plane.Millimetre]
	Span        *plane.Estimate[plane.Millimetre]
	Rise        *plane.Estimate[plane.Millimetre]
	RiseToSpan  *plane.Estimate[plane.Ratio]
	Flare       *plane.Estimate[plane.Angle]
	CrownAngle  *plane.Estimate[plane.Angle]
	Slope       *plane.Estimate[plane.Angle]
	CrownRadius *plane.Estimate[plane.Millimetre]
	Area        *plane.Estimate[plane.SquareMillimetre]
	// Widths are taken from the trace alone, at fixed distances from the crown.
	Widths []Width

	// Shape is zero where no arch was fitted.
	Shape     arch.Shape
	ShapeSure bool
	// ShapeAlso are the shapes that explain the border about as well, where the
	// shape is not sure.
	ShapeAlso []arch.Shape
	FitRMS    plane.Millimetre

	// Where things lie on the photograph, for drawing.
	Crown     plane.PixelPoint
	Springing [2]plane.PixelPoint
	Edge      []plane.PixelPoint
	Curve     []plane.PixelPoint // the fitted arch as a polyline, borders included

	Verdicts []norms.Verdict
	// Warnings are what the user must know before relying on the figures.
	Warnings []string
	// Lacks say why lesser figures are not given.
	Lacks []string
}

// Remarks are the warnings and the reasons for figures that are not given.
func (w Web) Remarks() []string { return append(slices.Clone(w.Warnings), w.Lacks...) }

// Width is the distance between the two borders, square to the arch's axis, at
// the distance Distal from the crown.
type Width struct {
	Distal plane.Millimetre
	Width  plane.Estimate[plane.Millimetre]
}
