// Package phantom makes artificial photographs of a hand whose geometry is
// exactly known, to teach on and to prove the measuring with.
//
//	picture, err := phantom.Random(7).Render()
//	picture.JPEG                      // the photograph
//	picture.Truth.Webs[1].Span        // the true span of the third web, mm
//	marks, ref := picture.Truth.Marks(2, rng) // what an observer would click
//
// A Case holds everything that makes a picture; the same case gives the same
// picture on every machine. The webs follow the family of arches of package
// arch exactly, seen through a pinhole camera; every figure of Truth comes from
// that geometry by its formula, none is measured.
package phantom

import (
	"bytes"
	"fmt"
	"image"
	"image/jpeg"

	"ogive/geometry/hand"
)

// Picture is an artificial photograph and what is true of it.
type Picture struct {
	JPEG  []byte
	Image *image.RGBA // as it was before JPEG
	Truth Truth
}

// Render makes the picture. It fails on a case that no hand can be, and says
// why.
func (c Case) Render() (Picture, error) {
	c = c.filled()
	if err := c.check(); err != nil {
		return Picture{}, err
	}
	if c.View == hand.WebView {
		return Picture{}, fmt.Errorf("phantom: web view")
	}
	a, err := newAnatomy(c)
	if err != nil {
		return Picture{}, err
	}
	place := lay(a, &c)
	cam := newCamera(c)
	truth := a.truth(place.hand, cam, c)
	if c.Reference == IDCard {
		truth.Card = cardTruth(place.ref, cam)
	} else if truth.Ruler = rulerTruth(place.ref, cam); truth.Ruler.Length == 0 {
		return Picture{}, fmt.Errorf("phantom: at a distance of %.3g mm less than 10 mm of the ruler are in the picture; stand further off", float64(c.Distance))
	}
	pic, err := paintHand(c, a, place, cam)
	if err != nil {
		return Picture{}, err
	}
	img := pic.develop(c.Seed, c.NoiseSD)
	var file bytes.Buffer
	if err := jpeg.Encode(&file, img, &jpeg.Options{Quality: c.JPEGQuality}); err != nil {
		return Picture{}, fmt.Errorf("phantom: writing the JPEG: %w", err)
	}
	return Picture{file.Bytes(), img, truth}, nil
}
