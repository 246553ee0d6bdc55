package planfile

import (
	"fmt"
	"image"

	"ogive/geometry/plane"
	"ogive/imaging/marksfile"
)

// outlineMargin is how far beyond the photograph an outline, an axis or a join
// may be drawn, as a part of its longer side: a hand may reach its edge.
const outlineMargin = 0.25

// CheckWithin refuses a plan that does not belong to a photograph of that size:
// a crown or a patch of skin outside of it, or anything drawn far outside. The
// error is a *marksfile.Refusal that names the first such place.
func (f File) CheckWithin(size image.Point) error {
	c := within{size: size}
	for i, w := range f.Webs {
		c.web(fmt.Sprintf("webs[%d]", i), w)
	}
	for i, p := range f.Patches {
		if p.Photograph == "" {
			c.check(fmt.Sprintf("patches[%d].at", i), 0, p.Centre)
		}
	}
	return c.err
}

// within keeps the first place that lies outside.
type within struct {
	size image.Point
	err  error
}

func (c *within) web(path string, w Web) {
	margin := outlineMargin * float64(max(c.size.X, c.size.Y))
	if w.Join != nil {
		c.list(path+".join", margin, w.Join[:])
	}
	for i, a := range w.Alternatives {
		path := fmt.Sprintf("%s.alternatives[%d]", path, i)
		if a.Arch != nil {
			c.check(path+".arch.crown", 0, a.Arch.Crown)
			c.check(path+".arch.axis", margin, a.Arch.Axis)
		}
		if a.Flap != nil {
			c.list(path+".flap.outline", margin, a.Flap.Outline)
		}
		if a.Zigzag != nil {
			c.list(path+".zigzag.dorsal", margin, a.Zigzag.Dorsal)
			c.list(path+".zigzag.palmar", margin, a.Zigzag.Palmar)
		}
	}
}

func (c *within) list(path string, margin float64, ps []plane.PixelPoint) {
	for i, p := range ps {
		c.check(fmt.Sprintf("%s[%d]", path, i), margin, p)
	}
}

func (c *within) check(path string, margin float64, p plane.PixelPoint) {
	inside := func(x plane.Pixel, side int) bool {
		return float64(x) >= -margin && float64(x) <= float64(side)+margin
	}
	if c.err != nil || inside(p.X, c.size.X) && inside(p.Y, c.size.Y) {
		return
	}
	c.err = &marksfile.Refusal{
		Field:   path,
		Problem: fmt.Sprintf("[%g, %g] lies outside the photograph, which is %d x %d pixels", float64(p.X), float64(p.Y), c.size.X, c.size.Y),
		Mend:    "move it, or check that the plan belongs to this photograph, upright and at its full size",
	}
}
