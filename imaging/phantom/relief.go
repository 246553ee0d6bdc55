package phantom

import (
	"math"

	"ogive/geometry/plane"
)

// relief is the fine shape of the skin in millimetres: grooves below zero.
type relief struct {
	w, h int
	z    []float64
}

func newRelief(w, h int) *relief { return &relief{w, h, make([]float64, w*h)} }

// groove cuts a line of that depth, whose section is a bell of sd pixels; it
// fades out over the part fade of its length at either end.
func (r *relief) groove(line []plane.PixelPoint, sd, depth, fade float64) {
	total := 0.0
	for i := 1; i < len(line); i++ {
		total += float64(line[i].Distance(line[i-1]))
	}
	run := 0.0
	for i := 1; i < len(line); i++ {
		length := float64(line[i].Distance(line[i-1]))
		r.segment(line[i-1], line[i], sd, func(t float64) float64 {
			at := (run + t*length) / total
			return depth * smoothstep(math.Min(at, 1-at)/math.Max(fade, 1e-9))
		})
		run += length
	}
}

func (r *relief) segment(p, q plane.PixelPoint, sd float64, depth func(t float64) float64) {
	px, py, qx, qy := float64(p.X), float64(p.Y), float64(q.X), float64(q.Y)
	pad := 3 * sd
	x0, x1 := max(0, int(math.Min(px, qx)-pad)), min(r.w-1, int(math.Max(px, qx)+pad))
	y0, y1 := max(0, int(math.Min(py, qy)-pad)), min(r.h-1, int(math.Max(py, qy)+pad))
	ux, uy := qx-px, qy-py
	norm := ux*ux + uy*uy
	if norm == 0 {
		return
	}
	for y := y0; y <= y1; y++ {
		for x := x0; x <= x1; x++ {
			vx, vy := float64(x)+0.5-px, float64(y)+0.5-py
			t := math.Max(0, math.Min(1, (vx*ux+vy*uy)/norm))
			dx, dy := vx-t*ux, vy-t*uy
			d2 := (dx*dx + dy*dy) / (sd * sd)
			if d2 > 9 {
				continue
			}
			if z := -depth(t) * math.Exp(-d2/2); z < r.z[y*r.w+x] {
				r.z[y*r.w+x] = z
			}
		}
	}
}

// at is the height and its slopes per pixel.
func (r *relief) at(x, y int) (z, dx, dy float64) {
	k := y*r.w + x
	if x == 0 || y == 0 || x == r.w-1 || y == r.h-1 {
		return r.z[k], 0, 0
	}
	return r.z[k], (r.z[k+1] - r.z[k-1]) / 2, (r.z[k+r.w] - r.z[k-r.w]) / 2
}
