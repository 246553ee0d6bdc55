package annotate

import (
	"fmt"
	"strconv"

	"ogive/geometry/plane"
	"ogive/geometry/scale"
	"ogive/imaging/markshapes"
)

func (sc *scene) drawReference() {
	if sc.ref == nil {
		return
	}
	points := sc.spots(sc.ref.Points())
	if len(points) != len(sc.ref.Points()) {
		return
	}
	st := stroke{Core: cores[kindReference], Width: 1.3 * sc.fine()}
	switch sc.ref.(type) {
	case scale.Ruler:
		sc.Lines(st, append([][]spot{points}, markshapes.Bars(points, 0.9*sc.em)...)...)
	case scale.Ticks:
		sc.Lines(st, append([][]spot{points}, markshapes.Bars(points, 0.5*sc.em)...)...)
	case scale.Card:
		thin := stroke{Core: cores[kindReference], Width: sc.fine(), Dash: []float64{0.5 * sc.em, 0.6 * sc.em}}
		sc.Lines(thin, markshapes.Closed(points))
		st.Width *= 1.6
		sc.Lines(st, markshapes.Corners(points, 1.6*sc.em)...)
	default:
		sc.Lines(st, markshapes.Bars(points, 0.5*sc.em)...)
	}
}

// referenceLabel is what the reference measures, and where that is written.
func (sc *scene) referenceLabel() (spot, string) {
	if sc.ref == nil {
		return spot{}, ""
	}
	points := sc.spots(sc.ref.Points())
	if len(points) < 2 {
		return spot{}, ""
	}
	middle := points[0].To(points[len(points)-1], 0.5)
	switch ref := sc.ref.(type) {
	case scale.Ruler:
		return middle, length(ref.Length) + " mm marked"
	case scale.Ticks:
		return middle, fmt.Sprintf("%d ticks, %s mm apart", len(ref.At), length(ref.Step))
	case scale.Card:
		return points[0].To(points[1], 0.5), length(ref.Width) + " × " + length(ref.Height) + " mm"
	}
	return spot{}, ""
}

func length(l plane.Millimetre) string { return strconv.FormatFloat(float64(l), 'f', -1, 64) }
