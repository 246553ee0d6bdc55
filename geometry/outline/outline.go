// Package outline finds the fingers and the webs between them on the closed
// outline of a hand, so that they can be proposed without being marked.
//
//	for _, v := range outline.Valleys(points) {
//		crown := points[v.At] // the bottom of a web
//		a, b := points[v.Tips[0]], points[v.Tips[1]]
//	}
package outline

import (
	"math"
	"slices"

	"ogive/geometry/plane"
)

// Valley is a web on an outline: the point at its bottom and the tips of the
// fingers on either side, in the outline's order, by their numbers; and the
// distance of the bottom from the line between the tips.
type Valley[U plane.Unit] struct {
	At    int
	Tips  [2]int
	Depth U
}

// Parts of the palm's radius: a finger stands out by more than leastFinger and
// is narrower than widestFinger, which a forearm or the edge of a wrist is not
// (common practice, no source).
const (
	leastFinger  = 0.35
	widestFinger = 1.0
)

// Valleys finds the webs between neighbouring fingers on a closed outline, in
// the outline's order. The points may be unevenly spaced and run either way
// round; they need not begin anywhere in particular. Nothing is found on an
// outline without fingers.
func Valleys[U plane.Unit](outline []plane.Point[U]) []Valley[U] {
	if len(outline) < 8 {
		return nil
	}
	palm := inscribed(outline)
	if !(palm.radius > 0) {
		return nil
	}
	reach := make([]float64, len(outline))
	for i, p := range outline {
		reach[i] = float64(p.Distance(palm.centre))
	}
	var tips []int
	peaks := prominent(reach, leastFinger*float64(palm.radius))
	for k, at := range peaks {
		before := lowest(reach, peaks[(k+len(peaks)-1)%len(peaks)], at)
		after := lowest(reach, at, peaks[(k+1)%len(peaks)])
		f := halfFinger(outline, reach, before, at, after)
		if f.wide < widestFinger*palm.radius {
			tips = append(tips, f.tip)
		} else {
			tips = append(tips, -1)
		}
	}
	var valleys []Valley[U]
	for k, a := range tips {
		b := tips[(k+1)%len(tips)]
		if a >= 0 && b >= 0 && a != b && !acrossPalm(outline, a, b, palm.centre) {
			valleys = append(valleys, deepest(outline, a, b))
		}
	}
	slices.SortFunc(valleys, func(v, w Valley[U]) int { return v.At - w.At })
	return valleys
}

// acrossPalm reports whether the way round from tip a to tip b goes past the
// wrist, so that the palm and not a web lies between them.
func acrossPalm[U plane.Unit](outline []plane.Point[U], a, b int, palm plane.Point[U]) bool {
	pocket := []plane.Point[U]{outline[a]}
	for i := a; i != b; {
		i = (i + 1) % len(outline)
		pocket = append(pocket, outline[i])
	}
	return depth(pocket, palm) > 0
}

// deepest is the point between two tips that lies furthest from the line
// through them.
func deepest[U plane.Unit](outline []plane.Point[U], a, b int) Valley[U] {
	line := outline[b].Sub(outline[a]).Direction()
	v := Valley[U]{At: a, Tips: [2]int{a, b}}
	for i := a; i != b; i = (i + 1) % len(outline) {
		if d := U(math.Abs(float64(line.Cross(outline[i].Sub(outline[a]))))); d > v.Depth {
			v.At, v.Depth = i, d
		}
	}
	return v
}

// finger is the distal half of a finger: its tip and its width at the middle.
type finger[U plane.Unit] struct {
	tip  int
	wide U
}

// halfFinger looks at the part of a peak beyond the middle between its top and
// the higher of the two valleys beside it. The tip is the point furthest from
// the middle of the finger's section there.
func halfFinger[U plane.Unit](outline []plane.Point[U], reach []float64, before, top, after int) finger[U] {
	half := (reach[top] + math.Max(reach[before], reach[after])) / 2
	n := len(outline)
	from, p := crossing(outline, reach, top, before, n-1, half)
	to, q := crossing(outline, reach, top, after, 1, half)
	f := finger[U]{tip: top, wide: p.Distance(q)}
	middle := p.Mid(q)
	for i := from; i != to; i = (i + 1) % n {
		if outline[i].Distance(middle) > outline[f.tip].Distance(middle) {
			f.tip = i
		}
	}
	return f
}

// crossing goes from the top towards end, by the given step around the outline,
// to where the reach falls to the level: the last point above it and the place.
func crossing[U plane.Unit](outline []plane.Point[U], reach []float64, top, end, step int, level float64) (int, plane.Point[U]) {
	i := top
	for i != end {
		next := (i + step) % len(outline)
		if reach[next] <= level {
			return i, outline[i].Towards(outline[next], (reach[i]-level)/(reach[i]-reach[next]))
		}
		i = next
	}
	return i, outline[i]
}

// lowest is the place of the least value from a on to b.
func lowest(values []float64, a, b int) int {
	low := a
	for i := a; i != b; i = (i + 1) % len(values) {
		if values[i] < values[low] {
			low = i
		}
	}
	return low
}

// prominent lists, in order, the peaks of a closed row of values that stand out
// by at least the given height from the valleys on both sides.
func prominent(values []float64, height float64) []int {
	n, start := len(values), 0
	for i, v := range values {
		if v < values[start] {
			start = i
		}
	}
	var peaks []int
	low, top := values[start], -1 // top is -1 while no peak stands out yet
	for k := range n + 1 {
		i := (start + k) % n
		switch v := values[i]; {
		case top < 0 && v > low+height, top >= 0 && v > values[top]:
			top = i
		case top >= 0 && v < values[top]-height:
			peaks = append(peaks, top)
			low, top = v, -1
		case top < 0:
			low = math.Min(low, v)
		}
	}
	return peaks
}
