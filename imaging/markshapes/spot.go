// Package markshapes draws the marks of a hand, so that the screen and the saved
// picture show the same ones:
//
//	pen := markshapes.NewPen(img, unit, casing)
//	pen.Joint(hand.MCP, markshapes.XY(120, 80), 6)
//	pen.Lines(markshapes.Stroke{Core: palette.Cores[palette.Arch], Width: 4}, curve)
//	markshapes.WriteCased(img, markshapes.Bold(14), palette.Paper, markshapes.XY(130, 84), "ring MCP")
//
// Every mark is a light core in a dark casing, so that it is seen on fair skin,
// on dark skin and on any drape, and is known by its shape before its colour.
// How large marks are is the drawer's business: places and reaches are in pixels
// of the picture.
package markshapes

import "math"

// Spot is a place on a picture, or a way on it, in pixels: x right, y down.
type Spot struct{ X, Y float64 }

// XY is the spot with those coordinates.
func XY(x, y float64) Spot { return Spot{x, y} }

// Add is a moved by v.
func (a Spot) Add(v Spot) Spot { return Spot{a.X + v.X, a.Y + v.Y} }

// Sub is the way from b to a.
func (a Spot) Sub(b Spot) Spot { return Spot{a.X - b.X, a.Y - b.Y} }

// Times is the way a, f times as long.
func (a Spot) Times(f float64) Spot { return Spot{a.X * f, a.Y * f} }

// Dot is the scalar product.
func (a Spot) Dot(b Spot) float64 { return a.X*b.X + a.Y*b.Y }

// Length is the length of the way a.
func (a Spot) Length() float64 { return math.Hypot(a.X, a.Y) }

// To is the part t of the way from a to b.
func (a Spot) To(b Spot, t float64) Spot { return a.Add(b.Sub(a).Times(t)) }

// Square is a way as long as a, a quarter turn from it.
func (a Spot) Square() Spot { return Spot{-a.Y, a.X} }

// Unit is a one long; zero stays zero.
func (a Spot) Unit() Spot {
	if n := a.Length(); n > 0 {
		return a.Times(1 / n)
	}
	return a
}

// Along is the place at that share of the length of a path, 0 its beginning, 1 its
// end; false where it has no length.
func Along(path []Spot, share float64) (Spot, bool) {
	whole := 0.0
	for i := 1; i < len(path); i++ {
		whole += path[i].Sub(path[i-1]).Length()
	}
	gone := 0.0
	for i := 1; i < len(path); i++ {
		step := path[i].Sub(path[i-1]).Length()
		if step > 0 && (gone+step >= share*whole || i == len(path)-1) {
			return path[i-1].To(path[i], math.Min((share*whole-gone)/step, 1)), true
		}
		gone += step
	}
	return Spot{}, false
}

// Closed is a path that ends where it began.
func Closed(path []Spot) []Spot {
	if len(path) < 3 {
		return path
	}
	return append(path[:len(path):len(path)], path[0])
}
