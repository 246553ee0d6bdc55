package compared

import (
	"fmt"
	"strconv"
	"strings"

	"ogive/geometry/arch"
	"ogive/geometry/comparison"
	"ogive/geometry/hand"
	"ogive/geometry/norms"
	"ogive/geometry/plane"
	"ogive/geometry/reading"
	"ogive/imaging/wording"
)

// Figure is one figure of a web on both photographs, in words. What is not known
// is empty. The name is shown through wording.Term.
type Figure struct {
	Name            string
	Operated, Other string // "0.55 ± 0.02"
	Difference      string // "+0.08 ± 0.03", operated minus other
	Verdict         *norms.Verdict
}

// Figures are index, depth, span and crown angle of a compared web.
func (p Pair) Figures(w comparison.Web) []Figure {
	a, b := readingOf(p.Operated.Reading, w.Web), readingOf(p.Other.Reading, w.Web)
	if w.Span == nil {
		a.Span, b.Span = spanOf(a), spanOf(b)
	}
	return []Figure{
		figure(w, wording.IndexName(p.Comparison.View), "index", a.Index, b.Index, w.Index, wording.Ratio),
		figure(w, wording.Depth, wording.Depth, a.Depth, b.Depth, w.Depth, wording.Millimetres),
		figure(w, wording.Span, wording.Span, a.Span, b.Span, w.Span, wording.Millimetres),
		figure(w, wording.CrownAngle, wording.CrownAngle, a.CrownAngle, b.CrownAngle, w.CrownAngle, wording.Degrees),
	}
}

// Shapes are the shapes of both arches, empty where none was fitted.
func (p Pair) Shapes(w hand.Web) (operated, other string) {
	return wording.Shape(readingOf(p.Operated.Reading, w)), wording.Shape(readingOf(p.Other.Reading, w))
}

func readingOf(r reading.Reading, w hand.Web) reading.Web {
	for _, web := range r.Webs {
		if web.Web == w {
			return web
		}
	}
	return reading.Web{}
}

// spanOf is nil for a V, whose 0 is no measurement.
func spanOf(w reading.Web) *plane.Estimate[plane.Millimetre] {
	if w.Shape == arch.V {
		return nil
	}
	return w.Span
}

func figure[Q plane.Measured](w comparison.Web, name, judged string, a, b, d *plane.Estimate[Q], write func(plane.Estimate[Q]) string) Figure {
	text := func(e *plane.Estimate[Q]) string {
		if e == nil {
			return ""
		}
		return write(*e)
	}
	f := Figure{Name: name, Operated: text(a), Other: text(b), Difference: signed(text(d))}
	for _, v := range w.Verdicts {
		if v.Figure == judged {
			f.Verdict = &v
		}
	}
	return f
}

// signed gives a difference its sign, none where it rounds to nothing.
func signed(text string) string {
	number, _, _ := strings.Cut(text, " ")
	value, err := strconv.ParseFloat(number, 64)
	switch {
	case err != nil || value == 0:
		return text
	case value < 0:
		return "−" + strings.TrimPrefix(text, "-")
	}
	return "+" + text
}

// VerdictWords is the finding and how sure it is: "too deep, certain", "too
// deep? doubtful", "no difference that can be told".
func VerdictWords(v norms.Verdict) string {
	switch {
	case v.Finding == norms.NoDifference:
		return v.Finding
	case v.Certain:
		return v.Finding + ", certain"
	}
	return v.Finding + "? doubtful"
}

// LimitWords is the limit a figure was judged by and where it comes from:
// "limit 0.52 (other hand and tolerance)".
func LimitWords(v norms.Verdict) string {
	limit := fmt.Sprintf("%.2f", v.Limit)
	if v.Figure != "index" {
		limit = fmt.Sprintf("%.1f mm", v.Limit)
	}
	return fmt.Sprintf("limit %s (%s and tolerance)", limit, v.Against)
}
