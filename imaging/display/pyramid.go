// Package display shows a photograph, or the part of it one wants to see, at
// any size and at once: it fills frames of the size of a window.
//
//	p := display.New(photograph)       // shows already, coarsely
//	go p.Build()                       // from now on shows well
//	v := display.Fit(p.Size(), window) // what is seen
//	p.Frame(frame, v.ZoomedBy(2, pointer))
//	p.Loupe(lens, place, 4)
//
// Below one screen pixel for one of the photograph, a screen pixel is the mean
// over what it covers; from there to two it is interpolated linearly; from two
// on the photograph's own pixels are seen. Means are over the values as they
// are stored, gamma and all. All sums are in integers: the same photograph and
// view give the same frame on every machine.
package display

import (
	"image"
	"sync/atomic"

	"ogive/imaging/photo"
)

// Pyramid is a photograph with reduced copies of it. It may be used by several
// goroutines.
type Pyramid struct {
	upright             image.Point
	stored              image.Point
	swaps, flipX, flipY bool
	coarse              bool // a preview stands in for the photograph
	levels              atomic.Pointer[[]level]
}

// level is a copy of the photograph in which a sample is perX by perY pixels of
// the photograph large.
type level struct {
	source
	perX, perY float64
}

// New shows the photograph from its own pixels alone.
func New(p *photo.Photograph) *Pyramid {
	s := p.Stored()
	out := &Pyramid{upright: p.Size(), stored: s.Pixels.Bounds().Size(), swaps: s.Swaps, flipX: s.FlipX, flipY: s.FlipY}
	out.levels.Store(&[]level{{sourceOf(s.Pixels), 1, 1}})
	return out
}

// Preview shows a small upright picture in the place of a photograph of the
// given size that is still being read.
func Preview(small image.Image, size image.Point) *Pyramid {
	s := photo.From(small).Stored()
	out := &Pyramid{upright: size, stored: size, coarse: true}
	have := s.Pixels.Bounds().Size()
	out.levels.Store(&[]level{{sourceOf(s.Pixels), float64(size.X) / float64(have.X), float64(size.Y) / float64(have.Y)}})
	return out
}

func sourceOf(img image.Image) source {
	switch m := img.(type) {
	case *image.YCbCr:
		return planarOf(m)
	case *image.Gray:
		return greyOf(m)
	}
	return packedOf(img.(*image.RGBA))
}

// Size is the size of the upright photograph.
func (p *Pyramid) Size() image.Point { return p.upright }

// smallest is the side below which a copy is not reduced further.
const smallest = 256

// Build makes the reduced copies, on all processors, and returns when all are
// there. Frames may be taken meanwhile.
func (p *Pyramid) Build() {
	for !p.Whole() {
		all := *p.levels.Load()
		last := all[len(all)-1]
		next := level{last.halved(inParallel), 2 * last.perX, 2 * last.perY}
		more := append(all[:len(all):len(all)], next)
		p.levels.Store(&more)
	}
}

// levelFor is the most reduced copy whose samples are no larger than a screen
// pixel, as far as it is there.
func (p *Pyramid) levelFor(zoom float64) level {
	all := *p.levels.Load()
	k := 0
	for k+1 < len(all) && all[k+1].perX*zoom <= 1 {
		k++
	}
	return all[k]
}

// Whole reports whether all reduced copies are there.
func (p *Pyramid) Whole() bool {
	all := *p.levels.Load()
	size := all[len(all)-1].size()
	return p.coarse || max(size.X, size.Y) <= smallest
}
