package phantom

import (
	"errors"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/geometry/skincolour"
)

// SkinAt is the true colour of the skin at pixels of the picture, with its
// blood, pigment and veins, but before wrinkles, light and cast. The pixels must
// lie on the hand. It works for the dorsal and the palmar view.
func (c Case) SkinAt(pixels ...plane.PixelPoint) ([]skincolour.Lab, error) {
	c = c.filled()
	if err := c.check(); err != nil {
		return nil, err
	}
	if c.View == hand.WebView {
		return nil, errors.New("phantom: the colour of a place is known in the dorsal and the palmar view only")
	}
	a, err := newAnatomy(c)
	if err != nil {
		return nil, err
	}
	at := lay(a, &c)
	cam := newCamera(c)
	outline := cam.pixels(at.hand.planes(a.outline(0.05 * c.Size)))
	s := newSkin(c, a, at, cam, shrunk(cover(c.Width, c.Height, outline), cellSize))
	out := make([]skincolour.Lab, len(pixels))
	for i, p := range pixels {
		colour := s.base
		if !c.Plain {
			colour = s.albedo(float64(p.X), float64(p.Y), 0)
		}
		out[i] = skincolour.Light{R: colour[0], G: colour[1], B: colour[2]}.Lab()
	}
	return out, nil
}
