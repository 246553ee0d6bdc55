package agreementchart

import (
	"fmt"
	"io"

	"gonum.org/v1/plot/text"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"

	"ogive/geometry/agreement"
	"ogive/imaging/charting"
	"ogive/imaging/wording"
)

// page is an A4 sheet lying, in points.
func (c Chart) page() charting.Page { return charting.Page{Width: 842, Height: 595, Draw: c.draw} }

// PNG writes plots and figures as a picture on paper.
func (c Chart) PNG(to io.Writer) error { return c.page().PNG(to) }

// SVG writes them as a drawing on paper, to be enlarged and edited.
func (c Chart) SVG(to io.Writer) error { return c.page().SVG(to) }

// PDF writes them as a page to be printed.
func (c Chart) PDF(to io.Writer) error { return c.page().PDF(to) }

// PDF writes a page for each chart.
func PDF(to io.Writer, charts []Chart) error {
	pages := make([]charting.Page, len(charts))
	for i, c := range charts {
		pages[i] = c.page()
	}
	return charting.PDF(to, pages...)
}

// Room around the page, and between its parts.
const (
	border vg.Length = 30
	gutter vg.Length = 26
)

// draw draws the page: heading, plots, figures beside their meaning, small print.
func (c Chart) draw(all draw.Canvas, ink charting.Ink) {
	charting.Ground(all, ink)
	inner := draw.Crop(all, border, -border, border, -border)
	c.heading(&inner, ink)
	c.smallPrint(&inner, ink)
	figures, meaning := inner, inner
	figures.Max.X = inner.Min.X + 0.56*(inner.Max.X-inner.Min.X-gutter)
	meaning.Min.X = figures.Max.X + gutter
	height := max(c.figures(figures, ink, false), c.meaning(meaning, ink, false))
	figures.Max.Y, meaning.Max.Y = inner.Min.Y+height, inner.Min.Y+height
	c.figures(figures, ink, true)
	c.meaning(meaning, ink, true)
	inner.Min.Y += height + 14
	c.plots(inner, ink)
}

// heading writes title and basis at the top.
func (c Chart) heading(inner *draw.Canvas, ink charting.Ink) {
	title := charting.Aligned(charting.Bold(charting.Letters(ink.Text, charting.TitleSize)), text.XLeft, text.YTop)
	basis := charting.Aligned(charting.Letters(ink.Text, charting.TextSize), text.XLeft, text.YTop)
	write(inner, title, charting.TitleSize*1.35, c.Title())
	write(inner, basis, charting.TextSize*1.35, c.Basis())
	inner.Max.Y -= 10
}

// write writes a paragraph at the top of the room and takes it from the room.
func write(room *draw.Canvas, s text.Style, height vg.Length, words string) {
	for _, l := range charting.Wrapped(words, s, room.Max.X-room.Min.X) {
		room.FillText(s, vg.Point{X: room.Min.X, Y: room.Max.Y}, l)
		room.Max.Y -= height
	}
}

// method is how the figures are computed.
var method = fmt.Sprintf("ICC(2,1) and ICC(3,1) as by Shrout and Fleiss 1979, limits of agreement as by Bland and Altman 1986 at %.2f standard deviations; brackets and shades are 95 %% intervals, targets being taken as independent of each other, as several webs of one hand are not quite.", agreement.Reach)

// smallPrint writes method and caution at the bottom.
func (c Chart) smallPrint(inner *draw.Canvas, ink charting.Ink) {
	const high = charting.SmallSize * 1.3
	s := charting.Aligned(charting.Letters(ink.Second, charting.SmallSize), text.XLeft, text.YTop)
	width := inner.Max.X - inner.Min.X
	lines := append(charting.Wrapped(method, s, width), charting.Wrapped(wording.Caution, s, width)...)
	y := inner.Min.Y + high*vg.Length(len(lines))
	inner.Min.Y = y + 12
	rule := draw.LineStyle{Color: ink.Faint, Width: 0.8}
	inner.StrokeLine2(rule, inner.Min.X, y+5, inner.Max.X, y+5)
	for _, l := range lines {
		inner.FillText(s, vg.Point{X: inner.Min.X, Y: y}, l)
		y -= high
	}
}

// figures writes the table, or only tells its height.
func (c Chart) figures(in draw.Canvas, ink charting.Ink, drawn bool) vg.Length {
	const high = 16
	name := charting.Aligned(charting.Letters(ink.Text, charting.SmallSize), text.XLeft, text.YTop)
	note := charting.Aligned(charting.Letters(ink.Second, charting.SmallSize), text.XLeft, text.YTop)
	width := in.Max.X - in.Min.X
	y := in.Max.Y
	for i, r := range c.Rows() {
		if drawn {
			if i > 0 {
				in.StrokeLine2(draw.LineStyle{Color: ink.Faint, Width: 0.6}, in.Min.X, y+1.8, in.Max.X, y+1.8)
			}
			in.FillText(name, vg.Point{X: in.Min.X, Y: y}, r.Name)
			in.FillText(charting.Bold(name), vg.Point{X: in.Min.X + 0.3*width, Y: y}, r.Text)
			in.FillText(note, vg.Point{X: in.Min.X + 0.66*width, Y: y}, fitting(r.Note, note, 0.34*width))
		}
		y -= high
	}
	return in.Max.Y - y
}

// meaning writes the sentences, or only tells their height.
func (c Chart) meaning(in draw.Canvas, ink charting.Ink, drawn bool) vg.Length {
	const high = charting.SmallSize * 1.3
	s := charting.Aligned(charting.Letters(ink.Text, charting.SmallSize), text.XLeft, text.YTop)
	y := in.Max.Y
	for _, words := range c.Words() {
		for _, l := range charting.Wrapped(words, s, in.Max.X-in.Min.X) {
			if drawn {
				in.FillText(s, vg.Point{X: in.Min.X, Y: y}, l)
			}
			y -= high
		}
		y -= 3
	}
	return in.Max.Y - y
}
