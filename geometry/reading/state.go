package reading

import (
	"math"
	"slices"

	"ogive/geometry/plane"
)

// state writes the figures with their uncertainties into out.
func (t trial) state(out *Web, centre figures, draws []figures) {
	always := func(figures) bool { return true }
	spanned := func(f figures) bool { return f.spanned }
	e := newExpander(centre, draws)
	out.Index, out.Depth = e.index(), e.depth()
	out.Span = estimate[plane.Millimetre](e, func(f figures) float64 { return f.span }, always)
	out.Rise = estimate[plane.Millimetre](e, func(f figures) float64 { return f.rise }, always)
	out.RiseToSpan = estimate[plane.Ratio](e, func(f figures) float64 { return f.riseToSpan }, spanned)
	out.Flare = degrees(estimate[float64](e, func(f figures) float64 { return f.flare }, always))
	out.CrownAngle = degrees(estimate[float64](e, func(f figures) float64 { return f.crownAngle }, always))
	out.CrownRadius = estimate[plane.Millimetre](e, func(f figures) float64 { return f.crownRadius }, func(f figures) bool { return f.radiused })
	out.Area = estimate[plane.SquareMillimetre](e, func(f figures) float64 { return f.area }, always)
	for i, at := range widthsAt {
		w := estimate[plane.Millimetre](e, func(f figures) float64 { return f.widths[i] }, func(f figures) bool { return f.wide[i] })
		if w != nil {
			out.Widths = append(out.Widths, Width{Distal: at, Width: *w})
		}
	}
}

// expander finds expanded uncertainties from trials.
type expander struct {
	centre figures
	draws  []figures
	sizes  []float64
}

func newExpander(centre figures, draws []figures) expander {
	return expander{centre: centre, draws: draws, sizes: make([]float64, 0, len(draws))}
}

func (e expander) index() *plane.Estimate[plane.Ratio] {
	return estimate[plane.Ratio](e, func(f figures) float64 { return f.index }, figures.hasJoints)
}

func (e expander) depth() *plane.Estimate[plane.Millimetre] {
	return estimate[plane.Millimetre](e, func(f figures) float64 { return f.depth }, figures.hasJoints)
}

// estimate is the figure with the half width that holds 95 per cent of its
// trials, or nil where the figure can't be computed.
func estimate[Q plane.Measured](e expander, figure func(figures) float64, ok func(figures) bool) *plane.Estimate[Q] {
	if !ok(e.centre) {
		return nil
	}
	value := figure(e.centre)
	sizes := e.sizes[:0]
	for _, d := range e.draws {
		if ok(d) {
			sizes = append(sizes, math.Abs(figure(d)-value))
		}
	}
	if len(sizes) == 0 || math.IsNaN(value) || math.IsInf(value, 0) {
		return nil
	}
	slices.Sort(sizes)
	u := sizes[min(int(math.Ceil(0.95*float64(len(sizes)))), len(sizes)-1)]
	return &plane.Estimate[Q]{Value: Q(value), U95: Q(u)}
}

func degrees(e *plane.Estimate[float64]) *plane.Estimate[plane.Angle] {
	if e == nil {
		return nil
	}
	return &plane.Estimate[plane.Angle]{Value: plane.Degrees(e.Value), U95: plane.Degrees(e.U95)}
}
