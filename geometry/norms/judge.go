package norms

import (
	"math"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
)

const (
	indexFigure = "index"
	spanFigure  = "span"
	slopeFigure = "slope"
)

// WithinLimits is the finding on a figure that lies beyond no limit.
const WithinLimits = "within limits"

// JudgeIndex is the verdict on the index of a web in a view. The index is 0 at
// the MCP joints and 1 at the PIP joints, so a web below the band lies too far
// proximal and is too deep, one above it too shallow. There is no verdict where
// the table has no band, as for the palmar index.
func (t Table) JudgeIndex(view hand.View, e plane.Estimate[plane.Ratio]) []Verdict {
	b, ok := t.Band(indexFigure, view)
	if !ok {
		return nil
	}
	return b.judge(plane.Estimate[float64]{Value: float64(e.Value), U95: float64(e.U95)}, "too deep", "too shallow")
}

// JudgeSlope is the verdict on the slope of the junction of glabrous and
// pigmented skin, seen in the web view.
//
// The slope is the angle of the junction to the digit's long axis: 0 along the
// digit, 90 across it. With the digit laid level the junction of a small slope
// lies nearly level and that of a large one drops almost straight from the back
// of the hand to the palm; so a slope above the band is too steep, one below it
// too flat.
func (t Table) JudgeSlope(e plane.Estimate[plane.Angle]) []Verdict {
	b, ok := t.Band(slopeFigure, hand.WebView)
	if !ok {
		return nil
	}
	return b.judge(plane.Estimate[float64]{Value: e.Value.Degrees(), U95: e.U95.Degrees()}, "too flat", "too steep")
}

func (b Band) judge(e plane.Estimate[float64], below, above string) []Verdict {
	v := Verdict{Figure: b.Figure, Against: b.Against}
	switch {
	case math.IsNaN(e.Value):
		return nil
	case e.Value < b.Low:
		v.Finding, v.Limit, v.Certain = below, b.Low, e.High() < b.Low
	case e.Value > b.High:
		v.Finding, v.Limit, v.Certain = above, b.High, e.Low() > b.High
	default:
		v.Finding, v.Limit = WithinLimits, nearest(e.Value, b.Low, b.High)
		v.Certain = e.Low() >= b.Low && e.High() <= b.High
	}
	return []Verdict{v}
}

func nearest(x, low, high float64) float64 {
	if x-low <= high-x {
		return low
	}
	return high
}
