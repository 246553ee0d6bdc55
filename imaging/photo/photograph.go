// Package photo reads photographs.
package photo

import (
	"image"
	"time"
)

// Photograph is a decoded photograph, upright.
type Photograph struct {
	pixels image.Image
	facts  Facts
}

// Facts is what the photograph's EXIF data say, zero where they say nothing.
type Facts struct {
	Taken   time.Time
	Camera  string
	Focal35 float64 // focal length in mm, as on a 36 x 24 mm frame
}

// From is a photograph of an upright picture made in memory.
func From(img image.Image) *Photograph { return &Photograph{pixels: img} }

// Size is the width and height of the upright photograph in pixels.
func (p *Photograph) Size() image.Point { return p.pixels.Bounds().Size() }

// Facts is what the EXIF data say.
func (p *Photograph) Facts() Facts { return p.facts }
