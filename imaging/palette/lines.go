package palette

import "image/color"

// Lines that other rooms draw over a photograph. They are light like the marks
// and drawn in a casing of ink; dashes and widths tell them apart before their
// colours do.
var (
	Ghost  = color.RGBA{0xe4, 0xe8, 0xee, 0xff} // the other hand
	Plan   = color.RGBA{0x9a, 0xf0, 0xc4, 0xff} // a planned arch
	Flap   = color.RGBA{0xff, 0xd0, 0xa0, 0xff} // the outline of a flap
	Zigzag = color.RGBA{0xff, 0xf0, 0x80, 0xff} // an incision to and fro
	Graft  = color.RGBA{0xd8, 0xc6, 0xff, 0xff} // what skin has to be brought for
	Truth  = color.RGBA{0xff, 0xff, 0xff, 0xff} // the known answer of a round
	Patch  = color.RGBA{0xb4, 0xe4, 0xff, 0xff} // skin whose colour is taken
)
