package plan

import (
	"ogive/geometry/arch"
	"ogive/geometry/norms"
)

// judge adds the verdicts and the patterns.
func (f *Figures) judge(a arch.Arch, g Ground, b Beside) {
	if f.Index != nil {
		f.Verdicts = append(f.Verdicts, b.Table.JudgeIndex(g.Marks.View, *f.Index)...)
	}
	f.judgeSpan(b)
	f.judgeBesideOther(g, b)
	f.Patterns = append(f.shapePatterns(a, b.Table), f.orderPattern(b)...)
}

// judgeSpan judges the span by those of the other webs, as read.
func (f *Figures) judgeSpan(b Beside) {
	if f.Span == nil {
		return
	}
	spans := []norms.WebSpan{{Web: f.Web, Span: *f.Span}}
	for _, w := range b.Webs {
		if w.Web != f.Web && w.Span != nil && w.Shape != arch.V {
			spans = append(spans, norms.WebSpan{Web: w.Web, Span: *w.Span, Shallow: norms.Shallow(w.Verdicts)})
		}
	}
	f.Verdicts = append(f.Verdicts, b.Table.JudgeSpans(spans)[0]...)
}

func (f *Figures) judgeBesideOther(g Ground, b Beside) {
	if b.Other == nil {
		return
	}
	tolerance := b.Table.Span
	if frame, ok := g.Frame(f.Web); ok && f.Index != nil && b.Other.Index != nil && frame.Phalanx() > 0 {
		f.Verdicts = append(f.Verdicts, tolerance.JudgeIndexAgainst(norms.OtherHand, *f.Index, *b.Other.Index, frame.Phalanx()))
	}
	if f.Span != nil && b.Other.Span != nil && b.Other.Shape != arch.V {
		f.Verdicts = append(f.Verdicts, tolerance.JudgeSpanAgainst(norms.OtherHand, *f.Span, *b.Other.Span))
	}
}
