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

// few is how many pixels a sample has across where all of them are still read.
const few = 3

// look reads a part of a photograph, shrink by shrink pixels to a sample. Of a
// strongly shrunk part one row of pixels is read for every row of samples:
// reading all would take longer than all the rest.
func look(p *photo.Photograph, r image.Rectangle, shrink int) glance {
	r = r.Intersect(image.Rectangle{Max: p.Size()})
	g := glance{corner: r.Min, shrink: shrink, w: r.Dx() / shrink, h: r.Dy() / shrink}
	g.seen = make([]colour, 0, g.w*g.h)
	if shrink <= few {
		g.add(p.Patch(r, shrink), 1)
		return g
	}
	for j := range g.h {
		y := r.Min.Y + j*shrink + shrink/2
		g.add(p.Patch(image.Rect(r.Min.X, y, r.Min.X+g.w*shrink, y+1), 1), shrink)
	}
	return g
}

// add takes the means of so many samples side by side.
func (g *glance) add(part photo.Patch, per int) {
	for at := 0; at+per <= len(part.R); at += per {
		var sum [3]float64
		for k := at; k < at+per; k++ {
			sum[0] += float64(part.R[k])
			sum[1] += float64(part.G[k])
			sum[2] += float64(part.B[k])
		}
		for i := range sum {
			sum[i] /= float64(per)
		}
		g.seen = append(g.seen, colourOf(sum))
	}
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
