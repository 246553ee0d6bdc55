package wording

import (
	"ogive/geometry/arch"
	"ogive/geometry/hand"
	"ogive/geometry/norms"
)

// Terms are the words that figures, findings, limits and shapes are made of, in
// English, and the caution.
func Terms() []string {
	terms := []string{
		Caution,
		Depth, Span, Rise, RiseToSpan, Flare, CrownAngle, CrownRadius, Slope, Area,
		"too deep", "too shallow", "too wide", "too narrow", "too steep", "too flat",
		norms.WithinLimits, norms.NoDifference,
		"published values", "other webs of the same hand", norms.OtherHand, norms.OtherSitting,
	}
	for _, v := range []hand.View{hand.Dorsal, hand.Palmar, hand.WebView} {
		terms = append(terms, IndexName(v))
	}
	for _, s := range arch.Shapes {
		terms = append(terms, s.String())
	}
	return terms
}
