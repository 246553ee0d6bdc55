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
	n, corner := out.Shrink, p.pixels.Bounds().Min
	from := p.turn.stored(out.Rect, p.pixels.Bounds().Size()).Add(corner)
	w, h := from.Dx()/n, from.Dy()/n
	first, right, down := p.turn.steps(w, h)
	read := readerOf(p.pixels, from.Dx())
	line, sum := newRow(from.Dx()), newRow(w)
	for j := range h {
		at, y := first+j*down, from.Min.Y+j*n
		if n == 1 {
			read(line, from.Min.X, y)
			out.put(line, at, right)
			continue
		}
		sum.clear()
		for k := range n {
			read(line, from.Min.X, y+k)
			sum.addMeans(line, n)
		}
		out.put(sum, at, right)
	}
}

// put lays a row of samples into the patch, from sample at on, step apart.
func (p Patch) put(line row, at, step int) {
	if step == 1 {
		copy(p.R[at:], line.r)
		copy(p.G[at:], line.g)
		copy(p.B[at:], line.b)
		return
	}
	for i := range line.r {
		p.R[at], p.G[at], p.B[at] = line.r[i], line.g[i], line.b[i]
		at += step
	}
}

// addMeans adds what one row of pixels, n to a sample, brings to the means over
// n by n pixels.
func (to row) addMeans(line row, n int) {
	share := 1 / float32(n*n)
	for i := range to.r {
		var r, g, b float32
		for k := i * n; k < (i+1)*n; k++ {
			r += line.r[k]
			g += line.g[k]
			b += line.b[k]
		}
		to.r[i] += r * share
		to.g[i] += g * share
		to.b[i] += b * share
	}
}
