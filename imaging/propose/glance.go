package propose

import (
	"image"
	"math"

	"ogive/imaging/photo"
)

// glance is a part of the photograph, shrunk, in colours that set the light
// apart.
type glance struct {
	corner image.Point
	shrink int
	w, h   int
	seen   []colour
}

// look reads a part of a photograph, shrink by shrink pixels to a sample. Of a
// strongly shrunk part only some rows are read: reading all pixels would take
// longer than all the rest.
func look(p *photo.Photograph, r image.Rectangle, shrink int) glance {
	r = r.Intersect(image.Rectangle{Max: p.Size()})
	g := glance{corner: r.Min, shrink: shrink, w: r.Dx() / shrink, h: r.Dy() / shrink}
	g.seen = make([]colour, g.w*g.h)
	fine := max(1, shrink/4)
	per := shrink / fine
	for j := range g.h {
		y := r.Min.Y + j*shrink + (shrink-fine)/2
		slice := p.Patch(image.Rect(r.Min.X, y, r.Min.X+g.w*shrink, y+fine), fine)
		for i := range g.w {
			var sum [3]float64
			first := i * shrink / fine
			for k := first; k < min(first+per, slice.W); k++ {
				sum[0] += float64(slice.R[k])
				sum[1] += float64(slice.G[k])
				sum[2] += float64(slice.B[k])
			}
			for k := range sum {
				sum[k] /= float64(per)
			}
			g.seen[j*g.w+i] = colourOf(sum)
		}
	}
	return g
}

// at is the colour of the sample in which p lies, false outside.
func (g glance) at(p point) (colour, bool) {
	i := int(math.Floor((float64(p.X) - float64(g.corner.X)) / float64(g.shrink)))
	j := int(math.Floor((float64(p.Y) - float64(g.corner.Y)) / float64(g.shrink)))
	if i < 0 || j < 0 || i >= g.w || j >= g.h {
		return colour{}, false
	}
	return g.seen[j*g.w+i], true
}

// bounds is the upright rectangle around points.
func bounds(points ...point) image.Rectangle {
	var r image.Rectangle
	for _, p := range points {
		x, y := int(math.Floor(float64(p.X))), int(math.Floor(float64(p.Y)))
		r = r.Union(image.Rect(x, y, x+2, y+2))
	}
	return r
}
