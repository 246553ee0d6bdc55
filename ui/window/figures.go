package window

import (
	"strings"

	"fyne.io/fyne/v2/lang"

	"ogive/geometry/reading"
	"ogive/imaging/wording"
)

// copyFigures puts the figures on the clipboard as a table that can be pasted
// into a spreadsheet or notes.
func (w *Window) copyFigures() {
	if !w.ready() {
		return
	}
	defer w.keyboard.take()
	if len(w.reading.Webs) == 0 {
		w.notices.show(notice{about: aboutCopying, text: lang.L("There are no figures to copy yet: mark the scale and a web first.")})
		return
	}
	w.app.Clipboard().SetContent(table(w.reading.Reading))
	w.notices.show(notice{about: aboutCopying, text: lang.L("The figures are on the clipboard as a table.")})
}

// table is a reading as text: columns parted by tabs, a column for every web.
func table(r reading.Reading) string {
	head := []string{wording.Photograph(r.Side, r.View)}
	var names []string
	values := map[string][]string{}
	for i, web := range r.Webs {
		head = append(head, wording.WebName(web.Web)+" ("+wording.WebDigits(web.Web)+")")
		for _, f := range wording.Figures(web, r.View) {
			if values[f.Name] == nil {
				names = append(names, f.Name)
				values[f.Name] = make([]string, len(r.Webs))
			}
			values[f.Name][i] = f.Value
		}
		for _, v := range web.Verdicts {
			name := verdictRow(v.Figure)
			if values[name] == nil {
				names = append(names, name)
				values[name] = make([]string, len(r.Webs))
			}
			values[name][i] = wording.Verdict(v) + ", " + wording.Limit(v)
		}
	}
	lines := []string{strings.Join(head, "\t")}
	for _, name := range names {
		lines = append(lines, wording.Term(name)+"\t"+strings.Join(values[name], "\t"))
	}
	lines = append(lines, wording.Scale(r.Method, r.PerPixel))
	lines = append(lines, r.Warnings...)
	return strings.Join(append(lines, wording.Term(wording.Caution)), "\n") + "\n"
}

// verdictRow is the name of the row of verdicts on a figure.
func verdictRow(figure string) string {
	switch figure {
	case "index":
		return lang.L("verdict on index")
	case wording.Span:
		return lang.L("verdict on span")
	case wording.Slope:
		return lang.L("verdict on slope")
	}
	return lang.L("verdict on {{.Figure}}", map[string]any{"Figure": wording.Term(figure)})
}
