package display

import "ogive/geometry/plane"

// Level is the line along which a web's index is read, for drawing: from the
// crown square to the axis of each of its two digits, whose ends are given.
func Level(crown plane.PixelPoint, axes [2][2]plane.PixelPoint) []plane.PixelPoint {
	return []plane.PixelPoint{foot(crown, axes[0]), crown, foot(crown, axes[1])}
}

func foot(p plane.PixelPoint, axis [2]plane.PixelPoint) plane.PixelPoint {
	u := axis[1].Sub(axis[0]).Direction()
	return axis[0].Add(u.Scale(float64(p.Sub(axis[0]).Dot(u))))
}
