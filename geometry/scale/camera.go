package scale

import (
	"fmt"
	"math"
	"math/rand/v2"

	"ogive/geometry/plane"
)

// DefaultTilt is the tilt allowed where the user allows no other.
const DefaultTilt = plane.Angle(10 * math.Pi / 180)

// maxTilt is the largest tilt that can be allowed: beyond it a plane may lie
// edge-on to a part of the picture.
const maxTilt = plane.Angle(math.Pi / 4)

// Camera is what is known of the camera: the upright photograph's size, the
// focal length in pixels (zero when not known) and the tilt between camera and
// hand that the user allows about any axis, either way (zero stands for
// DefaultTilt).
type Camera struct {
	Width, Height plane.Pixel
	Focal         plane.Pixel
	Tilt          plane.Angle
}

// The focal lengths of hand-held cameras, in diagonals of the picture: from a
// telephone's wide lens (26 mm on 36 x 24 mm) to a short telephoto (70 mm). It
// is drawn so that every ratio is as likely, and taken as the geometric mean
// where one number is needed.
const shortFocal, longFocal = 0.6, 1.6

func (c Camera) check(sd plane.Pixel) error {
	for _, q := range []struct {
		name  string
		value float64
		least float64
	}{
		{"the photograph's width", float64(c.Width), 1},
		{"the photograph's height", float64(c.Height), 1},
		{"the focal length", float64(c.Focal), 0},
		{"click_sd_px", float64(sd), 0},
		{"the allowed tilt", c.Tilt.Degrees(), 0},
	} {
		if !(q.value >= q.least) || math.IsInf(q.value, 0) {
			return fmt.Errorf("scale: %s is %v; give a number of at least %v", q.name, q.value, q.least)
		}
	}
	if c.Tilt > maxTilt {
		return fmt.Errorf("scale: the allowed tilt is %.3g degrees; give at most %.0f", c.Tilt.Degrees(), maxTilt.Degrees())
	}
	return nil
}

func (c Camera) tilt() plane.Angle {
	if c.Tilt == 0 {
		return DefaultTilt
	}
	return c.Tilt
}

func (c Camera) centre() plane.PixelPoint { return plane.Pt(c.Width/2, c.Height/2) }

func (c Camera) diagonal() float64 { return math.Hypot(float64(c.Width), float64(c.Height)) }

// lens is the pinhole camera with the focal length that is known or most
// likely.
func (c Camera) lens() lens {
	if c.Focal > 0 {
		return lens{c.centre(), float64(c.Focal)}
	}
	return lens{c.centre(), math.Sqrt(shortFocal*longFocal) * c.diagonal()}
}

// anyLens is a pinhole camera with a focal length that may be the true one.
func (c Camera) anyLens(rng *rand.Rand) lens {
	u := rng.Float64()
	if c.Focal > 0 {
		return c.lens()
	}
	return lens{c.centre(), shortFocal * math.Pow(longFocal/shortFocal, u) * c.diagonal()}
}

// anySlant is a tilt in which each of two axes at right angles to each other
// tilts by up to the allowed angle, either way: camera and hand may both nod and
// lean, so that the whole tilt may exceed the allowed one by a factor of 1.4.
func (c Camera) anySlant(rng *rand.Rand) slant {
	x := c.anyTilt(rng)
	return slant{x.Tan(), c.anyTilt(rng).Tan()}
}

// anyTilt is a tilt about one axis, rectangular within the allowed one.
func (c Camera) anyTilt(rng *rand.Rand) plane.Angle {
	return c.tilt() * plane.Angle(2*rng.Float64()-1)
}
