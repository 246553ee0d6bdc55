// Package flap draws the outline of the flap that is to line the new web.
//
//	err := flap.ThirdsRule(marks, absent, web)                 // says why it can't be used
//	f := flap.Dorsal(frame, flap.WidthsFor(span, hourglass))   // by the thirds rule
//	f := flap.Palmar(plannedArch, length, width)               // from the arch
//	f.Outline[2] = dragged                                     // edited point by point
//	flap.Of(f, fit)                                            // length, widths, area
//
// Outlines are polygons on the plane of the reference, in millimetres.
package flap

import (
	"fmt"

	"ogive/geometry/plane"
)

// Kind is where a flap is raised.
type Kind int

// The kinds.
const (
	DorsalFlap Kind = iota + 1
	PalmarFlap
)

// String is the kind's name in the plan file.
func (k Kind) String() string {
	switch k {
	case DorsalFlap:
		return "dorsal"
	case PalmarFlap:
		return "palmar"
	}
	return "unknown flap"
}

// ParseKind is the kind of that name.
func ParseKind(name string) (Kind, error) {
	for _, k := range []Kind{DorsalFlap, PalmarFlap} {
		if k.String() == name {
			return k, nil
		}
	}
	return 0, fmt.Errorf("unknown flap %q", name)
}

// Flap is a flap as drawn on the skin. Its base, which is not cut, runs from the
// last point of the outline to the first.
type Flap struct {
	Kind    Kind
	Outline []plane.Position
}
