package wording

import (
	"strconv"
	"unicode"
	"unicode/utf8"

	"ogive/geometry/hand"
	"ogive/geometry/norms"
	"ogive/geometry/plane"
	"ogive/geometry/reading"
	"ogive/geometry/scale"
)

// Figure is one figure of a web, ready to read.
type Figure struct{ Name, Value string }

// Names of the figures whose name does not depend on the view.
const (
	Depth       = "depth"
	Span        = "span"
	Rise        = "rise"
	RiseToSpan  = "rise to span"
	Flare       = "flare"
	CrownAngle  = "crown angle"
	CrownRadius = "crown radius"
	Slope       = "slope"
	Area        = "area"
)

// IndexName is the name of the index, which belongs to the view it was read in.
func IndexName(v hand.View) string {
	switch v {
	case hand.Dorsal:
		return "dorsal web index"
	case hand.Palmar:
		return "palmar web index"
	}
	return "web index"
}

// Figures are all figures of w that could be computed, in the order in which
// they are read.
func Figures(w reading.Web, v hand.View) []Figure {
	var list []Figure
	list = add(list, IndexName(v), w.Index, Ratio)
	list = add(list, Depth, w.Depth, Millimetres)
	list = add(list, Span, w.Span, Millimetres)
	list = add(list, Rise, w.Rise, Millimetres)
	list = add(list, RiseToSpan, w.RiseToSpan, Ratio)
	list = add(list, Flare, w.Flare, Degrees)
	list = add(list, CrownAngle, w.CrownAngle, Degrees)
	list = add(list, CrownRadius, w.CrownRadius, Millimetres)
	list = add(list, Slope, w.Slope, Degrees)
	return add(list, Area, w.Area, SquareMillimetres)
}

func add[Q plane.Measured](list []Figure, name string, e *plane.Estimate[Q], write func(plane.Estimate[Q]) string) []Figure {
	if e == nil {
		return list
	}
	return append(list, Figure{name, write(*e)})
}

// Scale is how the scale was found: "scale by ruler, 0.0333 ± 0.0004 mm per
// pixel".
func Scale(m scale.Method, e plane.Estimate[plane.Millimetre]) string {
	size := Gaps{"Size": MillimetresPerPixel(e)}
	switch m {
	case scale.ByRuler:
		return say("scale by ruler, {{.Size}}", size)
	case scale.ByTicks:
		return say("scale by ruler ticks, {{.Size}}", size)
	case scale.ByCard:
		return say("scale by card, {{.Size}}", size)
	}
	return say("scale by unknown means, {{.Size}}", size)
}

// Shape is the arch's shape and how sure it is: "gothic" or "gothic, not sure".
// It is empty where no arch was fitted.
func Shape(w reading.Web) string {
	switch {
	case w.Shape == 0:
		return ""
	case w.ShapeSure:
		return Term(w.Shape.String())
	}
	return say("{{.Shape}}, not sure", Gaps{"Shape": Term(w.Shape.String())})
}

// Verdict is the finding and whether it is doubtful: "too deep", "too deep?
// (doubtful)".
func Verdict(v norms.Verdict) string {
	if v.Certain {
		return Term(v.Finding)
	}
	return say("{{.Finding}}? (doubtful)", Gaps{"Finding": Term(v.Finding)})
}

// VerdictOf is the verdict together with the figure it judges: "span: too
// wide".
func VerdictOf(v norms.Verdict) string {
	verdict := Gaps{"Verdict": Verdict(v)}
	switch v.Figure {
	case "index": // a finger bears the same name in English only
		return say("index: {{.Verdict}}", verdict)
	case Span:
		return say("span: {{.Verdict}}", verdict)
	case Depth:
		return say("depth: {{.Verdict}}", verdict)
	case Slope:
		return say("slope: {{.Verdict}}", verdict)
	}
	return v.Figure + ": " + Verdict(v)
}

// Limit is the limit a figure was judged by and where it comes from: "0.45
// (published values)".
func Limit(v norms.Verdict) string {
	written := strconv.FormatFloat(v.Limit, 'f', ratioDecimals, 64)
	switch v.Figure {
	case Span, Depth:
		written = strconv.FormatFloat(v.Limit, 'f', millimetreDecimals, 64) + " mm"
	case Slope:
		written = strconv.FormatFloat(v.Limit, 'f', degreeDecimals, 64) + "°"
	}
	return written + " (" + Term(v.Against) + ")"
}

// Sentence is s with a capital first letter.
func Sentence(s string) string {
	if s == "" {
		return s
	}
	first, n := utf8.DecodeRuneInString(s)
	return string(unicode.ToUpper(first)) + s[n:]
}
