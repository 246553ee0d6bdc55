package report

import (
	"ogive/geometry/plane"
	"ogive/geometry/reading"
)

// column is one figure of a web under the name that JSON and CSV give it; the
// name ends in the unit.
type column struct {
	name, unit string
	of         func(reading.Web) *estimate
}

// columns are all figures, in the order in which they are written.
var columns = []column{
	{"index", "", func(w reading.Web) *estimate { return estimated(w.Index, plain[plane.Ratio]) }},
	{"depth", "_mm", func(w reading.Web) *estimate { return estimated(w.Depth, plain[plane.Millimetre]) }},
	{"span", "_mm", func(w reading.Web) *estimate { return estimated(w.Span, plain[plane.Millimetre]) }},
	{"rise", "_mm", func(w reading.Web) *estimate { return estimated(w.Rise, plain[plane.Millimetre]) }},
	{"rise_to_span", "", func(w reading.Web) *estimate { return estimated(w.RiseToSpan, plain[plane.Ratio]) }},
	{"flare", "_deg", func(w reading.Web) *estimate { return estimated(w.Flare, degrees) }},
	{"crown_angle", "_deg", func(w reading.Web) *estimate { return estimated(w.CrownAngle, degrees) }},
	{"slope", "_deg", func(w reading.Web) *estimate { return estimated(w.Slope, degrees) }},
	{"crown_radius", "_mm", func(w reading.Web) *estimate { return estimated(w.CrownRadius, plain[plane.Millimetre]) }},
	{"area", "_mm2", func(w reading.Web) *estimate { return estimated(w.Area, plain[plane.SquareMillimetre]) }},
}

// widthsAt are the distances from the crown at which widths are written, in
// millimetres.
var widthsAt = []plane.Millimetre{2, 5, 10}

// widthAt is the width at that distance from the crown, nil where it is not
// known.
func widthAt(w reading.Web, at plane.Millimetre) *estimate {
	for _, x := range w.Widths {
		if x.Distal == at {
			return estimated(&x.Width, plain[plane.Millimetre])
		}
	}
	return nil
}

// fitted reports whether an arch was fitted.
func fitted(w reading.Web) bool { return w.Shape != 0 && finite(float64(w.FitRMS)) }
