// Package skinbudget reckons how much skin is short when two joined digits are
// separated, and the graft that makes it up.
//
//	b, err := skinbudget.Reckon(skinbudget.Girths{Radial: g1, Ulnar: g2}, join, flaps)
//	b.PerMillimetre          // mm of skin short round both digits, for each mm of join
//	b.Shortage, b.Graft      // mm², before and after what the flaps bring
//
// Two digits of radii R >= r in contact, wrapped in one skin, have the outline
//
//	R (pi + 2 beta) + r (pi - 2 beta) + 4 sqrt(R r),  sin beta = (R - r)/(R + r),
//
// two arcs and the two straight tangents. Apart they need both girths. For equal
// digits the ratio of the two is 4 pi / (2 pi + 4) = 1.2220, about 22 per cent
// more skin than there is (widely quoted from Eaton CJ, Lister GD. Syndactyly.
// Hand Clin 1990;6:555-75: from memory).
package skinbudget

import (
	"ogive/geometry/plane"
)

// Girths are the girths of the two digits, as taped or as told from their widths.
type Girths struct {
	Radial, Ulnar plane.Estimate[plane.Millimetre]
}

// Budget is what is short, and what makes it up.
type Budget struct {
	Girths Girths
	Join   plane.Estimate[plane.Millimetre]
	// Outline is the girth of the joined digits, PerMillimetre the skin short for
	// each millimetre of join, Ratio the girths over the outline.
	Outline, PerMillimetre plane.Estimate[plane.Millimetre]
	Ratio                  plane.Estimate[plane.Ratio]
	// Shortage is PerMillimetre over the whole join, Flaps what the flaps bring,
	// Graft what remains, not below zero.
	Shortage, Flaps, Graft plane.Estimate[plane.SquareMillimetre]
	// Shares are the skin short round each digit for each millimetre of join:
	// together PerMillimetre.
	Radial, Ulnar plane.Estimate[plane.Millimetre]
	Remarks       []string
}
