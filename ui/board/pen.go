package board

import (
	"image"

	"ogive/geometry/plane"
	"ogive/imaging/display"
	"ogive/imaging/markshapes"
	"ogive/ui/marking"
)

type (
	spot   = markshapes.Spot
	stroke = markshapes.Stroke
)

var xy = markshapes.XY

// pen draws on a frame. Sizes are in units of Fyne's, so that marks are as large
// on every screen, at every zoom.
type pen struct {
	*markshapes.Pen
	img   *image.RGBA
	view  display.View
	scale float64
	size  float64 // of marks: scale, or less where they are quiet
	room  map[marking.Spot]float64
}

// casing is how far the dark casing shows on either side of a core.
const casing = 1.2

func newPen(img *image.RGBA, v display.View, scale float64) *pen {
	return &pen{Pen: markshapes.NewPen(img, scale, casing), img: img, view: v, scale: scale, size: scale}
}

func (p *pen) at(q plane.PixelPoint) spot {
	s := p.view.Screen(q)
	return xy(s.X, s.Y)
}

func (p *pen) path(line []plane.PixelPoint) []spot {
	out := make([]spot, len(line))
	for i, q := range line {
		out[i] = p.at(q)
	}
	return out
}

// sees reports whether something of the given size at q can be seen.
func (p *pen) sees(q spot, size float64) bool {
	m := size * p.scale
	b := p.img.Rect
	return q.X > -m && q.Y > -m && q.X < float64(b.Dx())+m && q.Y < float64(b.Dy())+m
}
