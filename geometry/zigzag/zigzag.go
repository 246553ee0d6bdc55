// Package zigzag draws the zigzag incisions along the join of two digits, and
// tells what each limb and each flap is like.
//
//	z := zigzag.Regular(zigzag.Join{From: a, To: b}, 4, reach, true)  // 4 flaps
//	palm := z.Opposite()                     // its bays meet z's tips
//	z.Points[2] = dragged                    // irregular ones are allowed
//	zigzag.Of(z, fit).Flaps[1].TipAngle      // with its uncertainty
//
// Along the join the points are a half period p apart, across it they reach from
// side to side by A. A limb then stands at atan(p/A) to the transverse, and so to
// the creases, and a flap has a tip angle of 2 atan(p/A): plane geometry.
package zigzag

import (
	"math"

	"ogive/geometry/plane"
)

// Join is the line along which two digits are joined, from its proximal to its
// distal end.
type Join struct{ From, To plane.Position }

// Length is the length of the join.
func (j Join) Length() plane.Millimetre { return j.From.Distance(j.To) }

// axis is one long and points distally, across to its right as one looks along
// it on a picture whose y points down.
func (j Join) axis() plane.Vector[plane.Millimetre]   { return j.To.Sub(j.From).Direction() }
func (j Join) across() plane.Vector[plane.Millimetre] { return j.axis().Turned(plane.RightAngle) }

// Zigzag is one incision: its points in order from proximal to distal. Every
// point but the first and the last is the tip of a flap.
type Zigzag struct {
	Join   Join
	Points []plane.Position
}

// MostFlaps is the most flaps that Regular draws.
const MostFlaps = 20

// Regular is the zigzag with n flaps (1 to MostFlaps) over the length of the
// join, which reaches from side to side by reach, half to either side of the
// join. It begins on the right of the join or on its left, as one looks distally
// on a picture whose y points down. The half period is the length of the join
// over n + 1.
func Regular(j Join, n int, reach plane.Millimetre, right bool) Zigzag {
	n = min(max(n, 1), MostFlaps)
	z := Zigzag{Join: j, Points: make([]plane.Position, n+2)}
	side := float64(reach) / 2
	if !right {
		side = -side
	}
	for i := range z.Points {
		z.Points[i] = j.From.Towards(j.To, float64(i)/float64(n+1)).Add(j.across().Scale(side))
		side = -side
	}
	return z
}

// Opposite is the zigzag for the other face of the digits, as it would be seen
// through them: every point on the other side of the join at the same level. The
// tips of one meet the bays of the other, so that the flaps of the two faces
// interdigitate. Of a regular zigzag it is the same as a shift by half a period.
func (z Zigzag) Opposite() Zigzag {
	out := Zigzag{Join: z.Join, Points: make([]plane.Position, len(z.Points))}
	for i, p := range z.Points {
		out.Points[i] = p.Add(z.Join.across().Scale(-2 * float64(z.aside(p))))
	}
	return out
}

// aside is how far p lies to the right of the join.
func (z Zigzag) aside(p plane.Position) plane.Millimetre {
	return p.Sub(z.Join.From).Dot(z.Join.across())
}

// level is how far p lies distal to the beginning of the join.
func (z Zigzag) level(p plane.Position) plane.Millimetre {
	return p.Sub(z.Join.From).Dot(z.Join.axis())
}

// FlapCount is the number of flaps.
func (z Zigzag) FlapCount() int { return max(len(z.Points)-2, 0) }

// Reach is how far the points reach across the join from side to side.
func (z Zigzag) Reach() plane.Millimetre {
	if len(z.Points) == 0 {
		return 0
	}
	low, high := plane.Millimetre(math.Inf(1)), plane.Millimetre(math.Inf(-1))
	for _, p := range z.Points {
		low, high = min(low, z.aside(p)), max(high, z.aside(p))
	}
	return high - low
}

// BeginsRight reports whether the first point lies to the right of the join.
func (z Zigzag) BeginsRight() bool { return len(z.Points) > 0 && z.aside(z.Points[0]) > 0 }

// Mismatch is the greatest distance along the join from a tip of z to the
// nearest point of the other face that lies on the opposite side, and so is the
// bay to receive it. It is zero where all interdigitate exactly.
func (z Zigzag) Mismatch(other Zigzag) plane.Millimetre {
	worst := 0.0
	for i := 1; i+1 < len(z.Points); i++ {
		nearest := math.Inf(1)
		for _, q := range other.Points {
			if (z.aside(z.Points[i]) > 0) != (z.aside(q) > 0) {
				nearest = math.Min(nearest, math.Abs(float64(z.level(q)-z.level(z.Points[i]))))
			}
		}
		worst = math.Max(worst, nearest)
	}
	return plane.Millimetre(worst)
}
