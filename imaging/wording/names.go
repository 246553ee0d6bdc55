package wording

import (
	"strconv"
	"strings"
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

// WebName is the web by its number: "Third web".
func WebName(w hand.Web) string { return Sentence(w.String()) }

// WebDigits is the web by its digits: "middle to ring".
func WebDigits(w hand.Web) string {
	if !w.Valid() {
		return ""
	}
	radial, ulnar := w.Digits()
	return radial.String() + " to " + ulnar.String()
}

// Photograph is what the photograph shows: "Right hand, back of the hand".
func Photograph(s hand.Side, v hand.View) string {
	return Sentence(s.String()) + " hand, " + View(v)
}

// View is the view in plain words.
func View(v hand.View) string {
	switch v {
	case hand.Dorsal:
		return "back of the hand"
	case hand.Palmar:
		return "palm"
	case hand.WebView:
		return "looking into a web"
	}
	return v.String()
}

// Scale is how the scale was found: "scale by ruler, 0.0333 ± 0.0004 mm per
// pixel".
func Scale(m scale.Method, e plane.Estimate[plane.Millimetre]) string {
	return "scale by " + method(m) + ", " + MillimetresPerPixel(e)
}

func method(m scale.Method) string {
	switch m {
	case scale.ByTicks:
		return "ruler ticks"
	case "":
		return "unknown means"
	}
	return string(m)
}

// Shape is the arch's shape and how sure it is: "gothic" or "gothic, not sure".
// It is empty where no arch was fitted.
func Shape(w reading.Web) string {
	switch {
	case w.Shape == 0:
		return ""
	case w.ShapeSure:
		return w.Shape.String()
	}
	return w.Shape.String() + ", not sure"
}

// Verdict is the finding and whether it is doubtful: "too deep", "too deep?
// (doubtful)".
func Verdict(v norms.Verdict) string {
	if v.Certain {
		return v.Finding
	}
	return v.Finding + "? (doubtful)"
}

// VerdictOf is the verdict together with the figure it judges: "span: too
// wide".
func VerdictOf(v norms.Verdict) string { return v.Figure + ": " + Verdict(v) }

// Limit is the limit a figure was judged by and where it comes from: "0.45
// (published values)".
func Limit(v norms.Verdict) string {
	written := strconv.FormatFloat(v.Limit, 'f', ratioDecimals, 64)
	switch v.Figure {
	case Span:
		written = strconv.FormatFloat(v.Limit, 'f', millimetreDecimals, 64) + " mm"
	case Slope:
		written = strconv.FormatFloat(v.Limit, 'f', degreeDecimals, 64) + "°"
	}
	return written + " (" + v.Against + ")"
}

// Joint is what a joint's mark stands on: in the palmar view a crease.
func Joint(j hand.Joint, v hand.View) string {
	if v == hand.Palmar {
		switch j {
		case hand.MCP:
			return "basal crease"
		case hand.PIP:
			return "PIP crease"
		}
	}
	if j == hand.Tip {
		return "tip"
	}
	return strings.ToUpper(j.String())
}

// Sentence is s with a capital first letter.
func Sentence(s string) string {
	if s == "" {
		return s
	}
	first, n := utf8.DecodeRuneInString(s)
	return string(unicode.ToUpper(first)) + s[n:]
}
