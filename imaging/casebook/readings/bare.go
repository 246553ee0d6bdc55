package readings

import (
	"ogive/geometry/plane"
	"ogive/geometry/reading"
)

// bare is the web without its lines, and without what is no number.
func bare(w reading.Web) reading.Web {
	w.Edge, w.Curve = nil, nil
	w.Index, w.Depth, w.Span, w.Rise = known(w.Index), known(w.Depth), known(w.Span), known(w.Rise)
	w.RiseToSpan, w.Flare, w.CrownAngle, w.Slope = known(w.RiseToSpan), known(w.Flare), known(w.CrownAngle), known(w.Slope)
	w.CrownRadius, w.Area = known(w.CrownRadius), known(w.Area)
	widths, verdicts := w.Widths, w.Verdicts
	w.Widths, w.Verdicts = nil, nil
	for _, x := range widths {
		if finite(float64(x.Width.Value), float64(x.Width.U95)) {
			w.Widths = append(w.Widths, x)
		}
	}
	for _, v := range verdicts {
		if finite(v.Limit) {
			w.Verdicts = append(w.Verdicts, v)
		}
	}
	if !finite(float64(w.FitRMS)) {
		w.FitRMS, w.Shape = 0, 0
	}
	for _, p := range []*plane.PixelPoint{&w.Crown, &w.Springing[0], &w.Springing[1]} {
		if !p.Finite() {
			*p = plane.PixelPoint{}
		}
	}
	return w
}

func known[Q plane.Measured](e *plane.Estimate[Q]) *plane.Estimate[Q] {
	if e == nil || !finite(float64(e.Value), float64(e.U95)) {
		return nil
	}
	return e
}
