package appraise

import (
	"context"

	"fyne.io/fyne/v2/lang"

	"ogive/geometry/deviation"
	"ogive/geometry/hand"
	"ogive/geometry/norms"
	"ogive/imaging/appraisal"
	"ogive/imaging/casebook"
	"ogive/imaging/casebook/course"
	"ogive/imaging/casebook/readings"
	"ogive/imaging/chart"
	"ogive/imaging/wording"
)

// Measured is what the program has measured on the photographs of one sitting, in
// words with their intervals: the index and the creep of each web, the deviation
// of each digit, and how far a graft differs from the skin around it by the limits of
// the table. Photographs that were not read before are read now, which takes
// as long as opening them: call it beside Fyne's goroutine.
func Measured(ctx context.Context, book *casebook.Casebook, read *readings.Book, caseID, sitting int64, table norms.Table) (map[Beside]string, error) {
	items, err := read.Case(ctx, caseID, nil)
	if err != nil {
		return nil, err
	}
	all, err := course.Of(ctx, book, read, caseID)
	if err != nil {
		return nil, err
	}
	m, at := measured{}, map[int64]bool{}
	for _, it := range items {
		if it.Sitting == sitting && it.Err == nil {
			at[it.Photograph] = true
			m.read(it.Kept)
		}
	}
	for _, w := range all.Webs {
		for _, p := range w.Series.Points {
			if at[p.Photograph] && p.Creep != nil {
				m.say(appraisal.MeasuredCreep, appraisal.Web(w.Side, w.Web), chart.Creep(p)+", "+chart.Grade(p.Grading))
			}
		}
	}
	return m, m.colours(book, all.Case, sitting, table)
}

type measured map[Beside]string

// say adds a figure; several of one kind stand in lines of their own.
func (m measured) say(f appraisal.Figure, at appraisal.Place, text string) {
	key := Beside{f, at}
	if was := m[key]; was != "" {
		text = was + "\n" + text
	}
	m[key] = text
}

func (m measured) read(k readings.Kept) {
	r := k.Reading
	for _, w := range r.Webs {
		if w.Index != nil {
			m.say(appraisal.MeasuredIndex, appraisal.Web(r.Side, w.Web), wording.IndexName(r.View)+" "+wording.Ratio(*w.Index))
		}
	}
	for _, d := range k.Bends {
		m.say(appraisal.MeasuredBend, appraisal.Digit(r.Side, d.Digit), bendText(d, r.View))
	}
}

// bendText is a deviation with the side it is to, where that can be told.
func bendText(d deviation.Deviation, v hand.View) string {
	angle := d.Angle
	towards := lang.L("no side can be told")
	switch d.Towards() {
	case deviation.Ulnar:
		towards = lang.L("to the ulnar side")
	case deviation.Radial:
		angle.Value = -angle.Value
		towards = lang.L("to the radial side")
	}
	return lang.L("{{.Angle}} at the PIP joint, {{.Towards}} ({{.View}})", map[string]any{"Angle": wording.Degrees(angle), "Towards": towards, "View": wording.View(v)})
}
