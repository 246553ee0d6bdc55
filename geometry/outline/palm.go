package outline

import (
	"math"

	"ogive/geometry/plane"
)

// circle is a circle in the plane.
type circle[U plane.Unit] struct {
	centre plane.Point[U]
	radius U
}

// inscribed is about the largest circle inside the outline: on a hand, the
// palm. It is looked for on a grid, then on finer ones about the best place.
func inscribed[U plane.Unit](outline []plane.Point[U]) circle[U] {
	low, high := outline[0], outline[0]
	for _, p := range outline {
		low = plane.Pt(min(low.X, p.X), min(low.Y, p.Y))
		high = plane.Pt(max(high.X, p.X), max(high.Y, p.Y))
	}
	const cells = 16
	var best circle[U]
	mid, half := low.Mid(high), high.Sub(low).Scale(0.5)
	for range 5 {
		from := mid
		for i := range cells + 1 {
			for j := range cells + 1 {
				c := from.Add(plane.Vec(
					half.X*U(2*i-cells)/cells,
					half.Y*U(2*j-cells)/cells))
				if d := depth(outline, c); d > best.radius {
					best, mid = circle[U]{c, d}, c
				}
			}
		}
		half = half.Scale(0.25)
	}
	return best
}

// depth is the distance of p from the outline, negative outside it.
func depth[U plane.Unit](outline []plane.Point[U], p plane.Point[U]) U {
	least, inside := U(math.Inf(1)), false
	a := outline[len(outline)-1]
	for _, b := range outline {
		if (a.Y > p.Y) != (b.Y > p.Y) && p.X < a.X+(b.X-a.X)*(p.Y-a.Y)/(b.Y-a.Y) {
			inside = !inside
		}
		ab, ap := b.Sub(a), p.Sub(a)
		k := 0.0
		if n := ab.Dot(ab); n > 0 {
			k = min(max(float64(ap.Dot(ab)/n), 0), 1)
		}
		least = min(least, p.Distance(a.Towards(b, k)))
		a = b
	}
	if !inside {
		return -least
	}
	return least
}
