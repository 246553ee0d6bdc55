package compared

import (
	"strings"

	"ogive/imaging/wording"
)

// Titles name the two photographs as the reader knows them, such as by date.
type Titles struct{ Operated, Other string }

// Table is the comparison as text with tabs between its columns, to be pasted
// into a document or a spreadsheet: a line for each figure of each web, then
// what must be known beside them.
func Table(p Pair, t Titles) string {
	var out strings.Builder
	line := func(cells ...string) { out.WriteString(strings.Join(cells, "\t") + "\n") }
	line(p.Title())
	line(t.Operated + " beside " + t.Other)
	line("web", "figure", t.Operated, t.Other, "difference", "verdict", "limit")
	for _, w := range p.Comparison.Webs {
		for _, f := range p.Figures(w) {
			verdict, limit := "", ""
			if f.Verdict != nil {
				verdict, limit = VerdictWords(*f.Verdict), LimitWords(*f.Verdict)
			}
			line(wording.WebName(w.Web), wording.Term(f.Name), orNotKnown(f.Operated), orNotKnown(f.Other), orNotKnown(f.Difference), verdict, limit)
		}
	}
	for _, text := range p.Notes() {
		line(text)
	}
	line(wording.Caution)
	return out.String()
}

func orNotKnown(text string) string {
	if text == "" {
		return "not known"
	}
	return text
}

// Notes are what must be known beside the figures: reminders of size first, then
// the order, the residual, the tolerance and the warnings.
func (p Pair) Notes() []string {
	var out []string
	add := func(texts ...string) {
		for _, text := range texts {
			if text != "" {
				out = append(out, text)
			}
		}
	}
	add(p.Comparison.Reminders...)
	add(p.Growth(), p.Order()+" Figures are stated ± their uncertainty at 95 per cent.")
	if text := p.Residual(); text != "" {
		add(text + ".")
	}
	add(p.ResidualMeans(), Tolerance)
	add(p.Comparison.Warnings...)
	for _, w := range p.Comparison.Webs {
		for _, text := range w.Warnings {
			add(wording.WebName(w.Web) + ": " + text)
		}
	}
	return out
}
