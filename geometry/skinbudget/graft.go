package skinbudget

import (
	"ogive/geometry/plane"
)

// Patch is the template of the graft for one digit: a rectangle as wide as the
// skin is short round that digit, and as long as it takes to cover the area
// short. The outline begins at the origin, its width along x.
type Patch struct {
	// Radial reports whether it is the patch of the radial digit.
	Radial        bool
	Width, Length plane.Millimetre
	Outline       []plane.Position
}

// Area is the area of the patch.
func (p Patch) Area() plane.SquareMillimetre { return plane.SquareMillimetre(p.Width * p.Length) }

// TemplateNote goes with every patch.
const TemplateNote = "A template to begin cutting from, true to size: cut the graft to the bed as it lies, with darts where it must bend."

// Patches are the templates for both digits, radial first. What the flaps bring
// is taken to cover the proximal part of the join, so the patches are as wide as
// the skin is short and shorter than the join. None is given where nothing is
// short.
func (b Budget) Patches() []Patch {
	if b.Graft.Value <= 0 || b.PerMillimetre.Value <= 0 {
		return nil
	}
	length := plane.Millimetre(b.Graft.Value) / b.PerMillimetre.Value
	var out []Patch
	for i, w := range []plane.Millimetre{b.Radial.Value, b.Ulnar.Value} {
		if w <= 0 {
			continue
		}
		out = append(out, Patch{
			Radial: i == 0, Width: w, Length: length,
			Outline: []plane.Position{{}, {X: w}, {X: w, Y: length}, {Y: length}},
		})
	}
	return out
}
