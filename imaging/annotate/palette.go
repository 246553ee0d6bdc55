package annotate

import "image/color"

// Ink and paper are the two grounds of the drawing: marks are light cores in an
// ink casing, words are ink on paper.
var (
	ink    = color.RGBA{0x10, 0x15, 0x1d, 0xff}
	paper  = color.RGBA{0xf8, 0xf4, 0xea, 0xff}
	faded  = color.RGBA{0x5a, 0x60, 0x68, 0xff} // ink for second things
	hairln = color.RGBA{0xb9, 0xb4, 0xa6, 0xff} // ink for rules on paper
)

// kind is a kind of thing drawn on the photograph.
type kind int

// The kinds, each with a colour and shapes of its own.
const (
	kindReference kind = iota // ruler, ticks, card
	kindJoint                 // joints, digit axes, level of the crown
	kindBorder                // traced border
	kindArch                  // fitted arch
	kindCrown                 // crown, springings, span
	kindJunction              // junction of the skins and the slope
)

// cores are the light colours of the marks: chalks, told apart by lightness and
// along blue and yellow, which the common colour deficiencies leave intact.
var cores = map[kind]color.RGBA{
	kindReference: {0xf3, 0xe6, 0x9a, 0xff}, // straw
	kindJoint:     {0x7c, 0xc4, 0xf8, 0xff}, // sky
	kindBorder:    {0xff, 0xff, 0xff, 0xff}, // chalk
	kindArch:      {0xff, 0xb6, 0x1e, 0xff}, // saffron
	kindCrown:     {0xf2, 0xa9, 0xb4, 0xff}, // rose
	kindJunction:  {0xc9, 0xdd, 0xf6, 0xff}, // pale blue
}
