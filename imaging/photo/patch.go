package photo

import (
	"image"

	"ogive/geometry/plane"
)

// Patch is a part of a photograph in linear light: each channel runs from 0
// (black) to 1 (the brightest the camera wrote). With Shrink n each sample is
// the mean over n by n pixels.
type Patch struct {
	Rect    image.Rectangle // the part of the upright photograph it shows
	Shrink  int
	W, H    int // samples across and down
	R, G, B []float32
}

// PixelAt is where on the photograph the centre of sample (i, j) lies.
func (p Patch) PixelAt(i, j float64) plane.PixelPoint {
	n := float64(p.Shrink)
	return plane.Pt(
		plane.Pixel(float64(p.Rect.Min.X)+(i+0.5)*n),
		plane.Pixel(float64(p.Rect.Min.Y)+(j+0.5)*n),
	)
}

// SampleAt is the inverse of PixelAt: the sample coordinates, fractions
// included, of a position on the photograph.
func (p Patch) SampleAt(q plane.PixelPoint) (i, j float64) {
	n := float64(p.Shrink)
	return (float64(q.X)-float64(p.Rect.Min.X))/n - 0.5, (float64(q.Y)-float64(p.Rect.Min.Y))/n - 0.5
}
