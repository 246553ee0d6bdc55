// Package drawn tells the figures of what is drawn on a photograph, such as a
// planned flap, with how far the scale of the photograph can be trusted.
//
//	e := drawn.Figure[plane.SquareMillimetre](fit, outline, area)
//
// What is drawn lies on the plane of the best map. If another of the likely maps
// were the true one, the same pixels would lie elsewhere on the skin; U95 is the
// distance from the figure within which 95 per cent of them keep it
// (JCGM 101:2008, propagation of distributions). The pen has no error of its
// own: a drawn point is meant where it is drawn.
package drawn

import (
	"math"
	"slices"

	"ogive/geometry/plane"
	"ogive/geometry/scale"
)

// trials is how many of the likely maps are tried, few enough for a dragged
// point to be followed.
const trials = 200

// Figure is one figure of the points, which lie on the plane of fit.Best.
func Figure[Q plane.Measured](fit scale.Fit, points []plane.Position, figure func([]plane.Position) Q) plane.Estimate[Q] {
	e := Figures(fit, points, func(ps []plane.Position) []float64 { return []float64{float64(figure(ps))} })[0]
	return plane.Estimate[Q]{Value: Q(e.Value), U95: Q(e.U95)}
}

// Figures is several figures of the points at once, always as many. The points
// are handed over in the same place every time: figures must not keep them.
func Figures(fit scale.Fit, points []plane.Position, figures func([]plane.Position) []float64) []plane.Estimate[float64] {
	values := figures(points)
	off := make([][]float64, len(values))
	for i := range off {
		off[i] = make([]float64, 0, trials)
	}
	for trial := range throughLikely(fit, points) {
		for i, v := range figures(trial) {
			if d := math.Abs(v - values[i]); !math.IsNaN(d) {
				off[i] = append(off[i], d)
			}
		}
	}
	out := make([]plane.Estimate[float64], len(values))
	for i, v := range values {
		out[i] = plane.Estimate[float64]{Value: v, U95: Upper95(off[i])}
	}
	return out
}

// throughLikely yields the points as they would lie if each of the likely maps
// were the true one, each time in the same place.
func throughLikely(fit scale.Fit, points []plane.Position) func(func([]plane.Position) bool) {
	return func(yield func([]plane.Position) bool) {
		back := fit.Best.Back()
		pixels := make([]plane.PixelPoint, len(points))
		for i, p := range points {
			pixels[i] = back.Pixel(p)
		}
		moved := make([]plane.Position, len(points))
		n := min(trials, len(fit.Likely))
		for i := range n {
			m := fit.Likely[i*len(fit.Likely)/n]
			for k, q := range pixels {
				moved[k] = m.Position(q)
			}
			if !yield(moved) {
				return
			}
		}
	}
}

// Upper95 is the distance that 95 per cent of the distances keep to, zero where
// there are none. It sorts them.
func Upper95(distances []float64) float64 {
	if len(distances) == 0 {
		return 0
	}
	slices.Sort(distances)
	return distances[min(len(distances)*95/100, len(distances)-1)]
}
