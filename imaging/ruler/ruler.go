// Package ruler finds the ticks of a ruler in a photograph.
//
//	found, err := ruler.FindTicks(photograph, from, to) // two ticks, as clicked
//	if warning := ruler.Check(found, 50); warning != "" { ... }
//	ticks, ok := found.Scale(50)                        // a scale.Ticks
//
// The ticks may be dark on light or light on dark, and foreshortened; figures,
// scratches and glare may hide some of them. Each tick is found to a fraction of
// a pixel along the ruler.
package ruler

import (
	"errors"
	"fmt"

	"ogive/geometry/plane"
	"ogive/imaging/photo"
)

// Found is a row of equally spaced ticks from the one clicked first to the one
// clicked last.
type Found struct {
	// Ticks lie on one line along the ruler, about half way along its short
	// ticks.
	Ticks []plane.PixelPoint
	// Seen is false for a tick that was not seen in the photograph: its place
	// follows from the others.
	Seen []bool
	// Graduation is what the pattern of long and short ticks says.
	Graduation Graduation
	// first and last are other ticks that may have been meant by the clicks, as
	// steps outwards (negative: inwards) from the ends; 0 where there is no
	// doubt.
	first, last int
}

// Spaces is the number of spaces between the two ends.
func (f Found) Spaces() int { return len(f.Ticks) - 1 }

// seen is the share of ticks that were seen in the photograph.
func (f Found) seen() float64 {
	n := 0
	for _, s := range f.Seen {
		if s {
			n++
		}
	}
	return float64(n) / float64(max(1, len(f.Seen)))
}

// leastSpacing is the distance of ticks, in pixels, below which they can't be
// told apart safely.
const leastSpacing = 4.0

var errNoTicks = errors.New("no row of equally spaced ticks is to be seen between the two ends; click both on ticks of the same edge of the ruler, or go on with the two ends alone")

// FindTicks finds the ticks between two clicked ones. Each click may miss its
// tick by a few pixels along the ruler, and lie anywhere along its length.
func FindTicks(p *photo.Photograph, from, to plane.PixelPoint) (Found, error) {
	if !from.Finite() || !to.Finite() {
		return Found{}, errors.New("the ends of the ruler are no finite numbers; click them again")
	}
	if d := float64(from.Distance(to)); d < 5*leastSpacing {
		return Found{}, fmt.Errorf("the ends of the ruler lie %.0f px apart; click two ticks further from each other", d)
	}
	size := p.Size()
	for _, end := range [2]plane.PixelPoint{from, to} {
		if end.X < 0 || end.Y < 0 || end.X > plane.Pixel(size.X) || end.Y > plane.Pixel(size.Y) {
			return Found{}, fmt.Errorf("an end of the ruler, (%.0f, %.0f), lies outside the photograph; click it again", float64(end.X), float64(end.Y))
		}
	}
	s := newStrip(p, from, to)
	tooClose := 0.0
	for _, seed := range s.likelyRows() {
		if px := seed.gap * s.shrink; px < leastSpacing {
			tooClose = px
			continue
		}
		if t, ok := s.followEither(seed); ok {
			return t.between()
		}
	}
	if tooClose > 0 {
		return Found{}, fmt.Errorf("the ticks lie only %.1f px apart, too close to tell them from each other; photograph the ruler from nearer by, or go on with the two ends alone", tooClose)
	}
	return Found{}, errNoTicks
}
