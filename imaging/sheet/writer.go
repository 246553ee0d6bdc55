package sheet

import (
	"image/color"
	"strings"

	"codeberg.org/go-pdf/fpdf"

	"ogive/imaging/palette"
)

// writer writes from top to bottom and turns the page when it is full.
type writer struct {
	pdf     *fpdf.Fpdf
	content Content
	paper   Paper
	field   box
	y       float64
	heading string // of the pages that follow
}

// Sizes of letters, in points.
const (
	titleSize   = 15.0
	headingSize = 11.0
	textSize    = 9.0
	smallSize   = 7.5
)

// Inks of the words.
var (
	ink   = palette.Ink
	faded = palette.Faded
)

// lineOf is the height of a line of letters of that size: 1.35 times as high,
// a point being 25.4/72 mm.
func lineOf(size float64) float64 { return size * 25.4 / 72 * 1.35 }

// newPage begins a page under the heading, with the case's code and, below, the
// caution.
func (w *writer) newPage(heading string) {
	w.heading = heading
	w.pdf.AddPage()
	w.head()
	w.foot()
	w.y = w.field.top
}

func (w *writer) head() {
	right := w.content.codeLine()
	w.set("B", titleSize, ink)
	w.at(w.field.left, margin, w.heading)
	w.set("B", headingSize, ink)
	w.at(w.field.right-w.pdf.GetStringWidth(plain(right)), margin+0.8, right)
	w.set("", textSize, faded)
	w.at(w.field.left, margin+6.4, w.content.Title)
	w.rule(margin + headHeight - 1.6)
}

func (c Content) codeLine() string {
	if c.Code == "" {
		return "Case ____________"
	}
	return "Case " + c.Code
}

func (w *writer) foot() {
	_, height := w.paper.size()
	top := height - margin - footHeight + 4
	w.rule(top)
	w.set("I", smallSize, ink)
	const pageRoom = 26
	for i, line := range w.lines(w.content.Caution, w.field.width()-pageRoom) {
		w.at(w.field.left, top+1.8+float64(i)*lineOf(smallSize), line)
	}
	w.set("", smallSize, faded)
	text := "Page " + digits(w.pdf.PageNo()) + " of " + pageCount
	w.at(w.field.right-w.pdf.GetStringWidth("Page 10 of 10"), top+1.8, text)
}

func (w *writer) rule(y float64) {
	w.pdf.SetDrawColor(int(faded.R), int(faded.G), int(faded.B))
	w.pdf.SetDashPattern(nil, 0)
	w.pdf.SetLineWidth(0.15)
	w.pdf.Line(w.field.left, y, w.field.right, y)
}

func (w *writer) set(style string, size float64, c color.RGBA) {
	w.pdf.SetFont(face, style, size)
	w.pdf.SetTextColor(int(c.R), int(c.G), int(c.B))
}

// at writes one line with its top at y.
func (w *writer) at(x, y float64, text string) {
	_, size := w.pdf.GetFontSize()
	w.pdf.Text(x, y+0.95*size, plain(text))
}

// lines breaks a text to a width in the present font; lines of the text stay.
func (w *writer) lines(text string, width float64) []string {
	var out []string
	for _, paragraph := range strings.Split(plain(text), "\n") {
		if strings.TrimSpace(paragraph) == "" {
			out = append(out, "")
			continue
		}
		out = append(out, w.pdf.SplitText(paragraph, width)...)
	}
	return out
}

// need turns the page if there is not that much room below.
func (w *writer) need(height float64) {
	if w.y+height > w.field.bottom {
		w.newPage(w.heading)
	}
}

// paragraph writes a text from x on over a width in the present font.
func (w *writer) paragraph(x, width float64, style string, size float64, c color.RGBA, text string) {
	w.set(style, size, c)
	for _, line := range w.lines(text, width) {
		w.need(lineOf(size))
		w.set(style, size, c) // a turned page has set another
		w.at(x, w.y, line)
		w.y += lineOf(size)
	}
}

// section writes a heading that stays with what follows.
func (w *writer) section(text string) {
	w.need(lineOf(headingSize) + 3*lineOf(textSize))
	w.paragraph(w.field.left, w.field.width(), "B", headingSize, ink, text)
	w.y += 1
}
