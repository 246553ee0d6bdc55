package arch

import (
	"math"
	"slices"

	"ogive/geometry/plane"
)

// minimumPoints is the least number of points that can carry an arch: one more
// than the numbers of its fullest shape.
const minimumPoints = 7

// fittedPoints is the number of points a border is thinned to: enough for an
// arch, few enough to follow a dragged point.
const fittedPoints = 100

// resample is the border as at most fittedPoints points, each the mean of a
// stretch of equal length, so that crowded clicks don't outweigh sparse ones.
func resample(border []plane.Position) []plane.Position {
	total := 0.0
	for i := 1; i < len(border); i++ {
		total += float64(border[i].Distance(border[i-1]))
	}
	if len(border) <= fittedPoints || total == 0 {
		return border
	}
	stretch := total / fittedPoints
	points := make([]plane.Position, 0, fittedPoints+1)
	var sum plane.Vector[plane.Millimetre]
	n, along, next := 0, 0.0, stretch
	for i, p := range border {
		if i > 0 {
			along += float64(p.Distance(border[i-1]))
		}
		if along > next && n > 0 {
			points = append(points, plane.Position{}.Add(sum.Scale(1/float64(n))))
			sum, n = plane.Vector[plane.Millimetre]{}, 0
			for along > next {
				next += stretch
			}
		}
		sum, n = sum.Add(p.Sub(plane.Position{})), n+1
	}
	return append(points, plane.Position{}.Add(sum.Scale(1/float64(n))))
}

// guess is where the fits start: the axis and flare seen on the outer parts of
// the border, the point where the straight borders would meet, and the crown.
type guess struct {
	axis   plane.Vector[plane.Millimetre]
	flare  float64
	crown  plane.Position
	offset float64 // half the gap between the straight borders at the crown's level
}

// firstGuess reads a guess off the border.
func firstGuess(points []plane.Position) (guess, error) {
	n := len(points)
	outer := max(n/4, 3)
	left := direction(points[:outer]).Scale(-1)
	right := direction(points[n-outer:])
	axis := left.Add(right)
	if axis.Norm() < 0.1 {
		return guess{}, ErrBorder
	}
	g := guess{axis: axis.Direction()}
	g.flare = clamp(float64(left.AngleTo(right))/2*turnSign(left, right, points), leastFlare/2, mostFlare)
	a := Arch{Axis: g.axis}
	heights := make([]float64, n)
	for i, p := range points {
		_, heights[i] = a.local(p)
	}
	low := slices.Index(heights, slices.Min(heights))
	g.crown = points[low]
	g.offset = g.gapAtCrown(centroid(points[:outer]), centroid(points[n-outer:]))
	mid := g.middle(points[:outer], points[n-outer:])
	g.crown = g.crown.Add(a.right().Scale(mid))
	return g, nil
}

// turnSign is negative where the borders converge distally.
func turnSign(left, right plane.Vector[plane.Millimetre], points []plane.Position) float64 {
	across := points[len(points)-1].Sub(points[0])
	if across.Dot(right.Sub(left)) < 0 {
		return -1
	}
	return 1
}

// gapAtCrown is half the distance between the straight borders through l and r
// at the level of the crown.
func (g guess) gapAtCrown(l, r plane.Position) float64 {
	a := Arch{Axis: g.axis, Crown: g.crown}
	xl, yl := a.local(l)
	xr, yr := a.local(r)
	return math.Abs(xr-xl)/2 - (yl+yr)/2*math.Tan(g.flare)
}

// middle is how far right of the crown the axis runs, half way between the
// straight borders.
func (g guess) middle(left, right []plane.Position) float64 {
	a := Arch{Axis: g.axis, Crown: g.crown}
	xl, yl := a.local(centroid(left))
	xr, yr := a.local(centroid(right))
	t := math.Tan(g.flare)
	sign := math.Copysign(1, xr-xl)
	return ((xl + sign*yl*t) + (xr - sign*yr*t)) / 2
}

// starts are the numbers from which a shape is fitted.
//
// The straight borders pass the crown's level at the distance offset from the
// axis; an arc from psi to phi that is tangent to them has
// r = offset cos(phi) / (1 - cos(psi - phi)).
func (g guess) starts(shape Shape) [][]float64 {
	x0 := math.Max(g.offset, 0.05)
	base := Arch{Shape: shape, Crown: g.crown, Axis: g.axis, Flare: plane.Radians(g.flare), Turn: plane.RightAngle}
	tangent := func(psi, share float64) plane.Millimetre {
		return plane.Millimetre(share * x0 * math.Cos(g.flare) / (1 - math.Cos(psi-g.flare)))
	}
	fm := form{shape}
	switch shape {
	case V:
		base.Crown = g.crown.Add(g.axis.Scale(-math.Max(g.offset, 0) / math.Max(math.Tan(g.flare), 0.1)))
		return [][]float64{fm.numbers(base)}
	case Round:
		base.Radius = tangent(math.Pi/2, 1)
		return [][]float64{fm.numbers(base)}
	case U:
		base.Radius, base.Flat = tangent(math.Pi/2, 0.5), plane.Millimetre(x0)
		return [][]float64{fm.numbers(base)}
	}
	var starts [][]float64
	for _, degrees := range []float64{50, 75} {
		psi := math.Max(degrees*math.Pi/180, g.flare+0.2)
		psi = math.Min(psi, mostTurn)
		base.Turn, base.Radius = plane.Radians(psi), tangent(psi, 1)
		starts = append(starts, fm.numbers(base))
	}
	return starts
}

// deviation is the tolerance of the first, wide fit: a few per cent of the
// border's size, so that no part of the border is thrown out before the shape
// is known.
func (g guess) deviation(points []plane.Position, floor float64) float64 {
	size := float64(points[0].Distance(g.crown)+points[len(points)-1].Distance(g.crown)) / 2
	return math.Max(0.05*size, floor)
}

// direction is the unit direction of the total least squares line through ps,
// from the first towards the last.
func direction(ps []plane.Position) plane.Vector[plane.Millimetre] {
	c := centroid(ps)
	var xx, xy, yy float64
	for _, p := range ps {
		v := p.Sub(c)
		xx += float64(v.X * v.X)
		xy += float64(v.X * v.Y)
		yy += float64(v.Y * v.Y)
	}
	s, co := math.Sincos(math.Atan2(2*xy, xx-yy) / 2)
	d := plane.Vec(plane.Millimetre(co), plane.Millimetre(s))
	if d.Dot(ps[len(ps)-1].Sub(ps[0])) < 0 {
		d = d.Scale(-1)
	}
	return d
}

func centroid(ps []plane.Position) plane.Position {
	var sum plane.Vector[plane.Millimetre]
	for _, p := range ps {
		sum = sum.Add(p.Sub(plane.Position{}))
	}
	return plane.Position{}.Add(sum.Scale(1 / float64(len(ps))))
}

func median(xs []float64) float64 {
	s := slices.Clone(xs)
	slices.Sort(s)
	n := len(s)
	if n%2 == 1 {
		return s[n/2]
	}
	return (s[n/2-1] + s[n/2]) / 2
}
