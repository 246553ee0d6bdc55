// Package plane holds positions, lengths and angles as types, so that a pixel
// can't be passed where a millimetre is meant.
//
// A photograph has pixel coordinates: origin at the top-left corner of the
// top-left pixel, x to the right, y down; the centre of that pixel is
// (0.5, 0.5). The plane of the reference (ruler or card) has millimetre
// coordinates with the same handedness. Package scale maps one to the other.
//
//	tip := plane.Pt[plane.Pixel](310, 2210.5)
//	len := tip.Sub(base).Norm()               // a plane.Pixel
//	deg := plane.Degrees(40).Degrees()        // 40
package plane

import "math"

// Pixel is a length on the upright photograph.
type Pixel float64

// Millimetre is a length on the plane of the reference.
type Millimetre float64

// SquareMillimetre is an area on the plane of the reference.
type SquareMillimetre float64

// Ratio is a number without unit: an index, a rise over a span.
type Ratio float64

// Unit is any unit a plane can be measured in.
type Unit interface{ Pixel | Millimetre }

// Point is a position in the plane measured in U.
type Point[U Unit] struct{ X, Y U }

// Vector is a displacement in the plane measured in U.
type Vector[U Unit] struct{ X, Y U }

// PixelPoint is a position on the upright photograph.
type PixelPoint = Point[Pixel]

// Position is a position on the plane of the reference, in millimetres.
type Position = Point[Millimetre]

// Pt is the point (x, y).
func Pt[U Unit](x, y U) Point[U] { return Point[U]{x, y} }

// Vec is the vector (x, y).
func Vec[U Unit](x, y U) Vector[U] { return Vector[U]{x, y} }

// Add is p displaced by v.
func (p Point[U]) Add(v Vector[U]) Point[U] { return Point[U]{p.X + v.X, p.Y + v.Y} }

// Sub is the displacement from q to p.
func (p Point[U]) Sub(q Point[U]) Vector[U] { return Vector[U]{p.X - q.X, p.Y - q.Y} }

// Distance is the length of the straight line between p and q.
func (p Point[U]) Distance(q Point[U]) U { return p.Sub(q).Norm() }

// Towards is the point a fraction t of the way from p to q.
func (p Point[U]) Towards(q Point[U], t float64) Point[U] { return p.Add(q.Sub(p).Scale(t)) }

// Mid is the point half way between p and q.
func (p Point[U]) Mid(q Point[U]) Point[U] { return p.Towards(q, 0.5) }

// Finite reports whether neither coordinate is infinite or not a number.
func (p Point[U]) Finite() bool { return finite(float64(p.X)) && finite(float64(p.Y)) }

// Add is the sum of v and w.
func (v Vector[U]) Add(w Vector[U]) Vector[U] { return Vector[U]{v.X + w.X, v.Y + w.Y} }

// Sub is v less w.
func (v Vector[U]) Sub(w Vector[U]) Vector[U] { return Vector[U]{v.X - w.X, v.Y - w.Y} }

// Scale is v made k times as long.
func (v Vector[U]) Scale(k float64) Vector[U] { return Vector[U]{v.X * U(k), v.Y * U(k)} }

// Dot is the scalar product; with a unit w it is the length of v along w.
func (v Vector[U]) Dot(w Vector[U]) U { return v.X*w.X + v.Y*w.Y }

// Cross is the z component of the vector product: positive when w lies
// clockwise of v as seen on a screen, where y points down.
func (v Vector[U]) Cross(w Vector[U]) U { return v.X*w.Y - v.Y*w.X }

// Norm is the length of v.
func (v Vector[U]) Norm() U { return U(math.Hypot(float64(v.X), float64(v.Y))) }

// Direction is v made one unit long; a zero vector stays zero.
func (v Vector[U]) Direction() Vector[U] {
	n := v.Norm()
	if n == 0 {
		return v
	}
	return Vector[U]{v.X / n, v.Y / n}
}

// Turned is v rotated by a, from x towards y.
func (v Vector[U]) Turned(a Angle) Vector[U] {
	s, c := math.Sincos(float64(a))
	return Vector[U]{v.X*U(c) - v.Y*U(s), v.X*U(s) + v.Y*U(c)}
}

// Left is v rotated by a quarter turn from y towards x: (x, y) becomes (y, -x).
func (v Vector[U]) Left() Vector[U] { return Vector[U]{v.Y, -v.X} }

// AngleTo is the unsigned angle between v and w, 0 to 180 degrees.
func (v Vector[U]) AngleTo(w Vector[U]) Angle {
	return Angle(math.Abs(math.Atan2(float64(v.Cross(w)), float64(v.Dot(w)))))
}

func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }
