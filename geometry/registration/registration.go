// Package registration brings one hand over another: the similarity (turn,
// scale and shift) that takes landmarks of the one nearest to those of the
// other, in the sense of least squares.
//
//	s, err := registration.FitMirrored(otherHand, thisHand)
//	ghost := s.Position(p)  // where a point of the other hand comes to lie
//	s.RMS                   // how well the landmarks agree, in millimetres
//
// Source: Umeyama S. Least-squares estimation of transformation parameters
// between two point patterns. IEEE PAMI 1991;13:376-80. In the plane, where its
// singular value decomposition is of a 2 by 2 matrix, the solution with a given
// sign of the determinant has the closed form used here.
package registration

import (
	"errors"
	"fmt"
	"math"

	"ogive/geometry/plane"
)

// Similarity takes a position p to Scale * R p + Shift, R being a rotation by
// Turn, after a reflection in the x axis (y becomes -y) if Mirrored.
type Similarity struct {
	Scale    float64
	Turn     plane.Angle
	Mirrored bool
	Shift    plane.Vector[plane.Millimetre]
	// RMS is the root mean square of the distances that remain between the
	// landmarks of the two hands.
	RMS plane.Millimetre
}

// Fit is the similarity, without reflection, that takes each point of from
// nearest to its fellow in to: for the same hand on two photographs.
func Fit(from, to []plane.Position) (Similarity, error) { return fit(from, to, false) }

// FitMirrored is the similarity with the reflection forced: for the other hand.
func FitMirrored(from, to []plane.Position) (Similarity, error) { return fit(from, to, true) }

// Position is where p comes to lie.
func (s Similarity) Position(p plane.Position) plane.Position {
	v := s.Vector(p.Sub(plane.Position{}))
	return plane.Position{}.Add(v).Add(s.Shift)
}

// Vector is what becomes of the displacement v.
func (s Similarity) Vector(v plane.Vector[plane.Millimetre]) plane.Vector[plane.Millimetre] {
	if s.Mirrored {
		v.Y = -v.Y
	}
	return v.Turned(s.Turn).Scale(s.Scale)
}

// Positions is where each of ps comes to lie.
func (s Similarity) Positions(ps []plane.Position) []plane.Position {
	out := make([]plane.Position, len(ps))
	for i, p := range ps {
		out[i] = s.Position(p)
	}
	return out
}

// fit takes both patterns about their centroids; the turn is the direction, and
// the scale the length, of the sum of the products of the one with the other.
func fit(from, to []plane.Position, mirrored bool) (Similarity, error) {
	if err := check(from, to); err != nil {
		return Similarity{}, err
	}
	s := Similarity{Scale: 1, Mirrored: mirrored}
	fromMid, toMid := centroid(from), centroid(to)
	var dot, cross, size plane.Millimetre
	for i := range from {
		a, b := s.Vector(from[i].Sub(fromMid)), to[i].Sub(toMid)
		dot += a.Dot(b)
		cross += a.Cross(b)
		size += a.Dot(a)
	}
	length := math.Hypot(float64(dot), float64(cross))
	if size == 0 || length == 0 {
		return Similarity{}, errors.New("the landmarks of one hand lie all in one place; mark them apart from each other")
	}
	s.Turn = plane.Radians(math.Atan2(float64(cross), float64(dot)))
	s.Scale = length / float64(size)
	s.Shift = toMid.Sub(plane.Position{}).Add(s.Vector(fromMid.Sub(plane.Position{})).Scale(-1))
	var left plane.Millimetre
	for i := range from {
		d := s.Position(from[i]).Sub(to[i])
		left += d.Dot(d)
	}
	s.RMS = plane.Millimetre(math.Sqrt(float64(left) / float64(len(from))))
	return s, nil
}

func check(from, to []plane.Position) error {
	if len(from) != len(to) {
		return fmt.Errorf("one hand has %d landmarks, the other %d; mark the same ones on both", len(from), len(to))
	}
	if len(from) < 2 {
		return fmt.Errorf("the hands share %d landmarks; two are needed, better four: MCP and PIP of both digits", len(from))
	}
	for i := range from {
		if !from[i].Finite() || !to[i].Finite() {
			return fmt.Errorf("landmark %d is not a finite number; mark it again", i+1)
		}
	}
	return nil
}

func centroid(ps []plane.Position) plane.Position {
	var sum plane.Vector[plane.Millimetre]
	for _, p := range ps {
		sum = sum.Add(p.Sub(plane.Position{}))
	}
	return plane.Position{}.Add(sum.Scale(1 / float64(len(ps))))
}
