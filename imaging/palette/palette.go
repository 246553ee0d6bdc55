// Package palette holds the colours of marks drawn on a photograph, so that the
// screen and the saved picture look alike:
//
//	core := palette.Cores[palette.Joint] // drawn in a casing of palette.Ink
//
// A mark is a light core in an ink casing, which is seen on fair skin, on dark
// skin and on any drape; its shape tells its kind before its colour does.
package palette

import "image/color"

// The two grounds of a drawing and what is drawn fainter on paper.
var (
	Ink      = color.RGBA{0x10, 0x15, 0x1d, 0xff}
	Paper    = color.RGBA{0xf8, 0xf4, 0xea, 0xff}
	Faded    = color.RGBA{0x5a, 0x60, 0x68, 0xff} // ink for second things
	Hairline = color.RGBA{0xb9, 0xb4, 0xa6, 0xff} // ink for rules on paper
)

// Kind is a kind of thing drawn on a photograph.
type Kind int

// The kinds, each with a colour and shapes of its own.
const (
	Reference Kind = iota // ruler, ticks, card
	Joint                 // joints, digit axes, level of the crown
	Border                // traced border
	Arch                  // fitted arch
	Crown                 // crown, springings, span
	Junction              // junction of the skins and the slope
)

// Cores are the light colours of the marks: chalks, told apart by lightness and
// along blue and yellow, which the common colour deficiencies leave intact.
var Cores = map[Kind]color.RGBA{
	Reference: {0xf3, 0xe6, 0x9a, 0xff}, // straw
	Joint:     {0x7c, 0xc4, 0xf8, 0xff}, // sky
	Border:    {0xff, 0xff, 0xff, 0xff}, // chalk
	Arch:      {0xff, 0xb6, 0x1e, 0xff}, // saffron
	Crown:     {0xf2, 0xa9, 0xb4, 0xff}, // rose
	Junction:  {0xc9, 0xdd, 0xf6, 0xff}, // pale blue
}
