package sheet

import "image/color"

// figurePages are all figures, what is to be said of them, and their sources.
func (w *writer) figurePages() {
	c := w.content
	if len(c.Tables)+len(c.Notes)+len(c.Sources) == 0 {
		return
	}
	w.newPage("Figures, notes and sources")
	for _, t := range c.Tables {
		w.table(t)
		w.y += 4
	}
	w.list("Notes", c.Notes)
	w.list("Sources", c.Sources)
}

// Widths of the columns of a table, in millimetres.
const (
	nameColumn  = 56.0
	valueColumn = 36.0
)

// table writes a heading and a row for each figure.
func (w *writer) table(t Table) {
	if t.Title != "" {
		w.section(t.Title)
	}
	for _, r := range t.Rows {
		w.row(r)
	}
}

func (w *writer) row(r Row) {
	f := w.field
	w.set("", textSize, ink)
	names := w.lines(r.Name, nameColumn-3)
	w.set("B", textSize, ink)
	values := w.lines(r.Value, valueColumn-3-swatchRoom*float64(len(r.Swatches)))
	w.set("", smallSize, faded)
	notes := w.lines(r.Note, f.width()-nameColumn-valueColumn)
	height := max(lineOf(textSize)*float64(max(len(names), len(values))), lineOf(smallSize)*float64(len(notes))+0.6) + 1
	w.need(height)
	w.column(f.left, "", textSize, names)
	w.swatches(f.left+nameColumn, r.Swatches)
	w.column(f.left+nameColumn+swatchRoom*float64(len(r.Swatches)), "B", textSize, values)
	w.set("", smallSize, faded)
	for i, line := range notes {
		w.at(f.left+nameColumn+valueColumn, w.y+0.6+float64(i)*lineOf(smallSize), line)
	}
	w.y += height
	w.pdf.SetDrawColor(0xd0, 0xcc, 0xc2)
	w.pdf.SetDashPattern(nil, 0)
	w.pdf.SetLineWidth(0.1)
	w.pdf.Line(f.left, w.y-0.6, f.right, w.y-0.6)
}

// swatchRoom is the width of a swatch and of the gap beside it.
const swatchRoom = 6.8

// swatches lays colours side by side, touching, as they are compared.
func (w *writer) swatches(x float64, colours []color.RGBA) {
	const side = 5.2
	for i, c := range colours {
		w.pdf.SetFillColor(int(c.R), int(c.G), int(c.B))
		w.pdf.Rect(x+float64(i)*side, w.y, side, 3.8, "F")
	}
}

func (w *writer) column(x float64, style string, size float64, lines []string) {
	w.set(style, size, ink)
	for i, line := range lines {
		w.at(x, w.y+float64(i)*lineOf(size), line)
	}
}

// list writes each text behind a dash.
func (w *writer) list(title string, texts []string) {
	if len(texts) == 0 {
		return
	}
	w.section(title)
	for _, text := range texts {
		w.set("", textSize, ink)
		w.need(lineOf(textSize) * float64(min(3, len(w.lines(text, w.field.width()-4)))))
		w.set("", textSize, ink)
		w.at(w.field.left, w.y, "–")
		w.paragraph(w.field.left+4, w.field.width()-4, "", textSize, ink, text)
		w.y += 0.8
	}
	w.y += 3
}
