package photo

import (
	"image"
	"image/draw"
)

// Picture is an upright copy to draw on, transparent parts shown on white.
func (p *Photograph) Picture() *image.RGBA {
	stored := image.NewRGBA(image.Rectangle{Max: p.pixels.Bounds().Size()})
	draw.Draw(stored, stored.Rect, image.White, image.Point{}, draw.Src)
	draw.Draw(stored, stored.Rect, p.pixels, p.pixels.Bounds().Min, draw.Over)
	if p.turn == upright {
		return stored
	}
	size := stored.Rect.Size()
	out := image.NewRGBA(image.Rectangle{Max: p.Size()})
	first, right, down := p.turn.steps(size.X, size.Y)
	for y := range size.Y {
		at := first + y*down
		for x := range size.X {
			copy(out.Pix[4*at:4*at+4], stored.Pix[y*stored.Stride+4*x:])
			at += right
		}
	}
	return out
}
