package skinbudget

import (
	"errors"
	"fmt"
	"math"

	"ogive/geometry/plane"
)

// Outline is the girth of two digits of those girths in contact, wrapped in one
// skin.
func Outline(one, other plane.Millimetre) plane.Millimetre {
	big, small := radii(one, other)
	beta := math.Asin((big - small) / (big + small))
	return plane.Millimetre(big*(math.Pi+2*beta) + small*(math.Pi-2*beta) + 4*math.Sqrt(big*small))
}

func radii(one, other plane.Millimetre) (big, small float64) {
	big, small = float64(max(one, other))/(2*math.Pi), float64(min(one, other))/(2*math.Pi)
	return big, small
}

// share is the skin that is short round a digit beside the other: its girth less
// the arc it keeps and one half of each of the two tangents.
func share(own, other plane.Millimetre) plane.Millimetre {
	r, s := float64(own)/(2*math.Pi), float64(other)/(2*math.Pi)
	beta := math.Asin((r - s) / (r + s))
	return plane.Millimetre(r*(math.Pi-2*beta) - 2*math.Sqrt(r*s))
}

// Least and most of what a digit's girth can be, in millimetres.
const leastGirth, mostGirth = 5, 200

func (g Girths) check() error {
	for _, d := range []struct {
		name string
		of   plane.Estimate[plane.Millimetre]
	}{{"radial", g.Radial}, {"ulnar", g.Ulnar}} {
		switch v := float64(d.of.Value); {
		case v == 0:
			return fmt.Errorf("girths.%s: is missing; tape the digit or give its width", d.name)
		case !(v >= leastGirth && v <= mostGirth):
			return fmt.Errorf("girths.%s: %g mm is no girth of a digit; give %d to %d mm", d.name, v, leastGirth, mostGirth)
		}
	}
	return nil
}

// Taping is the U95 of a girth taped on a finger (common practice, no source).
const Taping plane.Millimetre = 2

// roundness is by how much a girth of pi times the width may be out, as a part
// of it, because no finger is round (this project's own).
const roundness = 0.08

// Taped is a girth taken with a tape.
func Taped(girth plane.Millimetre) plane.Estimate[plane.Millimetre] {
	return plane.Estimate[plane.Millimetre]{Value: girth, U95: Taping}
}

// FromWidth is the girth of a digit as wide as that, taken as round: pi times
// its width.
func FromWidth(width plane.Estimate[plane.Millimetre]) plane.Estimate[plane.Millimetre] {
	girth := math.Pi * width.Value
	return plane.Estimate[plane.Millimetre]{Value: girth, U95: plane.Millimetre(math.Hypot(math.Pi*float64(width.U95), roundness*float64(girth)))}
}

// WidthWarning goes with every girth that was told from a width.
const WidthWarning = "A girth was told from the width of the digit, as pi times it: no finger is round, so tape it."

var errJoin = errors.New("join: the length of the join must be above zero; mark its two ends")
