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
	"ogive/geometry/plane"
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
	st, err := c.stage()
	if err != nil {
		return Picture{}, err
	}
	pic, err := st.paint()
	if err != nil {
		return Picture{}, err
	}
	c = st.c
	pic.cast(c.Cast)
	img := pic.develop(c.Seed, c.NoiseSD)
	var file bytes.Buffer
	if err := jpeg.Encode(&file, img, &jpeg.Options{Quality: c.JPEGQuality}); err != nil {
		return Picture{}, fmt.Errorf("phantom: writing the JPEG: %w", err)
	}
	return Picture{file.Bytes(), img, st.truth}, nil
}

// Truth is the truth of the picture without the work of painting it.
func (c Case) Truth() (Truth, error) {
	st, err := c.stage()
	return st.truth, err
}

// stage is a case with everything in its place, ready to be painted.
type stage struct {
	c     Case // every field filled
	truth Truth
	paint func() (*canvas, error)
}

func (c Case) stage() (stage, error) {
	c = c.filled()
	if err := c.check(); err != nil {
		return stage{}, err
	}
	if c.View == hand.WebView {
		return c.webStage()
	}
	a, err := newAnatomy(c)
	if err != nil {
		return stage{}, err
	}
	at := lay(a, &c)
	cam := newCamera(c)
	truth := a.truth(at.hand, cam, c)
	truth.Skin = skinTruth(c.Skin.back(), c.Skin.palm())
	outline := func() []plane.PixelPoint { return cam.pixels(at.hand.planes(a.outline(0.05 * c.Size))) }
	err = truth.see(&at, cam, c, outline)
	return stage{c, truth, func() (*canvas, error) { return paintHand(c, a, at, cam) }}, err
}

func (c Case) webStage() (stage, error) {
	w := webScene{size: float64(c.Size), slope: c.JunctionSlope, web: c.lookedInto}
	at := w.lay(&c)
	cam := newCamera(c)
	truth := w.truth(at.hand, cam, c)
	truth.Skin = skinTruth(webColours(c))
	outline := func() []plane.PixelPoint {
		return cam.pixels(append(at.hand.planes(w.far()), at.hand.planes(w.near())...))
	}
	err := truth.see(&at, cam, c, outline)
	return stage{c, truth, func() (*canvas, error) { return paintWeb(c, w, at, cam) }}, err
}

// see adds the reference and the grey patch to the truth; outline is what of
// the hand leaves no room for the patch.
func (t *Truth) see(at *layout, cam camera, c Case, outline func() []plane.PixelPoint) error {
	s := at.ref
	if c.GreyPatch > 0 {
		grey, err := placeGrey(c, cam, outline(), s.rectangle(cam, 0, s.length, 0, s.wide))
		if err != nil {
			return err
		}
		at.grey, t.Grey = &grey, greyTruth(grey, cam, c)
	}
	if c.Reference == IDCard {
		t.Card = cardTruth(s, cam)
		return nil
	}
	if t.Ruler = rulerTruth(s, cam); t.Ruler.Length == 0 {
		return fmt.Errorf("phantom: at a distance of %.3g mm less than 10 mm of the ruler are in the picture; stand further off", float64(c.Distance))
	}
	return nil
}
