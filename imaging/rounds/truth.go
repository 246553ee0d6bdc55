package rounds

import (
	"math"

	"ogive/geometry/arch"
	"ogive/geometry/hand"
	"ogive/geometry/norms"
	"ogive/geometry/plane"
	"ogive/geometry/reading"
	"ogive/geometry/scale"
	"ogive/geometry/webframe"
	"ogive/imaging/measure"
	"ogive/imaging/phantom"
)

// Truth is what an answer is held against.
type Truth struct {
	Side hand.Side
	View hand.View
	// Exact is true of a phantom; else By is the observer whose marks are taken
	// for the truth.
	Exact bool
	By    string
	// Plane takes pixels to millimetres.
	Plane  scale.Map
	Joints map[hand.Digit]map[hand.Joint]plane.PixelPoint
	Webs   []WebTruth
}

// WebTruth is the truth of one web; a figure that is not known is nil. A V has no
// span to be judged.
type WebTruth struct {
	Web hand.Web
	// Shape is zero where it is not known. ShapeAlso are shapes that the
	// reference's border allows as well.
	Shape     arch.Shape
	ShapeAlso []arch.Shape
	Index     *plane.Estimate[plane.Ratio]
	Span      *plane.Estimate[plane.Millimetre]
	Slope     *plane.Estimate[plane.Angle]

	// Where things lie on the photograph.
	Crown     plane.PixelPoint
	Springing [2]plane.PixelPoint
	Border    []plane.PixelPoint
	Arch      []plane.PixelPoint
	Junction  []plane.PixelPoint
	Axis      [2]plane.PixelPoint // of the digit, in the web view

	verdicts map[Asked]norms.Verdict
}

// Web is the truth of that web, if it is known.
func (t Truth) Web(w hand.Web) (WebTruth, bool) {
	for _, web := range t.Webs {
		if web.Web == w {
			return web, true
		}
	}
	return WebTruth{}, false
}

// frame is the frame of a web, where its four joints are known.
func (t Truth) frame(w hand.Web) (webframe.Frame, bool) {
	return webframe.Of(hand.Marks{Joints: t.Joints}, t.Plane, w)
}

// ofPhantom is the truth of a phantom, judged by the limits.
func ofPhantom(p phantom.Truth, l Limits) Truth {
	t := Truth{Side: p.Side, View: p.View, Exact: true, Plane: p.Plane, Joints: p.Joints}
	for _, w := range p.Webs {
		web := WebTruth{
			Web: w.Web, Shape: w.Shape, Index: exactly(w.Index),
			Crown: w.Crown, Springing: w.Springing, Border: w.Border, Arch: between(w.Border, w.Springing),
		}
		if w.Shape != arch.V {
			web.Span = exactly(w.Span)
		} else {
			web.Arch = w.Border
		}
		t.Webs = append(t.Webs, web)
	}
	for _, j := range p.Junctions {
		t.Webs = append(t.Webs, WebTruth{Web: j.Web, Slope: exactly(j.Slope), Junction: j.Line, Axis: j.Axis})
	}
	t.judge(l.table())
	return t
}

func exactly[Q plane.Measured](value Q) *plane.Estimate[Q] { return &plane.Estimate[Q]{Value: value} }

// between is the part of the border from one springing over the crown to the other.
func between(border []plane.PixelPoint, springing [2]plane.PixelPoint) []plane.PixelPoint {
	if len(border) == 0 {
		return nil
	}
	from, to := nearest(border, springing[0]), nearest(border, springing[1])
	return border[min(from, to) : max(from, to)+1]
}

func nearest(line []plane.PixelPoint, p plane.PixelPoint) int {
	best, least := 0, plane.Pixel(math.Inf(1))
	for i, q := range line {
		if d := q.Distance(p); d < least {
			best, least = i, d
		}
	}
	return best
}

// ofReading is the truth that a reference observer's marks come to.
func ofReading(r measure.Result, by string, l Limits) Truth {
	m := r.Marks.Marks
	t := Truth{Side: m.Side, View: m.View, By: by, Plane: r.Scale.Best, Joints: m.Joints}
	for _, w := range r.Reading.Webs {
		t.Webs = append(t.Webs, webOfReading(w, m))
	}
	t.judge(l.table())
	return t
}

func webOfReading(w reading.Web, m hand.Marks) WebTruth {
	web := WebTruth{
		Web: w.Web, Shape: w.Shape, ShapeAlso: w.ShapeAlso, Index: w.Index, Slope: w.Slope,
		Crown: w.Crown, Springing: w.Springing, Border: w.Edge, Arch: w.Curve,
	}
	if w.Shape != arch.V {
		web.Span = w.Span
	}
	for _, j := range m.Junctions {
		if j.Web == w.Web {
			web.Junction, web.Axis = j.Line, j.Axis
		}
	}
	return web
}

// judge fills the verdicts of every web.
func (t *Truth) judge(table norms.Table) {
	var spans []norms.WebSpan
	var at []int
	for i := range t.Webs {
		w := &t.Webs[i]
		w.verdicts = map[Asked]norms.Verdict{}
		if w.Index != nil {
			keep(w.verdicts, Place, table.JudgeIndex(t.View, *w.Index))
		}
		if w.Slope != nil {
			keep(w.verdicts, Slope, table.JudgeSlope(*w.Slope))
		}
		if w.Span != nil {
			spans, at = append(spans, norms.WebSpan{Web: w.Web, Span: *w.Span}), append(at, i)
		}
	}
	for k, v := range table.JudgeSpans(spans) {
		keep(t.Webs[at[k]].verdicts, Width, v)
	}
}

func keep(verdicts map[Asked]norms.Verdict, of Asked, v []norms.Verdict) {
	if len(v) > 0 {
		verdicts[of] = v[0]
	}
}
