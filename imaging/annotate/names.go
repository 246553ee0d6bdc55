package annotate

import (
	"ogive/imaging/markshapes"
	"ogive/imaging/palette"
)

type (
	spot      = markshapes.Spot
	box       = markshapes.Box
	stroke    = markshapes.Stroke
	lettering = markshapes.Face
)

var (
	xy    = markshapes.XY
	boxOf = markshapes.BoxOf
	boxAt = markshapes.BoxAt
)

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
