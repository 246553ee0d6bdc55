package main

import (
	"fmt"
	"math"
	"strings"

	"ogive/geometry/arch"
	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/geometry/reading"
	"ogive/imaging/phantom"
	"ogive/imaging/wording"
)

// besideTruth is a line for every figure: measured, true, and whether the truth
// lies in the interval.
func (e exhibit) besideTruth() string {
	c := comparison{view: e.entry.Result.Reading.View}
	fmt.Fprintf(&c.out, "%s\n", e.entry.Path)
	for _, w := range e.entry.Result.Reading.Webs {
		for _, t := range e.truth.Webs {
			if t.Web == w.Web {
				c.web(w, t)
			}
		}
		for _, j := range e.truth.Junctions {
			if j.Web == w.Web {
				fmt.Fprintf(&c.out, "  %s, junction\n", wording.WebName(w.Web))
				compare(&c, wording.Slope, w.Slope, j.Slope, plane.Angle.Degrees, 1)
			}
		}
	}
	return c.out.String()
}

// comparison writes measured figures beside true ones.
type comparison struct {
	out  strings.Builder
	view hand.View
}

func (c *comparison) web(w reading.Web, t phantom.WebTruth) {
	mm := func(x plane.Millimetre) float64 { return float64(x) }
	ratio := func(x plane.Ratio) float64 { return float64(x) }
	fmt.Fprintf(&c.out, "  %s, truly %v, measured as %v\n", wording.WebName(w.Web), t.Shape, w.Shape)
	compare(c, wording.IndexName(c.view), w.Index, t.Index, ratio, 3)
	compare(c, wording.Depth, w.Depth, t.Depth, mm, 2)
	if t.Shape != arch.V && w.Shape != arch.V {
		compare(c, wording.Span, w.Span, t.Span, mm, 2)
		compare(c, wording.Rise, w.Rise, t.Rise, mm, 2)
		compare(c, wording.RiseToSpan, w.RiseToSpan, t.RiseToSpan, ratio, 3)
	}
	compare(c, wording.CrownAngle, w.CrownAngle, t.CrownAngle, plane.Angle.Degrees, 1)
	compare(c, wording.Flare, w.Flare, t.Flare, plane.Angle.Degrees, 1)
}

// rounding is as much as floating-point arithmetic may add where a shape fixes a
// figure exactly, such as the crown angle of a U.
const rounding = 1e-9

// compare writes one figure beside the truth.
func compare[Q plane.Measured](c *comparison, name string, e *plane.Estimate[Q], truth Q, unit func(Q) float64, decimals int) {
	if e == nil {
		return
	}
	held := "inside"
	if math.Abs(float64(truth-e.Value)) > float64(e.U95)+rounding*math.Abs(float64(truth)) {
		held = "OUTSIDE"
	}
	fmt.Fprintf(&c.out, "    %-18s %7.*f ± %-6.*f true %7.*f  %s\n", name, decimals, unit(e.Value), decimals, unit(e.U95), decimals, unit(truth), held)
}
