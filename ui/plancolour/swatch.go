package plancolour

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/lang"

	"ogive/geometry/skincolour"
	"ogive/imaging/skin"
	"ogive/ui/column"
	"ogive/ui/flow"
)

// ground is what colours lie on: grey of middle lightness in light and dark, so
// that the window's own colour does not tinge them.
var ground = swatchOf(skincolour.Lab{L: 50})

func swatchOf(c skincolour.Lab) color.Color {
	r, g, b := c.SRGB()
	return color.NRGBA{r, g, b, 0xff}
}

// newTone is one sample: its colour at the left, its figures at the right.
func newTone(s skin.Sample, line skin.Line) *column.Block {
	const side, rim, gap, below = 64, 8, 10, 14
	under, patch := canvas.NewRectangle(ground), canvas.NewRectangle(line.Swatches[0])
	title, figure := column.Title(placeName(s)), column.NewFigure(lang.L("Typology angle, ITA"))
	figure.Set(line.Value, line.Note)
	colour := column.Remark(lab(s))
	return column.NewBlock(func(room float32) float32 {
		flow.Put(under, 0, 4, side, side)
		flow.Put(patch, rim, 4+rim, side-2*rim, side-2*rim)
		words, y := room-side-gap, float32(-6)
		for _, o := range []flow.Tall{title, figure, colour} {
			h := o.HeightAt(words)
			flow.Put(o.(fyne.CanvasObject), side+gap, y, words, h)
			y += h
		}
		return max(y, side+4) + below
	}, nil, under, patch, title, figure, colour)
}

// newPair is two colours that touch, as they are compared, with their difference.
func newPair(line skin.Line) *column.Block {
	const high, rim, below = 92, 14, 12
	under := canvas.NewRectangle(ground)
	var halves [2]*canvas.Rectangle
	for i := range halves {
		halves[i] = canvas.NewRectangle(line.Swatches[i])
	}
	figure := column.NewFigure(line.Name)
	figure.Set(line.Value, line.Note)
	return column.NewBlock(func(room float32) float32 {
		flow.Put(under, 0, 0, room, high)
		half := (room - 2*rim) / 2
		for i, h := range halves {
			flow.Put(h, rim+float32(i)*half, rim, half, high-2*rim)
		}
		h := figure.HeightAt(room)
		flow.Put(figure, 0, high+6, room, h)
		return high + 6 + h + below
	}, nil, under, halves[0], halves[1], figure)
}
