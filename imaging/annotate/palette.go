package annotate

import "ogive/imaging/palette"

var (
	ink    = palette.Ink
	paper  = palette.Paper
	faded  = palette.Faded
	hairln = palette.Hairline
	cores  = palette.Cores
)

const (
	kindReference = palette.Reference
	kindJoint     = palette.Joint
	kindBorder    = palette.Border
	kindArch      = palette.Arch
	kindCrown     = palette.Crown
	kindJunction  = palette.Junction
)
