package observed

import (
	"fmt"

	"ogive/geometry/hand"
	"ogive/geometry/reading"
	"ogive/imaging/casebook/readings"
	"ogive/imaging/wording"
)

// part is a part of the marks that a figure rests on.
type part int

const (
	jointMarks part = iota
	webMarks
	scaleMarks
	junctionMarks
)

// figure is one that is compared, under the name and unit that it goes by in a
// table.
type figure struct {
	name  func(v hand.View) string
	of    func(w reading.Web) (float64, bool)
	rests []part
}

func always(name string) func(hand.View) string { return func(hand.View) string { return name } }

// figures in the order in which they are read. The depth is named by the view
// too, as the index is: in the palmar view it begins at a crease.
var figures = []figure{
	{wording.IndexName, func(w reading.Web) (float64, bool) {
		if w.Index == nil {
			return 0, false
		}
		return float64(w.Index.Value), true
	}, []part{jointMarks, webMarks}},
	{func(v hand.View) string { return fmt.Sprintf("%v %s (mm)", v, wording.Depth) }, func(w reading.Web) (float64, bool) {
		if w.Depth == nil {
			return 0, false
		}
		return float64(w.Depth.Value), true
	}, []part{jointMarks, webMarks, scaleMarks}},
	{always(wording.Span + " (mm)"), func(w reading.Web) (float64, bool) {
		if w.Span == nil {
			return 0, false
		}
		return float64(w.Span.Value), true
	}, []part{webMarks, scaleMarks}},
	{always(wording.Rise + " (mm)"), func(w reading.Web) (float64, bool) {
		if w.Rise == nil {
			return 0, false
		}
		return float64(w.Rise.Value), true
	}, []part{webMarks, scaleMarks}},
	{always(wording.CrownAngle + " (°)"), func(w reading.Web) (float64, bool) {
		if w.CrownAngle == nil {
			return 0, false
		}
		return w.CrownAngle.Value.Degrees(), true
	}, []part{webMarks}},
	{always(wording.Slope + " (°)"), func(w reading.Web) (float64, bool) {
		if w.Slope == nil {
			return 0, false
		}
		return w.Slope.Value.Degrees(), true
	}, []part{junctionMarks}},
}

// value is one figure of one web.
type value struct {
	web    hand.Web
	figure int // in figures
	name   string
	value  float64
}

// valuesOf are the figures of a reading, by web and then in their order.
func valuesOf(k readings.Kept) []value {
	var out []value
	for _, w := range k.Reading.Webs {
		for i, f := range figures {
			if v, ok := f.of(w); ok {
				out = append(out, value{w.Web, i, f.name(k.Reading.View), v})
			}
		}
	}
	return out
}

// target names a web on a photograph.
func target(photograph string, side hand.Side, w hand.Web) string {
	return fmt.Sprintf("%s, %v hand, %v", photograph, side, w)
}
