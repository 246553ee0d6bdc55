package plansheet

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"

	"ogive/imaging/family"
	"ogive/imaging/planning"
	"ogive/imaging/sheet"
	"ogive/imaging/wording"
	"ogive/ui/column"
)

// printable reports whether there is anything to print.
func printable(p planning.Plan) bool {
	for _, w := range p.Webs {
		for _, a := range shownOf(w) {
			if len(lines(a)) > 0 {
				return true
			}
		}
	}
	return false
}

// lacking is what whoever prints should know before.
func lacking(p planning.Plan) string {
	if !printable(p) {
		return lang.L("There is nothing to print yet: draw an arch, a flap or a zigzag, and leave at least one web on the sheet.")
	}
	var out []string
	for _, w := range p.Webs {
		if w.Chosen < 0 && len(w.Alternatives) > 1 {
			out = append(out, lang.L("{{.Web}}: no alternative is chosen, so all {{.Count}} are printed.", map[string]any{"Web": wording.WebName(w.Web), "Count": len(w.Alternatives)}))
		}
	}
	return strings.Join(out, "\n")
}

// shownOf are the alternatives of a web that are printed.
func shownOf(w planning.Web) []planning.Alternative {
	if w.Chosen >= 0 && w.Chosen < len(w.Alternatives) {
		return w.Alternatives[w.Chosen : w.Chosen+1]
	}
	return w.Alternatives
}

// lines are what is drawn of an alternative, in words.
func lines(a planning.Alternative) []string {
	var out []string
	if a.Arch != nil {
		out = append(out, sheet.ArchLine.String())
	}
	if a.Flap != nil {
		out = append(out, lang.L("{{.Kind}} flap", map[string]any{"Kind": a.Flap.Flap.Kind.String()}))
	}
	if a.Dorsal != nil {
		out = append(out, sheet.DorsalZigzag.String())
	}
	if a.Palmar != nil {
		out = append(out, sheet.PalmarZigzag.String())
	}
	return out
}

// outlines are all pieces at true size, web by web.
func outlines(p planning.Plan) string {
	var out []string
	for _, w := range p.Webs {
		for _, a := range shownOf(w) {
			drawn := lines(a)
			if len(drawn) == 0 {
				continue
			}
			title := wording.WebName(w.Web)
			if a.Name != "" {
				title += ", " + a.Name
			}
			out = append(out, title+": "+strings.Join(drawn, "; ")+". "+lang.L("First together, then one by one."))
		}
		if w.Skin != nil && len(w.Skin.Patches) > 0 {
			out = append(out, lang.L("{{.Web}}: the graft for each finger.", map[string]any{"Web": wording.WebName(w.Web)}))
		}
	}
	return strings.Join(out, "\n")
}

// others are what is told beside the figures of the webs.
func others(p planning.Plan) string {
	out := []string{lang.L("all figures with their intervals")}
	for _, w := range p.Webs {
		if w.Skin != nil {
			out = append(out, lang.L("skin that is short"))
			break
		}
	}
	if n := len(p.File.Donors); n > 0 {
		out = append(out, lang.L("your donor sites ({{.Count}})", map[string]any{"Count": n}))
	}
	if len(p.File.Patches) > 0 {
		out = append(out, lang.L("skin colour"))
	}
	return wording.Sentence(strings.Join(append(out, lang.L("notes and sources")), ", "))
}

// points is how much the family is told.
func points(p planning.Plan) int {
	own := map[string]string{}
	for _, t := range p.File.Family.Texts {
		own[t.Key] = t.Text
	}
	return len(family.Points(p.File.Family.Findings, own))
}

// pages are the kinds of pages in order, each with a small drawing of it.
func pages(p planning.Plan, paper sheet.Paper, withFamily bool) []fyne.CanvasObject {
	if !printable(p) {
		return []fyne.CanvasObject{column.Body(lang.L("Nothing yet."))}
	}
	out := []fyne.CanvasObject{
		newEntry(drawPhotograph, paper, lang.L("Plan for theatre"), lang.L("The photograph with the plan drawn on it, the main figures, a line to sign.")),
		newEntry(drawOutlines, paper, lang.L("Outlines at true size"), outlines(p)),
		newEntry(drawFigures, paper, lang.L("Figures, notes and sources"), others(p)+"."),
	}
	if withFamily {
		out = append(out, newEntry(drawFamily, paper, family.Title, lang.L("{{.Count}} points for the family, on a page of their own.", map[string]any{"Count": points(p)})))
	}
	return out
}
