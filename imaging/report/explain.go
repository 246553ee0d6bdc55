package report

import (
	"fmt"
	"io"
	"strings"

	"ogive/geometry/arch"
	"ogive/geometry/hand"
	"ogive/geometry/norms"
	"ogive/geometry/reading"
	"ogive/imaging/wording"
)

// Explain writes what each figure of each web means for this hand, in plain
// words, and what stands after ±; table is the normal values that the figures
// were judged by.
func Explain(to io.Writer, entries []Entry, table norms.Table) error {
	var out strings.Builder
	for _, e := range entries {
		r := e.Result.Reading
		for _, w := range r.Webs {
			out.WriteString(wording.WebName(w.Web) + ", " + wording.WebDigits(w.Web) + "\n")
			for _, line := range explained(w, r.View, table) {
				out.WriteString(wrapped(line, "  ") + "\n")
			}
			out.WriteByte('\n')
		}
	}
	out.WriteString(wrapped(interval, "") + "\n")
	_, err := io.WriteString(to, out.String())
	return err
}

const interval = "After ± stands the uncertainty at 95 per cent: it takes in the error of placing each point, the scale, the tilt that the scale does not see, and the fit."

func explained(w reading.Web, v hand.View, table norms.Table) []string {
	var out []string
	add := func(known bool, line func() string) {
		if known {
			out = append(out, line())
		}
	}
	add(w.Index != nil, func() string { return index(w, v, table) })
	add(w.Depth != nil, func() string {
		return fmt.Sprintf("Depth %s: so far the crown lies proximal to the middle between the two %s.",
			wording.Millimetres(*w.Depth), landmark(hand.PIP, v))
	})
	add(fitted(w), func() string { return shape(w) })
	add(w.Span != nil && w.Rise != nil && w.Shape != arch.V, func() string { return opening(w) })
	add(w.CrownAngle != nil, func() string {
		return fmt.Sprintf("Crown angle %s: at this angle the two sides meet at the crown; 180° is rounded off, less is pointed.", wording.Degrees(*w.CrownAngle))
	})
	add(w.Flare != nil, func() string {
		return fmt.Sprintf("Flare %s: so far each finger's border leans away from the middle of the web.", wording.Degrees(*w.Flare))
	})
	add(w.CrownRadius != nil && w.Shape != arch.V, func() string {
		return fmt.Sprintf("Crown radius %s: how sharply the border bends at the crown, from the trace alone.", wording.Millimetres(*w.CrownRadius))
	})
	add(w.Area != nil && w.Shape != arch.V, func() string {
		return fmt.Sprintf("Area %s: between the border and the line from springing to springing, from the trace alone.", wording.SquareMillimetres(*w.Area))
	})
	add(w.Slope != nil, func() string {
		return fmt.Sprintf("Slope %s: at this angle to the digit's long axis the junction of glabrous and pigmented skin runs; 0° is along the digit, 90° across it.%s%s",
			wording.Degrees(*w.Slope), band(table, "slope", v), judgement(w, "slope"))
	})
	return append(out, w.Remarks()...)
}

func index(w reading.Web, v hand.View, table norms.Table) string {
	return fmt.Sprintf("%s %s: on the way from the %s (0) to the %s (1) the crown lies at %.0f per cent.%s%s",
		wording.Sentence(wording.IndexName(v)), wording.Ratio(*w.Index), landmark(hand.MCP, v), landmark(hand.PIP, v),
		100*float64(w.Index.Value), band(table, "index", v), judgement(w, "index"))
}

// landmark is two of a joint or of the crease that stands for it.
func landmark(j hand.Joint, v hand.View) string {
	name := wording.Joint(j, v)
	if v != hand.Palmar {
		name += " joint"
	}
	return name + "s"
}

func opening(w reading.Web) string {
	text := fmt.Sprintf("Span %s: from springing to springing, where the web leaves the two fingers. Rise %s: so far the crown lies proximal to that line",
		wording.Millimetres(*w.Span), wording.Millimetres(*w.Rise))
	if w.RiseToSpan != nil {
		text += fmt.Sprintf(", which is %s of the span (0.5 is a semicircle, more is steeper)", wording.Ratio(*w.RiseToSpan))
	}
	return text + "." + judgement(w, "span")
}

var shapeWords = map[arch.Shape]string{
	arch.V:      "the two borders meet at the crown without an arc",
	arch.Round:  "one round arc joins the two borders",
	arch.Gothic: "two arcs meet in a point at the crown",
	arch.U:      "two arcs are joined by a flat at the crown",
}

func shape(w reading.Web) string {
	text := fmt.Sprintf("Shape %v: %s.", w.Shape, shapeWords[w.Shape])
	switch {
	case w.ShapeSure:
		return text + " No other shape explains the border as well."
	case len(w.ShapeAlso) > 0:
		return text + " It is not sure: " + strings.Join(shapes(w), " or ") + " explains the border about as well."
	}
	return text + " It is not sure."
}

// band is the range that the table reads out of its sources.
func band(table norms.Table, figure string, v hand.View) string {
	if figure == "slope" {
		v = hand.WebView
	}
	b, ok := table.Band(figure, v)
	if !ok {
		return " No normal value is published for it."
	}
	unit := ""
	if figure == "slope" {
		unit = "°"
	}
	return fmt.Sprintf(" Taken as normal: %g to %g%s (%s).", b.Low, b.High, unit, b.Against)
}

// judgement is the verdict on a figure and why it is certain or not.
func judgement(w reading.Web, figure string) string {
	for _, v := range w.Verdicts {
		if v.Figure != figure || !judged(v) {
			continue
		}
		text := fmt.Sprintf(" Verdict: %s", finding(v))
		if figure == "span" {
			text += ", " + limitWord(v) + " " + wording.Limit(v)
		}
		switch {
		case v.Certain && v.Finding == within:
			return text + "; the whole interval lies within."
		case v.Certain:
			return text + "; the whole interval lies beyond the limit."
		}
		return text + "; the interval reaches across the limit, so measure again before relying on it."
	}
	return ""
}
