// Package scale turns what was marked on a ruler or a card into a map from
// pixels to millimetres, together with how far that map can be trusted.
//
//	fit, err := scale.Ruler{From: a, To: b, Length: 50}.Fit(camera, sd)
//	mm := fit.Best.Position(pixel)
//	size := fit.PerPixel(pixel) // millimetres per pixel, with its uncertainty
//
// A Fit carries, beside the best map, an ensemble of maps that are as likely:
// every figure computed through each of them shows how uncertain the scale
// makes it (JCGM 101:2008, propagation of distributions).
//
// Whatever the reference, the plane's origin lies on its first marked point, x
// runs along it towards the second, and y keeps the handedness of the
// photograph: no map ever mirrors a hand.
package scale

import "ogive/geometry/plane"

// Method names how the scale was marked.
type Method string

// The methods.
const (
	ByRuler Method = "ruler"
	ByTicks Method = "ticks"
	ByCard  Method = "card"
)

// Reference is an object of known size marked on the photograph: a Ruler, Ticks
// or a Card.
type Reference interface {
	Method() Method
	// Points are the marked points, in the order in which they were given.
	Points() []plane.PixelPoint
	// Fit computes the map; sd is the standard deviation of placing a point.
	// The error names the field of the marks file that is wrong, and the mend.
	Fit(camera Camera, sd plane.Pixel) (Fit, error)
}

// Ruler is two points and the length between them. It sees no tilt.
type Ruler struct {
	From, To plane.PixelPoint
	Length   plane.Millimetre
}

// Ticks is three or more equally spaced ticks on a line, a Step apart. They see
// the tilt along the ruler, by its foreshortening, and none across it.
type Ticks struct {
	At   []plane.PixelPoint
	Step plane.Millimetre
}

// Card is a rectangle of known size by its corners in order around, either way
// round, the side from the first to the second being its Width. Where corners
// are rounded, the corner is where the two straight sides would meet.
type Card struct {
	Corners       [4]plane.PixelPoint
	Width, Height plane.Millimetre
}
