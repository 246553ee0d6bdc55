package trace

import (
	"fmt"
	"math"

	"ogive/geometry/plane"
	"ogive/imaging/photo"
)

// When a border is called faint, and when it is called none. Chosen on drawn
// scenes: pure noise and clicks that all lie on skin or all on drape stay below,
// the palest webs that can be traced by eye above (common practice, no source).
const (
	faintContrast = 3.0  // of a point, in noise
	faintStep     = 0.4  // of a point; 2 is the step along the border as a whole
	faintWarned   = 0.12 // part of the border
	faintRefused  = 0.45
	leastContrast = 4.0 // of the border, in noise
)

// report says how good the border is.
func (f fitter) report(p *photo.Photograph, fr frame, line curve, edges []edge, fine float64) (Border, error) {
	contrasts := make([]float64, len(edges))
	sds := make([]float64, len(edges))
	first := -1
	for i, e := range edges {
		contrasts[i] = e.contrast() / math.Sqrt(f.noise)
		sds[i] = math.Sqrt(e.variance*f.noise) * fine
		if first < 0 && f.isFaint(e) {
			first = i
		}
	}
	b := Border{Points: line, Blur: plane.Pixel(f.blur * fine), Contrast: median(contrasts), SD: plane.Pixel(median(sds))}
	part := f.faint(edges)
	if b.Contrast < leastContrast || part > faintRefused {
		return Border{}, errNoBorder
	}
	if part > faintWarned {
		at := line[min(len(line)-1, first*len(line)/len(edges))]
		b.Warnings = append(b.Warnings, fmt.Sprintf("the border is faint along %.0f per cent of its length, first near (%.0f, %.0f): look at it there and drag it by hand where it strays", 100*part, at.X, at.Y))
	}
	size := p.Size()
	for _, q := range line {
		if q.X < 2 || q.Y < 2 || int(q.X) > size.X-2 || int(q.Y) > size.Y-2 {
			b.Warnings = append(b.Warnings, "the border runs into the edge of the photograph: mark it nearer to the crown")
			break
		}
	}
	for i, s := range fr.seeds {
		d := math.Inf(1)
		for _, q := range line {
			d = min(d, float64(q.Distance(s)))
		}
		if d > fr.slack+1 {
			b.Warnings = append(b.Warnings, fmt.Sprintf("click %d of 3 lies %.0f pixels off the border found: look whether it is the border meant", i+1, d))
		}
	}
	return b, nil
}

func (f fitter) isFaint(e edge) bool {
	return e.contrast() < faintStep || e.contrast() < faintContrast*math.Sqrt(f.noise)
}

// faint is the part of the edges that are faint.
func (f fitter) faint(edges []edge) float64 {
	n := 0
	for _, e := range edges {
		if f.isFaint(e) {
			n++
		}
	}
	return float64(n) / float64(len(edges))
}
