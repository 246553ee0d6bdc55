package annotate

import (
	"fmt"
	"strconv"

	"ogive/geometry/plane"
	"ogive/geometry/scale"
)

func (sc *scene) drawReference() {
	if sc.ref == nil {
		return
	}
	points := sc.spots(sc.ref.Points())
	if len(points) != len(sc.ref.Points()) {
		return
	}
	st := stroke{core: cores[kindReference], width: 1.3 * sc.fine()}
	switch sc.ref.(type) {
	case scale.Ruler:
		sc.lines(st, append([][]spot{points}, bars(points, 0.9*sc.em)...)...)
	case scale.Ticks:
		sc.lines(st, append([][]spot{points}, bars(points, 0.5*sc.em)...)...)
	case scale.Card:
		thin := stroke{core: cores[kindReference], width: sc.fine(), dash: []float64{0.5 * sc.em, 0.6 * sc.em}}
		sc.lines(thin, closed(points))
		st.width *= 1.6
		sc.lines(st, corners(points, 1.6*sc.em)...)
	default:
		sc.lines(st, bars(points, 0.5*sc.em)...)
	}
}

// bars are strokes across a line at each of its points, half of them on either
// side.
func bars(points []spot, half float64) [][]spot {
	if len(points) == 0 {
		return nil
	}
	across := points[len(points)-1].sub(points[0]).unit().square().times(half)
	var out [][]spot
	for _, q := range points {
		out = append(out, []spot{q.sub(across), q.add(across)})
	}
	return out
}

// corners are the angles of a quadrangle, each leg no longer than reach.
func corners(points []spot, reach float64) [][]spot {
	var out [][]spot
	n := len(points)
	for i, q := range points {
		leg := func(to spot) spot {
			d := to.sub(q)
			return q.add(d.unit().times(min(reach, d.length()/3)))
		}
		out = append(out, []spot{leg(points[(i+n-1)%n]), q, leg(points[(i+1)%n])})
	}
	return out
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
	middle := points[0].to(points[len(points)-1], 0.5)
	switch ref := sc.ref.(type) {
	case scale.Ruler:
		return middle, length(ref.Length) + " mm marked"
	case scale.Ticks:
		return middle, fmt.Sprintf("%d ticks, %s mm apart", len(ref.At), length(ref.Step))
	case scale.Card:
		return points[0].to(points[1], 0.5), length(ref.Width) + " × " + length(ref.Height) + " mm"
	}
	return spot{}, ""
}

func length(l plane.Millimetre) string { return strconv.FormatFloat(float64(l), 'f', -1, 64) }
