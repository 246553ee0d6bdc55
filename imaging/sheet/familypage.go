package sheet

import "ogive/imaging/family"

// Sizes of letters on the family's page: it is read at a kitchen table.
const (
	familyTitle = 12.5
	familyText  = 11.0
)

// familyPages hold nothing but what the family is told.
func (w *writer) familyPages() {
	if len(w.content.Family) == 0 {
		return
	}
	w.newPage(family.Title)
	width := min(w.field.width(), 168)
	for _, p := range w.content.Family {
		w.set("", familyText, ink)
		lines := len(w.lines(p.Text, width))
		w.need(lineOf(familyTitle) + lineOf(familyText)*float64(min(lines, 8)))
		if p.Title != "" {
			w.paragraph(w.field.left, width, "B", familyTitle, ink, p.Title)
			w.y += 0.6
		}
		w.paragraph(w.field.left, width, "", familyText, ink, p.Text)
		w.y += 3.6
	}
}
