package flap

import (
	"ogive/geometry/arch"
	"ogive/geometry/plane"
)

// Palmar is the flap that is taken from the marked arch and needs no joint: its
// base is the line across the crown, as wide as the span; it reaches distally
// for length and ends in the arch itself, turned about, so that it fits the edge
// it is sewn to. A V, which has no span, gives a flap of the given width. The
// outline runs from the left of the arch's axis over the tip to its right.
func Palmar(a arch.Arch, length, width plane.Millimetre) Flap {
	across := a.Axis.Turned(plane.RightAngle)
	at := func(x, y plane.Millimetre) plane.Position {
		return a.Crown.Add(across.Scale(float64(x))).Add(a.Axis.Scale(float64(y)))
	}
	if a.Shape == arch.V {
		return Flap{Kind: PalmarFlap, Outline: []plane.Position{at(-width/2, 0), at(0, length), at(width/2, 0)}}
	}
	half := a.Span() / 2
	length = max(length, a.Rise())
	outline := []plane.Position{at(-half, 0)}
	for _, p := range a.Polyline(0, a.Span()/palmarSteps) {
		v := p.Sub(a.Crown)
		outline = append(outline, at(v.Dot(across), length-v.Dot(a.Axis)))
	}
	return Flap{Kind: PalmarFlap, Outline: append(outline, at(half, 0))}
}

// palmarSteps is how many points the rounded tip has at least, few enough to be
// edited one by one.
const palmarSteps = 4
