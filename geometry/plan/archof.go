package plan

import (
	"ogive/geometry/arch"
	"ogive/geometry/plane"
	"ogive/geometry/reading"
	"ogive/geometry/registration"
	"ogive/geometry/scale"
)

// ArchOf is the arch that was read of a web, on the plane of m, if one was
// fitted: the member of the family through the crown and the springings, with
// the flare that was read.
func ArchOf(w reading.Web, m scale.Map) (arch.Arch, bool) {
	if w.Shape == 0 || w.Flare == nil || w.CrownAngle == nil {
		return arch.Arch{}, false
	}
	crown, left, right := m.Position(w.Crown), m.Position(w.Springing[0]), m.Position(w.Springing[1])
	f := Form{Shape: w.Shape, Span: left.Distance(right), Flare: w.Flare.Value, Turn: w.CrownAngle.Value / 2}
	axis := right.Sub(left).Left() // from left to right along x, the axis is y upwards
	rise := left.Sub(crown).Dot(axis.Direction())
	switch w.Shape {
	case arch.V:
		f.Flare = f.Turn
		axis = borderAxis(w, m, crown)
	case arch.U:
		f.Flat = plane.Ratio(1 - float64(2*rise/f.Span)*((plane.RightAngle+f.Flare)/2).Tan())
	}
	return f.Placed(crown, axis), f.Placed(crown, axis).Crown.Finite()
}

// borderAxis is the axis of a V: half way between its two borders, whose ends
// are those of the curve drawn.
func borderAxis(w reading.Web, m scale.Map, crown plane.Position) plane.Vector[plane.Millimetre] {
	if len(w.Curve) < 2 {
		return plane.Vector[plane.Millimetre]{}
	}
	left, right := m.Position(w.Curve[0]), m.Position(w.Curve[len(w.Curve)-1])
	return left.Sub(crown).Direction().Add(right.Sub(crown).Direction()).Direction()
}

// Moved is a as it comes to lie by s.
func Moved(a arch.Arch, s registration.Similarity) arch.Arch {
	a.Crown, a.Axis = s.Position(a.Crown), s.Vector(a.Axis).Direction()
	return Sized(a, s.Scale)
}

// Sized is a made larger about its crown.
func Sized(a arch.Arch, by float64) arch.Arch {
	a.Radius *= plane.Millimetre(by)
	a.Flat *= plane.Millimetre(by)
	return a
}
