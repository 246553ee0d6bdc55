package photo

import (
	"image"

	"ogive/geometry/plane"
)

// Patch is a part of a photograph in linear light: each channel runs from 0
// (black) to 1 (the brightest the camera wrote). With Shrink n each sample is
// the mean over n by n pixels.
type Patch struct {
	Rect    image.Rectangle // the part of the upright photograph it shows
	Shrink  int
	W, H    int // samples across and down
	R, G, B []float32
}

// PixelAt is where on the photograph the centre of sample (i, j) lies.
func (p Patch) PixelAt(i, j float64) plane.PixelPoint {
	n := float64(p.Shrink)
	return plane.Pt(
		plane.Pixel(float64(p.Rect.Min.X)+(i+0.5)*n),
		plane.Pixel(float64(p.Rect.Min.Y)+(j+0.5)*n),
	)
}

// SampleAt is the inverse of PixelAt: the sample coordinates, fractions
// included, of a position on the photograph.
func (p Patch) SampleAt(q plane.PixelPoint) (i, j float64) {
	n := float64(p.Shrink)
	return (float64(q.X)-float64(p.Rect.Min.X))/n - 0.5, (float64(q.Y)-float64(p.Rect.Min.Y))/n - 0.5
}

// Patch is the part r of the upright photograph, as far as it lies on the
// photograph, with shrink by shrink pixels to a sample. Pixels that don't fill
// a sample at the right and lower edge are left out, and Rect says so.
func (p *Photograph) Patch(r image.Rectangle, shrink int) Patch {
	shrink = max(shrink, 1)
	r = r.Intersect(image.Rectangle{Max: p.Size()})
	w, h := r.Dx()/shrink, r.Dy()/shrink
	r.Max = r.Min.Add(image.Pt(w*shrink, h*shrink))
	light := make([]float32, 3*w*h)
	out := Patch{Rect: r, Shrink: shrink, W: w, H: h,
		R: light[: w*h : w*h], G: light[w*h : 2*w*h : 2*w*h], B: light[2*w*h:]}
	if w*h > 0 {
		p.gather(out)
	}
	return out
}

// gather goes along the stored rows of a patch and puts each sample where it
// belongs on the upright photograph.
func (p *Photograph) gather(out Patch) {
	n := out.Shrink
	from := p.turn.stored(out.Rect, p.pixels.Bounds().Size())
	w, h := from.Dx()/n, from.Dy()/n
	first, right, down := p.turn.steps(w, h)
	line := newRow(from.Dx())
	sum := newRow(w)
	scale := 1 / float32(n*n)
	for j := range h {
		clear(sum.r)
		clear(sum.g)
		clear(sum.b)
		for y := from.Min.Y + j*n; y < from.Min.Y+(j+1)*n; y++ {
			p.readRow(line, from.Min.X, y)
			for i := range w {
				for k := i * n; k < (i+1)*n; k++ {
					sum.r[i] += line.r[k]
					sum.g[i] += line.g[k]
					sum.b[i] += line.b[k]
				}
			}
		}
		at := first + j*down
		for i := range w {
			out.R[at], out.G[at], out.B[at] = sum.r[i]*scale, sum.g[i]*scale, sum.b[i]*scale
			at += right
		}
	}
}

// row is linear light along a part of a stored row.
type row struct{ r, g, b []float32 }

func newRow(n int) row { return row{make([]float32, n), make([]float32, n), make([]float32, n)} }

// readRow fills to from the stored pixels at (x, y) and to the right of it.
func (p *Photograph) readRow(to row, x, y int) {
	min := p.pixels.Bounds().Min
	for i := range to.r {
		r, g, b, a := p.pixels.At(min.X+x+i, min.Y+y).RGBA()
		to.r[i] = linear16(r + 0xffff - a)
		to.g[i] = linear16(g + 0xffff - a)
		to.b[i] = linear16(b + 0xffff - a)
	}
}
