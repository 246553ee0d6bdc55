package scoring

import (
	"ogive/geometry/plane"
	"ogive/geometry/webframe"
)

// Offset is how far a placed point lies from where it belongs: distal positive,
// and towards the ulnar side positive.
type Offset struct{ Distal, Ulnar plane.Millimetre }

// Size is the length of the offset.
func (o Offset) Size() plane.Millimetre { return plane.Vec(o.Distal, o.Ulnar).Norm() }

// Miss is the offset of placed from truth; distal and ulnar are unit vectors.
func Miss(truth, placed plane.Position, distal, ulnar plane.Vector[plane.Millimetre]) Offset {
	v := placed.Sub(truth)
	return Offset{v.Dot(distal), v.Dot(ulnar)}
}

// Beyond is the offset of a crown from where the crown of a normal web may lie:
// along the axis from the nearer end of the band of indices low to high, nothing
// within it, and sideways from the line through the middle of the web.
func Beyond(f webframe.Frame, low, high plane.Ratio, crown plane.Position) Offset {
	index := f.Index(crown)
	perMillimetre := f.Index(crown.Add(f.Axis())) - index // the index is linear in the place
	o := Offset{Ulnar: crown.Sub(f.Middle(index)).Dot(f.Across())}
	switch {
	case index < low:
		o.Distal = plane.Millimetre((index - low) / perMillimetre)
	case index > high:
		o.Distal = plane.Millimetre((index - high) / perMillimetre)
	}
	return o
}
