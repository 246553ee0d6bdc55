package phantom

import (
	"math"

	"ogive/geometry/plane"
	"ogive/geometry/scale"
)

// camera is a pinhole looking at a tilted plane: toPixel maps homogeneous
// positions of the plane, whose origin appears in the middle of the picture.
type camera struct {
	toPixel [9]float64
	toPlane scale.Map
	w, h    int
}

func newCamera(c Case) camera {
	f, d := float64(c.FocalPx), float64(c.Distance)
	ex, ey := c.TiltDirection.Cos(), c.TiltDirection.Sin()
	k, s := c.Tilt.Cos()-1, c.Tilt.Sin()
	cx, cy := float64(c.Width)/2, float64(c.Height)/2
	// In the camera's frame (x, y, z) of the plane's point (X, Y).
	xX, xY := 1+k*ex*ex, k*ex*ey
	yX, yY := k*ex*ey, 1+k*ey*ey
	zX, zY := s*ex, s*ey
	m := [9]float64{
		f*xX + cx*zX, f*xY + cx*zY, cx * d,
		f*yX + cy*zX, f*yY + cy*zY, cy * d,
		zX, zY, d,
	}
	return camera{toPixel: m, toPlane: scale.Map{H: inverse(m)}, w: c.Width, h: c.Height}
}

// pixel is where the position p of the plane appears.
func (c camera) pixel(p point) plane.PixelPoint {
	x, y := project(&c.toPixel, float64(p.X), float64(p.Y))
	return plane.Pt(plane.Pixel(x), plane.Pixel(y))
}

func (c camera) pixels(line []point) []plane.PixelPoint {
	out := make([]plane.PixelPoint, len(line))
	for i, p := range line {
		out[i] = c.pixel(p)
	}
	return out
}

// sees reports whether p lies in the picture, at least margin pixels inside.
func (c camera) sees(p plane.PixelPoint, margin plane.Pixel) bool {
	return p.X >= margin && p.Y >= margin && p.X <= plane.Pixel(c.w)-margin && p.Y <= plane.Pixel(c.h)-margin
}

func project(m *[9]float64, x, y float64) (float64, float64) {
	w := m[6]*x + m[7]*y + m[8]
	return (m[0]*x + m[1]*y + m[2]) / w, (m[3]*x + m[4]*y + m[5]) / w
}

// inverse is scaled so that its last number is 1.
func inverse(a [9]float64) [9]float64 {
	b := [9]float64{
		a[4]*a[8] - a[5]*a[7], a[2]*a[7] - a[1]*a[8], a[1]*a[5] - a[2]*a[4],
		a[5]*a[6] - a[3]*a[8], a[0]*a[8] - a[2]*a[6], a[2]*a[3] - a[0]*a[5],
		a[3]*a[7] - a[4]*a[6], a[1]*a[6] - a[0]*a[7], a[0]*a[4] - a[1]*a[3],
	}
	last := b[8]
	for i := range b {
		b[i] /= last
	}
	return b
}

// box is an upright rectangle on the plane.
type box struct{ minX, minY, maxX, maxY float64 }

func emptyBox() box {
	return box{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)}
}

func (b *box) add(p point) {
	x, y := float64(p.X), float64(p.Y)
	b.minX, b.maxX = math.Min(b.minX, x), math.Max(b.maxX, x)
	b.minY, b.maxY = math.Min(b.minY, y), math.Max(b.maxY, y)
}
