package ruler

import (
	"fmt"
	"math"

	"ogive/geometry/plane"
	"ogive/geometry/scale"
)

// Distances of ticks found on rulers, in millimetres: the common ones first
// (common practice, no source).
var commonSteps = []float64{1, 0.5, 5, 10, 2, 25.4 / 16, 25.4 / 8, 25.4 / 32, 25.4 / 10, 25.4 / 4}

const (
	// counted is the share of ticks that must have been seen for their number
	// to be trusted.
	counted = 0.8
	// mostUnmarked is the number of spaces above which a ruler without longer
	// ticks is hardly one: what was counted may be a weave.
	mostUnmarked = 20
	// rounding is how far, in parts of itself, a length may be rounded.
	rounding = 0.005
)

// Check compares the number of spaces between the two ends with the length given
// for them. It returns a sentence if they contradict each other, and none if
// they agree or the ticks could not be counted reliably.
func Check(found Found, length plane.Millimetre) (warning string) {
	if !found.reliable() || !(length > 0) || math.IsInf(float64(length), 0) {
		return ""
	}
	if _, ok := found.step(float64(length)); ok {
		return ""
	}
	n, given := found.Spaces(), float64(length)
	switch found.Graduation {
	case Millimetres:
		return fmt.Sprintf("The ruler contradicts the length of %.4g mm: between its two ends %d spaces of 1 mm were counted. Say %d mm, or mark the ends anew.", given, n, n)
	case HalfMillimetres:
		return fmt.Sprintf("The ruler contradicts the length of %.4g mm: between its two ends %d spaces of half a millimetre were counted. Say %.4g mm, or mark the ends anew.", given, n, float64(n)/2)
	case Sixteenths:
		return fmt.Sprintf("The ruler contradicts the length of %.4g mm: its long ticks are those of inches, and between its two ends %d sixteenths of an inch were counted. Say %.4g mm, or mark the ends anew.", given, n, float64(n)*25.4/16)
	}
	if n > mostUnmarked {
		return ""
	}
	step := nearestStep(given / float64(n))
	return fmt.Sprintf("The ruler contradicts the length of %.4g mm: between its two ends %d spaces were counted, which would be %.3g mm each. With spaces of %.4g mm say %.4g mm, or mark the ends anew.", given, n, given/float64(n), step, step*float64(n))
}

// Scale is the ticks as a reference, if they were counted reliably and agree
// with the length given for the two ends; else false, and the two ends alone
// have to do.
func (f Found) Scale(length plane.Millimetre) (scale.Ticks, bool) {
	step, ok := f.step(float64(length))
	if !ok || !f.reliable() {
		return scale.Ticks{}, false
	}
	return scale.Ticks{At: f.Ticks, Step: plane.Millimetre(step)}, true
}

func (f Found) reliable() bool { return len(f.Ticks) >= 3 && f.seen() >= counted }

// step is the distance of the ticks with which the length agrees.
func (f Found) step(length float64) (float64, bool) {
	steps := commonSteps
	if s := f.Graduation.step(); s > 0 {
		steps = []float64{s}
	}
	for _, n := range f.counts() {
		for _, s := range steps {
			if math.Abs(float64(n)*s-length) <= rounding*length {
				return s, true
			}
		}
	}
	return 0, false
}

// counts is the number of spaces, the likeliest first, where a click may have
// meant one of two ticks.
func (f Found) counts() []int {
	n := f.Spaces()
	all := []int{n}
	for _, more := range []int{f.first, f.last, f.first + f.last} {
		if more != 0 && n+more > 0 {
			all = append(all, n+more)
		}
	}
	return all
}

func nearestStep(mm float64) float64 {
	best := commonSteps[0]
	for _, s := range commonSteps {
		if math.Abs(math.Log(s/mm)) < math.Abs(math.Log(best/mm)) {
			best = s
		}
	}
	return best
}
