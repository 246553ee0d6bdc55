package norms

import (
	"math"

	"ogive/geometry/plane"
)

// NoDifference is the finding on a figure that differs by no more than the
// tolerance from the one it is compared with.
const NoDifference = "no difference that can be told"

// Against says in a Verdict what a web was compared with.
const (
	OtherHand    = "other hand"
	OtherSitting = "other sitting"
)

// JudgeSpanAgainst is the verdict on a span beside that of the fellow web. Its
// limit is the fellow's span and the tolerance. It is certain only if the whole
// interval of the difference lies beyond the tolerance, and never certain that
// there is no difference.
func (t SpanTolerance) JudgeSpanAgainst(fellow string, own, other plane.Estimate[plane.Millimetre]) Verdict {
	low, high := t.about(other)
	return judgeAgainst(spanFigure, fellow, float64(own.Value), float64(own.U95), low, high, "too narrow", "too wide")
}

// JudgeDepthAgainst is the same for a depth.
func (t SpanTolerance) JudgeDepthAgainst(fellow string, own, other plane.Estimate[plane.Millimetre]) Verdict {
	low, high := t.about(other)
	return judgeAgainst("depth", fellow, float64(own.Value), float64(own.U95), low, high, "too shallow", "too deep")
}

// JudgeIndexAgainst is the same for an index, the tolerance being that of the
// depth: with a proximal phalanx of the length phalanx, a depth is phalanx times
// one less the index, so a millimetre is 1/phalanx of index, and the fraction
// is that of one less the fellow's index. Unlike the depth it holds for a hand
// that has grown.
func (t SpanTolerance) JudgeIndexAgainst(fellow string, own, other plane.Estimate[plane.Ratio], phalanx plane.Millimetre) Verdict {
	// On the complement of the index, which is a depth in phalanges.
	relative := SpanTolerance{Least: t.Least / phalanx, Fraction: t.Fraction}
	low, high := relative.about(plane.Estimate[plane.Millimetre]{Value: plane.Millimetre(1 - other.Value), U95: plane.Millimetre(other.U95)})
	v := judgeAgainst(indexFigure, fellow, 1-float64(own.Value), float64(own.U95), low, high, "too shallow", "too deep")
	v.Limit = 1 - v.Limit
	return v
}

func (t SpanTolerance) about(other plane.Estimate[plane.Millimetre]) (low, high limit) {
	span := []WebSpan{{Span: other}}
	return t.limits(span, -1)[0], t.limits(span, 1)[0]
}

func judgeAgainst(figure, fellow string, value, u float64, low, high limit, below, above string) Verdict {
	v := Verdict{Figure: figure, Against: fellow}
	switch {
	case value > high.at:
		v.Finding, v.Limit, v.Certain = above, high.at, value-high.at > math.Hypot(u, high.u95)
	case value < low.at:
		v.Finding, v.Limit, v.Certain = below, low.at, low.at-value > math.Hypot(u, low.u95)
	default:
		v.Finding, v.Limit = NoDifference, nearest(value, low.at, high.at)
	}
	return v
}
