package phantom

import (
	"math"

	"ogive/geometry/plane"
)

// coverage is, for each pixel, the part of its area that a shape covers.
type coverage struct {
	w, h int
	// y0 and y1 bound the rows that are not empty.
	y0, y1 int
	part   []float64
}

// cover computes the exact area that closed polygons cover of each pixel, by
// summing the signed areas to the right of every edge along each row.
func cover(w, h int, polygons ...[]plane.PixelPoint) coverage {
	c := coverage{w: w, h: h, y0: h, y1: 0, part: make([]float64, w*h+1)}
	for _, poly := range polygons {
		for i, p := range poly {
			q := poly[(i+1)%len(poly)]
			c.edge(float64(p.X), float64(p.Y), float64(q.X), float64(q.Y))
		}
	}
	c.y0, c.y1 = max(c.y0, 0), min(c.y1, h)
	for y := c.y0; y < c.y1; y++ {
		sum := 0.0
		row := c.part[y*w : (y+1)*w]
		for x, d := range row {
			sum += d
			row[x] = math.Min(math.Abs(sum), 1)
		}
	}
	return c
}

func (c *coverage) edge(x0, y0, x1, y1 float64) {
	if y0 == y1 {
		return
	}
	sign := 1.0
	if y0 > y1 {
		x0, y0, x1, y1, sign = x1, y1, x0, y0, -1
	}
	slope := (x1 - x0) / (y1 - y0)
	if y0 < 0 {
		x0, y0 = x0-y0*slope, 0
	}
	last := math.Min(y1, float64(c.h))
	if y0 >= last {
		return
	}
	c.y0, c.y1 = min(c.y0, int(y0)), max(c.y1, int(math.Ceil(last)))
	x := x0
	for y := int(y0); float64(y) < last; y++ {
		top, bottom := math.Max(y0, float64(y)), math.Min(last, float64(y+1))
		next := x0 + (bottom-y0)*slope
		c.span(y, x, next, sign*(bottom-top))
		x = next
	}
}

// span adds an edge within one row that falls by dy from x0 to x1. Only what
// lies right of the picture's left side counts.
func (c *coverage) span(y int, x0, x1, dy float64) {
	if x0 > x1 {
		x0, x1 = x1, x0
	}
	row := c.part[y*c.w : (y+1)*c.w]
	limit := float64(c.w)
	switch {
	case x1 <= 0:
		row[0] += dy
		return
	case x0 >= limit:
		return
	case x0 < 0:
		part := -x0 / (x1 - x0)
		row[0] += dy * part
		x0, dy = 0, dy*(1-part)
	}
	if x1 > limit {
		x1, dy = limit, dy*(limit-x0)/(x1-x0)
	}
	first, end := int(x0), int(math.Ceil(x1))
	if end <= first+1 {
		mid := (x0+x1)/2 - float64(first)
		c.put(row, first, dy*(1-mid))
		c.put(row, first+1, dy*mid)
		return
	}
	per := dy / (x1 - x0)
	carried := 0.0
	for i := first; i < end; i++ {
		from, to := math.Max(x0, float64(i)), math.Min(x1, float64(i+1))
		mine := per * (to - from)
		inside := mine * (1 - ((from+to)/2 - float64(i)))
		c.put(row, i, carried+inside)
		carried = mine - inside
	}
	c.put(row, end, carried)
}

func (c *coverage) put(row []float64, i int, v float64) {
	if i < len(row) {
		row[i] += v
	}
}
