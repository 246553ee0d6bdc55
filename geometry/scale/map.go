package scale

import (
	"math"

	"ogive/geometry/plane"
)

// Map takes positions on the photograph to positions on the plane of the
// reference. It is a homography: row-major H with
//
//	(X, Y, W) = H (x, y, 1), position = (X/W, Y/W) mm.
//
// A similarity has the last row (0, 0, 1). The zero Map is not valid.
type Map struct{ H [9]float64 }

// Position is where the pixel p lies on the plane, in millimetres.
func (m Map) Position(p plane.PixelPoint) plane.Position {
	x, y := float64(p.X), float64(p.Y)
	h := &m.H
	w := h[6]*x + h[7]*y + h[8]
	return plane.Pt(
		plane.Millimetre((h[0]*x+h[1]*y+h[2])/w),
		plane.Millimetre((h[3]*x+h[4]*y+h[5])/w),
	)
}

// Positions maps each pixel of ps.
func (m Map) Positions(ps []plane.PixelPoint) []plane.Position {
	out := make([]plane.Position, len(ps))
	for i, p := range ps {
		out[i] = m.Position(p)
	}
	return out
}

// Pixel is where the position p appears on the photograph.
func (m Map) Pixel(p plane.Position) plane.PixelPoint { return m.Back().Pixel(p) }

// Back is the way back, from positions to pixels, for many calls of Pixel.
func (m Map) Back() Back { return Back{Map{m.inverse()}} }

// Back takes positions on the plane of the reference to the photograph.
type Back struct{ m Map }

// Pixel is where the position p appears on the photograph.
func (b Back) Pixel(p plane.Position) plane.PixelPoint {
	q := b.m.Position(plane.Pt(plane.Pixel(p.X), plane.Pixel(p.Y)))
	return plane.Pt(plane.Pixel(q.X), plane.Pixel(q.Y))
}

// Local is the affine map that m amounts to near p: the Jacobian
// [dX/dx dX/dy; dY/dx dY/dy] in millimetres per pixel.
func (m Map) Local(p plane.PixelPoint) [4]float64 {
	x, y := float64(p.X), float64(p.Y)
	h := &m.H
	w := h[6]*x + h[7]*y + h[8]
	X := (h[0]*x + h[1]*y + h[2]) / w
	Y := (h[3]*x + h[4]*y + h[5]) / w
	return [4]float64{
		(h[0] - X*h[6]) / w, (h[1] - X*h[7]) / w,
		(h[3] - Y*h[6]) / w, (h[4] - Y*h[7]) / w,
	}
}

// PerPixel is the millimetres in a pixel at p: the square root of the factor by
// which m scales areas there.
func (m Map) PerPixel(p plane.PixelPoint) plane.Millimetre {
	j := m.Local(p)
	return plane.Millimetre(math.Sqrt(math.Abs(j[0]*j[3] - j[1]*j[2])))
}

func (m Map) inverse() [9]float64 {
	a := m.H
	return [9]float64{
		a[4]*a[8] - a[5]*a[7], a[2]*a[7] - a[1]*a[8], a[1]*a[5] - a[2]*a[4],
		a[5]*a[6] - a[3]*a[8], a[0]*a[8] - a[2]*a[6], a[2]*a[3] - a[0]*a[5],
		a[3]*a[7] - a[4]*a[6], a[1]*a[6] - a[0]*a[7], a[0]*a[4] - a[1]*a[3],
	}
}
