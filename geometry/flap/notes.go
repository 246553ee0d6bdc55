package flap

import (
	"fmt"

	"ogive/geometry/plane"
)

// Lengths in widths of the base from which a flap lives on the vessels of its
// base more than on its width, and from which it is called long (common practice,
// no source).
const (
	restingFlap = 2
	longFlap    = 3
)

func (f Flap) notes() []string {
	var out []string
	if f.Crossed() {
		out = append(out, "The outline crosses itself: its area has no meaning. Drag the points back into order.")
	}
	base := f.Base()
	if base <= 0 {
		return append(out, "The base has no width: the flap would hang on nothing.")
	}
	ratio := float64(f.Length() / base)
	text := fmt.Sprintf("Length to base width %.1f to 1", ratio)
	switch {
	case ratio > longFlap:
		text += ": long for its base, so its tip may be short of blood (beyond 3 to 1; common practice, no source)."
	case ratio > restingFlap:
		text += ": beyond 2 to 1 a flap lives on the vessels that enter its base (common practice, no source)."
	default:
		text += ": not beyond 2 to 1 (common practice, no source)."
	}
	return append(out, text+" Skin viability is not assessed here.")
}

// Crossed reports whether two sides of the outline cross.
func (f Flap) Crossed() bool {
	n := len(f.Outline)
	for i := range n {
		for k := i + 2; k < n; k++ {
			if i == 0 && k == n-1 {
				continue // neighbours round the corner
			}
			if cross(f.Outline[i], f.Outline[i+1], f.Outline[k], f.Outline[(k+1)%n]) {
				return true
			}
		}
	}
	return false
}

// cross reports whether the lines a b and c d cross between their ends.
func cross(a, b, c, d plane.Position) bool {
	side := func(p, q, r plane.Position) plane.Millimetre { return q.Sub(p).Cross(r.Sub(p)) }
	return side(a, b, c)*side(a, b, d) < 0 && side(c, d, a)*side(c, d, b) < 0
}
