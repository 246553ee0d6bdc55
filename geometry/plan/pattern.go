package plan

import (
	"math"
	"slices"
	"strings"
	"unicode"

	"ogive/geometry/arch"
	"ogive/geometry/hand"
	"ogive/geometry/norms"
	"ogive/geometry/plane"
)

// shapePatterns are what the rows of the table on shape say of this web.
func (f Figures) shapePatterns(a arch.Arch, table norms.Table) []Pattern {
	var out []Pattern
	for _, r := range table.Rows {
		if r.Figure != "shape" {
			continue
		}
		if shapes := shapesIn(r, f.Web); len(shapes) > 0 {
			out = append(out, Pattern{Figure: "shape", Says: r.Value, Source: r.Source, Agrees: slices.Contains(shapes, a.Shape), Sure: true})
		}
	}
	return out
}

// shapesIn is the shapes that a row gives for a web, by its words: in "second
// and fourth U, third V" each clause names webs and a shape, in "somewhat
// gothic" the clause holds for every web of the row.
func shapesIn(r norms.Row, web hand.Web) []arch.Shape {
	if len(r.Webs) > 0 && !slices.Contains(r.Webs, web) {
		return nil
	}
	var out []arch.Shape
	for clause := range strings.SplitSeq(r.Value, ",") {
		var webs []hand.Web
		var shapes []arch.Shape
		for _, word := range strings.FieldsFunc(clause, func(c rune) bool { return !unicode.IsLetter(c) }) {
			for _, w := range hand.Webs {
				if strings.HasPrefix(w.String(), strings.ToLower(word)+" ") {
					webs = append(webs, w)
				}
			}
			for _, s := range arch.Shapes {
				if strings.EqualFold(word, s.String()) {
					shapes = append(shapes, s)
				}
			}
		}
		if len(webs) == 0 || slices.Contains(webs, web) {
			out = append(out, shapes...)
		}
	}
	return out
}

const thirdMostDistal = "third-web-narrowest"

// orderPattern says whether the third web stays the most distal of second to
// fourth, as the table has it.
func (f Figures) orderPattern(b Beside) []Pattern {
	row, ok := b.Table.Row(thirdMostDistal)
	if !ok || f.Index == nil || f.Web == hand.FirstWeb {
		return nil
	}
	p := Pattern{Figure: "order", Says: row.Value, Source: row.Source, Agrees: true, Sure: true}
	compared := false
	for _, w := range b.Webs {
		third := w.Web == hand.ThirdWeb
		if w.Index == nil || w.Web == f.Web || w.Web == hand.FirstWeb || third == (f.Web == hand.ThirdWeb) {
			continue
		}
		ahead := f.Index.Value - w.Index.Value // of the third web before the other
		if third {
			ahead = -ahead
		}
		compared = true
		p.Agrees = p.Agrees && ahead >= 0
		p.Sure = p.Sure && math.Abs(float64(ahead)) > math.Hypot(float64(f.Index.U95), float64(w.Index.U95))
	}
	if !compared {
		return nil
	}
	return []Pattern{p}
}

// thirdOrder keeps an index and a span within the usual order of the webs: the
// third is the most distal and the narrowest of second to fourth (common
// practice, no source).
func thirdOrder(web hand.Web, fellows []fellow, index plane.Ratio, span plane.Millimetre) (plane.Ratio, plane.Millimetre) {
	for _, o := range fellows {
		switch {
		case web == hand.ThirdWeb && o.web != hand.ThirdWeb:
			index, span = max(index, o.index), min(span, o.span)
		case web != hand.ThirdWeb && o.web == hand.ThirdWeb:
			index, span = min(index, o.index), max(span, o.span)
		}
	}
	return index, span
}
