package report

import (
	"fmt"
	"io"
	"strings"

	"ogive/geometry/comparison"
	"ogive/geometry/norms"
	"ogive/geometry/plane"
	"ogive/imaging/wording"
)

// Pair is the comparison of two marks files and where they lie.
type Pair struct {
	Operated, Other string
	Comparison      comparison.Comparison
}

// CompareJSON writes a comparison as one object, with a line for every web;
// differences are operated minus other.
func CompareJSON(to io.Writer, p Pair) error {
	var err error
	c := p.Comparison
	head := object{fault: &err}
	if finite(float64(c.RegistrationRMS)) {
		head.add("registration_rms_mm", number(c.RegistrationRMS))
	}
	webs := make([]string, len(c.Webs))
	for i, w := range c.Webs {
		webs[i] = differencesOf(w, &err).String()
	}
	tail := object{fault: &err}
	tail.add("warnings", list(c.Warnings))
	members := append(head.members, fmt.Sprintf("\"webs\": [%s]", strings.Join(webs, ",\n  ")))
	text := "{" + strings.Join(append(members, tail.members...), ",\n ") + "}\n"
	if err != nil {
		return err
	}
	_, err = io.WriteString(to, text)
	return err
}

func differencesOf(w comparison.Web, fault *error) object {
	out := object{fault: fault}
	out.add("web", int(w.Web))
	for _, d := range []struct {
		name string
		of   *estimate
	}{
		{"index_difference", estimated(w.Index, plain[plane.Ratio])},
		{"depth_difference_mm", estimated(w.Depth, plain[plane.Millimetre])},
		{"span_difference_mm", estimated(w.Span, plain[plane.Millimetre])},
		{"crown_angle_difference_deg", estimated(w.CrownAngle, degrees)},
	} {
		if d.of != nil {
			out.add(d.name, d.of)
		}
	}
	out.add("verdicts", verdictList(w.Verdicts))
	out.add("warnings", list(w.Warnings))
	return out
}

func verdictList(verdicts []norms.Verdict) []verdict {
	out := []verdict{}
	for _, v := range verdicts {
		if judged(v) {
			out = append(out, verdict{v.Figure, v.Finding, v.Certain, number(v.Limit), v.Against})
		}
	}
	return out
}

// CompareTable writes a comparison to be read by a surgeon.
func CompareTable(to io.Writer, p Pair) error {
	var out strings.Builder
	c := p.Comparison
	fmt.Fprintf(&out, "%s\n  beside %s\n", p.Operated, p.Other)
	if c.TwoSittings() {
		fmt.Fprintf(&out, "Two sittings of the %v hand, %s; differences are first minus second\n", c.Operated, wording.View(c.View))
	} else {
		fmt.Fprintf(&out, "Operated %v hand beside the %v hand mirrored, %s; differences are operated minus other\n", c.Operated, c.Other, wording.View(c.View))
	}
	if finite(float64(c.RegistrationRMS)) {
		fmt.Fprintf(&out, "Registration residual, rms: %.1f mm\n", float64(c.RegistrationRMS))
	}
	out.WriteString("\n" + grid(differenceRows(c)))
	section(&out, "Verdicts", comparedLines(c))
	section(&out, "Warnings", comparedWarnings(c))
	out.WriteString("\n" + wrapped(wording.Caution, "") + "\n")
	_, err := io.WriteString(to, out.String())
	return err
}

func differenceRows(c comparison.Comparison) [][]string {
	rows := [][]string{{"difference"}, {""}, {wording.IndexName(c.View)}, {wording.Depth}, {wording.Span}, {wording.CrownAngle}}
	for _, w := range c.Webs {
		for i, cell := range []string{
			wording.WebName(w.Web), wording.WebDigits(w.Web),
			orUnknown(w.Index, wording.Ratio), orUnknown(w.Depth, wording.Millimetres),
			orUnknown(w.Span, wording.Millimetres), orUnknown(w.CrownAngle, wording.Degrees),
		} {
			rows[i] = append(rows[i], cell)
		}
	}
	return rows
}

func orUnknown[Q plane.Measured](e *plane.Estimate[Q], write func(plane.Estimate[Q]) string) string {
	if e == nil {
		return notKnown
	}
	return write(*e)
}

// comparedLines are the verdicts, and whose the tolerance is.
func comparedLines(c comparison.Comparison) []string {
	var out []string
	for _, w := range c.Webs {
		for _, v := range w.Verdicts {
			if judged(v) {
				out = append(out, fmt.Sprintf("%s: %s %s", wording.WebName(w.Web), v.Figure, besideLimit(v)))
			}
		}
	}
	if len(out) > 0 {
		out = append(out, "The tolerance is this project's own unless the table of normal values was edited; no norm for such differences is published.")
	}
	return out
}

func besideLimit(v norms.Verdict) string {
	limit := fmt.Sprintf("%.2f", v.Limit)
	if v.Figure != "index" {
		limit = fmt.Sprintf("%.1f mm", v.Limit)
	}
	if v.Finding == norms.NoDifference {
		return fmt.Sprintf("%s; nearest limit %s (%s and tolerance)", v.Finding, limit, v.Against)
	}
	return fmt.Sprintf("%s; limit %s (%s and tolerance)", finding(v), limit, v.Against)
}

func comparedWarnings(c comparison.Comparison) []string {
	out := append([]string(nil), c.Warnings...)
	for _, w := range c.Webs {
		for _, text := range w.Warnings {
			out = append(out, wording.WebName(w.Web)+": "+text)
		}
	}
	return out
}
