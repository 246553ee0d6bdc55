package followup

import (
	"cmp"
	"math"
	"slices"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/geometry/scale"
)

// Sitting is one reading of one web: a photograph as one observer marked it.
type Sitting struct {
	Photograph int64
	Day        Day
	// Before says that the web had not been released yet.
	Before   bool
	Index    plane.Estimate[plane.Ratio]
	Method   scale.Method
	View     hand.View
	Observer string
	Feel     Feel
}

// History is what is known of one web of the operated hand.
type History struct {
	Operated Day // zero: months count from the first sitting
	Sittings []Sitting
	// Other is the same web of the other hand.
	Other []Sitting
	// Plan is the index the web was planned at, nil if there was no plan.
	Plan *plane.Ratio
	// Baseline is the photograph to measure creep from. Zero: the first after
	// the web was released.
	Baseline int64
}

// Series is the history of one web in order of days.
type Series struct {
	// Operated is the day the months count from; Since says whether that is the
	// day of the operation or, for want of it, the first sitting.
	Operated Day
	Since    Since
	Points   []Point
	// Baseline is which of Points creep is measured from, -1 if there is none.
	Baseline int
	Band     []BandPoint
	Plan     *plane.Ratio
}

// Since is what months count from.
type Since int

// The beginnings.
const (
	SinceOperation Since = iota
	SinceFirstSitting
)

// Point is one sitting as seen from the operation and from the baseline.
type Point struct {
	Sitting
	Months float64 // negative before the operation
	// Creep is nil before the release, at the baseline itself, in another view
	// than the baseline's and where there is no baseline.
	Creep   *plane.Estimate[plane.Ratio]
	Grading Grading
	// Differs says what was done otherwise than at the baseline.
	Differs []Difference
}

// Difference is something that was done otherwise than at the baseline, so that
// a change of the index may come from it and not from the web.
type Difference int

// The differences. Another view is another index: no creep is told across it.
const (
	OtherView Difference = iota + 1
	OtherScale
	OtherObserver
)

// Latest is the last point with a creep that can be told, and false if there is
// none. Of several on the last day it is the one taken most as the baseline was.
func (s Series) Latest() (Point, bool) {
	var out Point
	for _, p := range slices.Backward(s.Points) {
		switch {
		case p.Creep == nil:
		case out.Creep == nil, p.Day == out.Day && len(p.Differs) < len(out.Differs):
			out = p
		}
	}
	return out, out.Creep != nil
}

// Follow puts the sittings of a web in order and tells the creep of each. A
// sitting without a day or without an index that is a number is left out.
func Follow(h History) Series {
	own, other := sound(h.Sittings), sound(h.Other)
	s := Series{Operated: h.Operated, Plan: h.Plan, Baseline: baselineOf(own, h.Baseline)}
	if s.Operated == (Day{}) {
		s.Operated, s.Since = first(own, other), SinceFirstSitting
	}
	for i, o := range own {
		p := Point{Sitting: o, Months: Months(s.Operated, o.Day), Grading: Grading{Most: 4}}
		if s.Baseline >= 0 {
			p.judge(own[s.Baseline], i == s.Baseline)
		}
		s.Points = append(s.Points, p)
	}
	s.Band = band(s, own, other)
	return s
}

func (p *Point) judge(baseline Sitting, itself bool) {
	if p.View != baseline.View {
		p.Differs = append(p.Differs, OtherView)
	}
	if p.Method != baseline.Method {
		p.Differs = append(p.Differs, OtherScale)
	}
	if p.Observer != baseline.Observer {
		p.Differs = append(p.Differs, OtherObserver)
	}
	if itself || p.Before || p.View != baseline.View {
		return
	}
	if c := Creep(p.Index, baseline.Index); !math.IsNaN(float64(c.Value)) {
		p.Creep, p.Grading = &c, Grade(c, p.Feel)
	}
}

func sound(all []Sitting) []Sitting {
	out := slices.DeleteFunc(slices.Clone(all), func(s Sitting) bool {
		sum := float64(s.Index.Value + s.Index.U95)
		return s.Day == (Day{}) || math.IsNaN(sum) || math.IsInf(sum, 0)
	})
	slices.SortStableFunc(out, func(a, b Sitting) int {
		return cmp.Or(a.Day.midnight().Compare(b.Day.midnight()), later(a.Before, b.Before))
	})
	return out
}

// later puts what was photographed before the release first, where both were
// photographed on one day.
func later(a, b bool) int {
	switch {
	case a == b:
		return 0
	case a:
		return -1
	}
	return 1
}

func baselineOf(own []Sitting, chosen int64) int {
	if i := slices.IndexFunc(own, func(s Sitting) bool { return chosen != 0 && s.Photograph == chosen }); i >= 0 {
		return i
	}
	return slices.IndexFunc(own, func(s Sitting) bool { return !s.Before })
}

func first(own, other []Sitting) Day {
	switch {
	case len(own) == 0 && len(other) == 0:
		return Day{}
	case len(own) == 0 || len(other) > 0 && other[0].Day.Before(own[0].Day):
		return other[0].Day
	}
	return own[0].Day
}
