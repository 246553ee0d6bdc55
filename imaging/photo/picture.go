package photo

import (
	"image"
	"image/draw"
)

// Picture is an upright copy to draw on, transparent parts shown on white.
func (p *Photograph) Picture() *image.RGBA {
	out := image.NewRGBA(image.Rectangle{Max: p.Size()})
	if p.turn == upright {
		onto(out, p.pixels, p.pixels.Bounds().Min)
		return out
	}
	const band = 16 // rows at a time, for want of a second copy
	size := p.pixels.Bounds().Size()
	first, right, down := p.turn.steps(size.X, size.Y)
	strip := image.NewRGBA(image.Rect(0, 0, size.X, band))
	for y := range size.Y {
		if y%band == 0 {
			onto(strip, p.pixels, p.pixels.Bounds().Min.Add(image.Pt(0, y)))
		}
		from := strip.Pix[y%band*strip.Stride:][:4*size.X]
		at := 4 * (first + y*down)
		for ; len(from) > 0; from = from[4:] {
			copy(out.Pix[at:at+4], from[:4])
			at += 4 * right
		}
	}
	return out
}

// onto draws the picture from a corner on over a white ground.
func onto(to *image.RGBA, img image.Image, corner image.Point) {
	if o, ok := img.(interface{ Opaque() bool }); !ok || !o.Opaque() {
		draw.Draw(to, to.Rect, image.White, image.Point{}, draw.Src)
	}
	draw.Draw(to, to.Rect, img, corner, draw.Over)
}
