package rounds

import (
	"fmt"

	"ogive/geometry/hand"
	"ogive/geometry/norms"
	"ogive/geometry/plane"
)

// Limits are the normal values by which a round is judged. They are kept with it,
// so that its pictures and verdicts stay the same if the user edits the table.
type Limits struct {
	Index        [2]float64 `json:"index"`         // the band of the dorsal index
	Slope        [2]float64 `json:"slope_deg"`     // the band of the slope
	SpanLeast    float64    `json:"span_least_mm"` // the tolerance of a span
	SpanFraction float64    `json:"span_fraction"`
	Against      string     `json:"against"` // where the bands come from
}

// limitsOf takes what a round needs out of the table.
func limitsOf(t norms.Table) (Limits, error) {
	index, ok := t.Band(placeFigure, hand.Dorsal)
	if !ok {
		return Limits{}, fmt.Errorf("the table of normal values has no band for the dorsal index; restore it")
	}
	slope, ok := t.Band(slopeFigure, hand.WebView)
	if !ok {
		return Limits{}, fmt.Errorf("the table of normal values has no band for the slope; restore it")
	}
	l := Limits{
		Index: [2]float64{index.Low, index.High}, Slope: [2]float64{slope.Low, slope.High},
		SpanLeast: float64(t.Span.Least), SpanFraction: t.Span.Fraction, Against: index.Against,
	}
	return l, l.check()
}

func (l Limits) check() error {
	switch {
	case !(l.Index[0] >= 0.1 && l.Index[1] <= 0.95 && l.Index[1]-l.Index[0] >= 0.02):
		return fmt.Errorf("limits: the band of the index from %.3g to %.3g leaves no room for faults beside it; give one between 0.1 and 0.95 that is 0.02 wide at least", l.Index[0], l.Index[1])
	case !(l.Slope[0] >= 5 && l.Slope[1] <= 85 && l.Slope[1]-l.Slope[0] >= 1):
		return fmt.Errorf("limits: the band of the slope from %.3g to %.3g degrees leaves no room for faults beside it; give one between 5 and 85 that is 1 wide at least", l.Slope[0], l.Slope[1])
	case !(l.SpanLeast >= 0 && l.SpanLeast <= 20 && l.SpanFraction >= 0 && l.SpanFraction <= 1):
		return fmt.Errorf("limits: a tolerance of %.3g mm or %.3g of the span; give 0 to 20 mm and 0 to 1", l.SpanLeast, l.SpanFraction)
	case len(l.Against) > 100:
		return fmt.Errorf("limits: the name of their source is longer than 100 bytes; shorten it")
	}
	return nil
}

// table is a table that judges by these limits.
func (l Limits) table() norms.Table {
	return norms.Table{
		Bands: []norms.Band{
			{Figure: placeFigure, View: hand.Dorsal, Low: l.Index[0], High: l.Index[1], Against: l.Against},
			{Figure: slopeFigure, View: hand.WebView, Low: l.Slope[0], High: l.Slope[1], Against: l.Against},
		},
		Span: norms.SpanTolerance{Least: plane.Millimetre(l.SpanLeast), Fraction: l.SpanFraction},
	}
}
