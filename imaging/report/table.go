package report

import (
	"fmt"
	"io"
	"strings"
	"unicode/utf8"

	"ogive/geometry/hand"
	"ogive/geometry/norms"
	"ogive/geometry/plane"
	"ogive/geometry/reading"
	"ogive/imaging/wording"
)

// Table writes the readings to be read by a surgeon: a column for every web,
// then the verdicts and the warnings in words, and the caution under all.
func Table(to io.Writer, entries []Entry) error {
	var out strings.Builder
	for _, e := range entries {
		sheet(&out, e)
	}
	if len(entries) > 0 {
		out.WriteString(wrapped(wording.Caution, "") + "\n")
	}
	_, err := io.WriteString(to, out.String())
	return err
}

func sheet(out *strings.Builder, e Entry) {
	r := e.Result.Reading
	fmt.Fprintf(out, "%s\n%s; %s\n\n", e.Path, wording.Photograph(r.Side, r.View), wording.Scale(r.Method, r.PerPixel))
	out.WriteString(grid(rows(r)))
	section(out, "Verdicts", verdictLines(r))
	section(out, "Warnings", warningLines(r))
	out.WriteByte('\n')
}

func section(out *strings.Builder, title string, lines []string) {
	if len(lines) == 0 {
		return
	}
	fmt.Fprintf(out, "\n%s\n", title)
	for _, l := range lines {
		out.WriteString(wrapped(l, "  ") + "\n")
	}
}

// notKnown stands where a web lacks a figure that another web has.
const notKnown = "-"

// rows are the lines of the table: a head, then a line for every figure that
// any web has.
func rows(r reading.Reading) [][]string {
	if len(r.Webs) == 0 {
		return nil
	}
	head, digits := []string{""}, []string{""}
	for _, w := range r.Webs {
		head, digits = append(head, wording.WebName(w.Web)), append(digits, wording.WebDigits(w.Web))
	}
	out := [][]string{head, digits}
	for _, name := range []string{wording.IndexName(r.View), wording.Depth, wording.Span, wording.Rise, wording.RiseToSpan,
		wording.Flare, wording.CrownAngle, wording.CrownRadius, wording.Slope, wording.Area} {
		out = addRow(out, name, r, func(w reading.Web) string { return figure(w, r.View, name) })
	}
	for _, at := range widthsAt {
		out = addRow(out, fmt.Sprintf("width at %v mm", number(at)), r, func(w reading.Web) string { return width(w, at) })
	}
	out = addRow(out, "shape", r, wording.Shape)
	return addRow(out, "fit, rms", r, func(w reading.Web) string {
		if !fitted(w) {
			return ""
		}
		return fmt.Sprintf("%.2f mm", float64(w.FitRMS))
	})
}

// addRow leaves out a row that no web has anything for.
func addRow(rows [][]string, name string, r reading.Reading, of func(reading.Web) string) [][]string {
	row, any := []string{name}, false
	for _, w := range r.Webs {
		cell := of(w)
		any = any || cell != ""
		if cell == "" {
			cell = notKnown
		}
		row = append(row, cell)
	}
	if !any {
		return rows
	}
	return append(rows, row)
}

func figure(w reading.Web, v hand.View, name string) string {
	for _, f := range wording.Figures(w, v) {
		if f.Name == name {
			return f.Value
		}
	}
	return ""
}

func width(w reading.Web, at plane.Millimetre) string {
	for _, x := range w.Widths {
		if x.Distal == at {
			return wording.Millimetres(x.Width)
		}
	}
	return ""
}

// grid sets cells in columns as wide as their widest cell.
func grid(rows [][]string) string {
	widths := map[int]int{}
	for _, row := range rows {
		for i, cell := range row {
			widths[i] = max(widths[i], utf8.RuneCountInString(cell))
		}
	}
	var out strings.Builder
	for _, row := range rows {
		var line strings.Builder
		line.WriteString("  ")
		for i, cell := range row {
			line.WriteString(cell + strings.Repeat(" ", widths[i]-utf8.RuneCountInString(cell)+3))
		}
		out.WriteString(strings.TrimRight(line.String(), " ") + "\n")
	}
	return out.String()
}

func verdictLines(r reading.Reading) []string {
	var out []string
	for _, w := range r.Webs {
		for _, v := range w.Verdicts {
			if judged(v) {
				out = append(out, fmt.Sprintf("%s: %s %s; %s %s", wording.WebName(w.Web), v.Figure, finding(v), limitWord(v), wording.Limit(v)))
			}
		}
	}
	return out
}

// within is the finding of a figure between its limits.
const within = "within limits"

func limitWord(v norms.Verdict) string {
	if v.Finding == within {
		return "nearest limit"
	}
	return "limit"
}

// finding is the verdict with how sure it is: "too deep (certain)".
func finding(v norms.Verdict) string {
	if v.Certain {
		return wording.Verdict(v) + " (certain)"
	}
	return wording.Verdict(v)
}

func warningLines(r reading.Reading) []string {
	out := append([]string(nil), r.Warnings...)
	for _, w := range r.Webs {
		for _, text := range w.Remarks() {
			out = append(out, wording.WebName(w.Web)+": "+text)
		}
	}
	return out
}

// wide is how many characters a line of running words may have.
const wide = 88

// wrapped sets running words in lines, each after the indent, those after the
// first two further in.
func wrapped(text, indent string) string {
	var out strings.Builder
	line := indent
	for _, word := range strings.Fields(text) {
		if line != indent && utf8.RuneCountInString(line)+utf8.RuneCountInString(word) >= wide {
			out.WriteString(line + "\n")
			line = indent
			if indent != "" {
				line += "  "
			}
		}
		if strings.TrimSpace(line) != "" {
			line += " "
		}
		line += word
	}
	return out.String() + line
}
