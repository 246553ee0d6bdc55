package skin

import (
	"fmt"
	"image"
	"math"

	"ogive/geometry/plane"
	"ogive/imaging/photo"
)

// Spot is a round patch of a photograph.
type Spot struct {
	Centre plane.PixelPoint
	Radius plane.Pixel
}

// light is red, green and blue in linear light.
type light [3]float64

// Limits of what a patch may be (this project's own).
const (
	// fewest is the pixels from which a median means something.
	fewest = 100
	// mostClipped is the part of the pixels that may be clipped.
	mostClipped = 0.01
	// clip is the light of level 254 of 255, from which a pixel counts as
	// clipped; dimmest that of level 12, below which its steps are too coarse.
	clip    = 0.991
	dimmest = 0.0037
	// largest keeps a slip of the hand from taking in the whole photograph.
	largest plane.Pixel = 1000
)

// parted is how a spot is parted to see how its colour changes: quarters of an
// inner disc and of the ring around it, all of the same area.
const parted = 8

// reading is what was read in a spot.
type reading struct {
	median          light
	parts           [parted]light // medians
	pixels, clipped int
}

// read reads the spot; name stands for it in errors.
func (s Spot) read(p *photo.Photograph, name string) (reading, error) {
	if err := s.check(p.Size(), name); err != nil {
		return reading{}, err
	}
	var all samples
	var parts [parted]samples
	out := reading{}
	patch := p.Patch(s.box(), 1)
	for j := range patch.H {
		for i := range patch.W {
			off := patch.PixelAt(float64(i), float64(j)).Sub(s.Centre)
			if off.Norm() > s.Radius {
				continue
			}
			k := j*patch.W + i
			r, g, b := patch.R[k], patch.G[k], patch.B[k]
			if max(r, g, b) >= clip {
				out.clipped++
			}
			all.add(r, g, b)
			parts[s.part(off)].add(r, g, b)
		}
	}
	out.pixels, out.median = all.count(), all.median()
	for i := range parts {
		out.parts[i] = parts[i].median()
	}
	return out, out.check(name)
}

func (s Spot) box() image.Rectangle {
	low, high := s.Centre.Add(plane.Vec(-s.Radius, -s.Radius)), s.Centre.Add(plane.Vec(s.Radius, s.Radius))
	return image.Rect(int(low.X), int(low.Y), int(math.Ceil(float64(high.X))), int(math.Ceil(float64(high.Y))))
}

// part is which part of the spot lies at that distance from its centre.
func (s Spot) part(off plane.Vector[plane.Pixel]) int {
	n := 0
	if off.X > 0 {
		n++
	}
	if off.Y > 0 {
		n += 2
	}
	if off.Norm() > s.Radius/math.Sqrt2 {
		n += 4
	}
	return n
}

func (s Spot) check(size image.Point, name string) error {
	x, y, r := float64(s.Centre.X), float64(s.Centre.Y), float64(s.Radius)
	switch {
	case !s.Centre.Finite() || math.IsNaN(r) || math.IsInf(r, 0):
		return fmt.Errorf("%s has no place; put it on the photograph", name)
	case math.Pi*r*r < fewest || r <= 0:
		return fmt.Errorf("%s is too small: it holds fewer than %d pixels; make it larger", name, fewest)
	case s.Radius > largest:
		return fmt.Errorf("%s is too large: its radius is %.0f pixels; make it smaller, at most %.0f", name, r, float64(largest))
	case x-r < 0 || y-r < 0 || x+r > float64(size.X) || y+r > float64(size.Y):
		return fmt.Errorf("%s reaches over the edge of the photograph; move it inside", name)
	}
	return nil
}

func (r reading) check(name string) error {
	if float64(r.clipped) > mostClipped*float64(r.pixels) {
		return fmt.Errorf("%s is clipped: %d of its %d pixels are as bright as the camera can write, so their colour is lost; move it off the highlight or take the photograph with less light", name, r.clipped, r.pixels)
	}
	for _, v := range r.median {
		if v < dimmest {
			return fmt.Errorf("%s is too dark to tell its colour; move it out of the shadow or take the photograph with more light", name)
		}
	}
	return nil
}
