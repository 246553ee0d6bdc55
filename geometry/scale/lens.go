package scale

import (
	"math"

	"ogive/geometry/plane"
)

// lens is a pinhole camera: its principal point and focal length in pixels.
type lens struct {
	centre plane.PixelPoint
	focal  float64
}

// slant is the tilt of a plane: its normal is along (x, y, 1) in the camera's
// frame, whose third axis is the line of sight. Without tilt it is zero.
type slant struct{ x, y float64 }

func (s slant) angle() plane.Angle { return plane.Radians(math.Atan(math.Hypot(s.x, s.y))) }

// facing rectifies a plane of that slant, up to a similarity. The ray through a
// pixel, r = (x - cx, y - cy, f), meets the plane with normal n where
// (e1.r / n.r, e2.r / n.r) are its coordinates along two unit vectors e1 and e2
// in the plane: here the picture's axes turned by the least rotation that takes
// the line of sight to n.
func (l lens) facing(s slant) Map {
	c := 1 / math.Sqrt(1+s.x*s.x+s.y*s.y)
	a, b := s.x*c, s.y*c
	rows := [3][3]float64{
		{1 - a*a/(1+c), -a * b / (1 + c), -a},
		{-a * b / (1 + c), 1 - b*b/(1+c), -b},
		{a, b, c},
	}
	var m Map
	for i, r := range rows {
		m.H[3*i], m.H[3*i+1] = r[0], r[1]
		m.H[3*i+2] = r[2]*l.focal - r[0]*float64(l.centre.X) - r[1]*float64(l.centre.Y)
	}
	return m
}

// laid is m followed by the similarity that brings a to the origin and b to a
// distance of length along x.
func (m Map) laid(a, b plane.PixelPoint, length plane.Millimetre) Map {
	from, along := m.Position(a), m.Position(b).Sub(m.Position(a))
	k := float64(length / along.Norm() / along.Norm())
	ux, uy := float64(along.X)*k, float64(along.Y)*k
	fx, fy := float64(from.X), float64(from.Y)
	return m.then([9]float64{
		ux, uy, -ux*fx - uy*fy,
		-uy, ux, uy*fx - ux*fy,
		0, 0, 1,
	})
}

// then is m followed by g.
func (m Map) then(g [9]float64) Map {
	var out Map
	for i := 0; i < 3; i++ {
		for j := 0; j < 3; j++ {
			for k := 0; k < 3; k++ {
				out.H[3*i+j] += g[3*i+k] * m.H[3*k+j]
			}
		}
	}
	return out
}

// untilted is the map of a picture taken straight on, before its scale is known.
var untilted = Map{[9]float64{1, 0, 0, 0, 1, 0, 0, 0, 1}}
