package annotate

import (
	"ogive/geometry/plane"
	"ogive/geometry/reading"
)

// ArchLine is the arch of w in millimetres, its crown at the origin and opening
// upwards (y points down, as on a picture), each border drawn for the length
// reach beyond its springing. It is false where no arch was fitted.
func ArchLine(w reading.Web, reach plane.Millimetre) ([]plane.Position, bool) {
	a, ok := archOf(w)
	if !ok {
		return nil, false
	}
	return a.Polyline(reach, max(a.Span(), a.Rise(), 1)/40), true
}
