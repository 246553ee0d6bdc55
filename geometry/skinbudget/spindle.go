package skinbudget

import (
	"math"

	"ogive/geometry/plane"
)

// Spindle is the skin to take at a donor site so that all patches can be cut from
// it and the site closed in a line: two equal arcs meeting in two points, three
// times as long as wide (common practice, no source).
type Spindle struct {
	Length, Width plane.Millimetre
	// Outline begins at one point; its length lies along x, its middle at the
	// origin.
	Outline []plane.Position
}

// lengthToWidth is the length of a spindle over its width.
const lengthToWidth = 3

// SpindleFor is the smallest spindle that holds the patches laid end to end.
func SpindleFor(patches []Patch) Spindle {
	var long, wide float64
	for _, p := range patches {
		long, wide = long+float64(p.Length), math.Max(wide, float64(p.Width))
	}
	if long == 0 || wide == 0 {
		return Spindle{}
	}
	holds := func(length float64) bool { return long < length && spindleHalf(length, long/2) >= wide/2 }
	low, high := long, long+10*wide
	for range 60 {
		if mid := (low + high) / 2; holds(mid) {
			high = mid
		} else {
			low = mid
		}
	}
	return spindleOf(high)
}

// spindleHalf is half the width of a spindle of that length, x from its middle:
// an arc of the radius (length² + width²) / (4 width).
func spindleHalf(length, x float64) float64 {
	width := length / lengthToWidth
	radius := (length*length + width*width) / (4 * width)
	return math.Sqrt(radius*radius-x*x) - (radius - width/2)
}

// spindleSteps is the number of sides of each arc: a chord leaves the arc by less
// than 0.02 mm on a spindle of 100 mm.
const spindleSteps = 48

func spindleOf(length float64) Spindle {
	s := Spindle{Length: plane.Millimetre(length), Width: plane.Millimetre(length / lengthToWidth)}
	for i := range 2 * spindleSteps {
		x, side := -length/2+length*float64(i)/spindleSteps, 1.0
		if i >= spindleSteps {
			x, side = length/2-length*float64(i-spindleSteps)/spindleSteps, -1
		}
		s.Outline = append(s.Outline, plane.Pt(plane.Millimetre(x), plane.Millimetre(side*spindleHalf(length, x))))
	}
	return s
}
