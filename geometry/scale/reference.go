// Package scale turns what was marked on a ruler or a card into a map from
// pixels to millimetres, together with how far that map can be trusted.
//
//	fit, err := scale.Ruler{From: a, To: b, Length: 50}.Fit(camera, sd)
//	mm := fit.Best.Position(pixel)
//
// A Fit carries, beside the best map, an ensemble of maps that are as likely:
// every figure computed through each of them shows how uncertain the scale
// makes it (JCGM 101:2008, propagation of distributions).
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
	Fit(camera Camera, sd plane.Pixel) (Fit, error)
}

// Ruler is two points and the length between them. It sees no tilt.
type Ruler struct {
	From, To plane.PixelPoint
	Length   plane.Millimetre
}

// Ticks is three or more equally spaced ticks on a line, a Step apart.
type Ticks struct {
	At   []plane.PixelPoint
	Step plane.Millimetre
}

// Card is a rectangle of known size by its corners in order around, the side
// from the first to the second being its Width.
type Card struct {
	Corners       [4]plane.PixelPoint
	Width, Height plane.Millimetre
}

// Camera is what is known of the camera: the upright photograph's size, the
// focal length in pixels (zero when not known) and the tilt between camera and
// hand that the user allows, either way.
type Camera struct {
	Width, Height plane.Pixel
	Focal         plane.Pixel
	Tilt          plane.Angle
}

// Fit is the best map, an ensemble of maps that are as likely, and what the
// user should know about it.
type Fit struct {
	Method   Method
	Best     Map
	Likely   []Map
	Warnings []string
}
