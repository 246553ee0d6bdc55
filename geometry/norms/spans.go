package norms

import (
	"cmp"
	"math"
	"slices"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
)

const otherWebs = "other webs of the same hand"

// SpanTolerance is how far a span may differ from the span it is compared with:
// by Least or by Fraction of that span, whichever is larger. No norm for spans
// is published; the tolerance is this project's own, as Reason says.
type SpanTolerance struct {
	Least    plane.Millimetre
	Fraction float64
	Reason   string
}

// WebSpan is the span of one web.
type WebSpan struct {
	Web  hand.Web
	Span plane.Estimate[plane.Millimetre]
	// Shallow says that the web certainly lies too far distal: it is still joined,
	// or has crept. Up there the fingers stand closer, and its span is no measure
	// for the others, nor they for it.
	Shallow bool
}

// Shallow reports whether a web with these verdicts is certainly too shallow.
func Shallow(verdicts []Verdict) bool {
	return slices.ContainsFunc(verdicts, func(v Verdict) bool { return v.Finding == "too shallow" && v.Certain })
}

// JudgeSpans is the verdicts on the spans of one hand, each web against the
// others: element i is the verdict on spans[i]. A web is too wide if it exceeds
// the widest of the others by more than the tolerance, too narrow if it falls
// short of the narrowest by more.
//
// The third web is normally the narrowest of the second to fourth (common
// practice, no source). A difference that way round is therefore granted the
// tolerance twice: to the third web for being narrow, and to another web for
// being wide where the third is the widest it can be compared with.
//
// The first web, between thumb and index, is of another size: it is neither
// judged nor compared with, and no more is one that is Shallow. Leave out V
// shapes, which have no span. A web with no other to compare it with has no
// verdict.
//
// A verdict is certain only if the difference exceeds the uncertainties of both
// spans combined in quadrature. Spans on one photograph share the error of the
// scale, which cancels in part, so this errs on the side of doubt.
func (t Table) JudgeSpans(spans []WebSpan) [][]Verdict {
	out := make([][]Verdict, len(spans))
	for i, s := range spans {
		if !judged(s) {
			continue
		}
		if others := othersOf(s, spans); len(others) > 0 {
			out[i] = []Verdict{judgeSpan(s, t.Span.below(s, others), t.Span.above(others))}
		}
	}
	return out
}

func othersOf(s WebSpan, spans []WebSpan) []WebSpan {
	var others []WebSpan
	for _, o := range spans {
		if o.Web != s.Web && judged(o) {
			others = append(others, o)
		}
	}
	return others
}

func judged(s WebSpan) bool {
	return s.Web != hand.FirstWeb && !s.Shallow && !math.IsNaN(float64(s.Span.Value))
}

// limit is a limit with its own uncertainty: that of the span it was taken from.
type limit struct{ at, u95 float64 }

func (t SpanTolerance) below(s WebSpan, others []WebSpan) []limit {
	times := -1.0
	if s.Web == hand.ThirdWeb {
		times = -2
	}
	return t.limits(others, times)
}

func (t SpanTolerance) above(others []WebSpan) []limit {
	times := 1.0
	widest := slices.MaxFunc(others, func(a, b WebSpan) int { return cmp.Compare(a.Span.Value, b.Span.Value) })
	if widest.Web == hand.ThirdWeb {
		times = 2
	}
	return t.limits(others, times)
}

func (t SpanTolerance) limits(others []WebSpan, times float64) []limit {
	out := make([]limit, len(others))
	for i, o := range others {
		v, u := float64(o.Span.Value), float64(o.Span.U95)
		out[i] = limit{v + times*float64(t.Least), u}
		if t.Fraction*v > float64(t.Least) {
			factor := 1 + times*t.Fraction
			out[i] = limit{v * factor, u * math.Abs(factor)}
		}
	}
	return out
}

func judgeSpan(s WebSpan, low, high []limit) Verdict {
	value, u := float64(s.Span.Value), float64(s.Span.U95)
	lowest, highest := low[0], high[0]
	for _, l := range low {
		if l.at < lowest.at {
			lowest = l
		}
	}
	for _, l := range high {
		if l.at > highest.at {
			highest = l
		}
	}
	surelyAbove := func(l limit) bool { return value-l.at > math.Hypot(u, l.u95) }
	surelyBelow := func(l limit) bool { return l.at-value > math.Hypot(u, l.u95) }
	v := Verdict{Figure: spanFigure, Against: otherWebs}
	switch {
	case value > highest.at:
		v.Finding, v.Limit, v.Certain = "too wide", highest.at, all(high, surelyAbove)
	case value < lowest.at:
		v.Finding, v.Limit, v.Certain = "too narrow", lowest.at, all(low, surelyBelow)
	default:
		v.Finding, v.Limit = WithinLimits, nearest(value, lowest.at, highest.at)
		v.Certain = surelyAbove(lowest) && surelyBelow(highest)
	}
	return v
}

func all(limits []limit, beyond func(limit) bool) bool {
	for _, l := range limits {
		if !beyond(l) {
			return false
		}
	}
	return true
}
