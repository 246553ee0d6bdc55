package chart

import (
	"image"
	"io"

	"gonum.org/v1/plot/text"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"

	"ogive/imaging/charting"
	"ogive/imaging/wording"
)

// The page that SVG and PNG are drawn on, in points.
const pageWidth, pageHeight = 820, 540

// Spot is where a point of the series lies on an image, in its pixels.
type Spot struct {
	Point int // in Series.Points
	X, Y  float64
}

// page is the drawing; the place of every point goes to where.
func (c Chart) page(where *[]placed) charting.Page {
	return charting.Page{Width: pageWidth, Height: pageHeight, Draw: func(all draw.Canvas, ink Ink) { *where = c.draw(all, ink) }}
}

// Image is the chart as an image of that size in pixels, with the places of its
// points; scale is how many pixels of it a point of type is, 1 on a plain
// screen. Sizes too small to draw in give a chart without its texts. It fails
// on no size, and has at least one pixel.
func (c Chart) Image(size image.Point, scale float64, ink Ink) (image.Image, []Spot) {
	var where []placed
	img := c.page(&where).Image(size, scale, ink)
	perPoint := charting.PerPoint(scale)
	spots := make([]Spot, len(where))
	for i, p := range where {
		spots[i] = Spot{Point: i, X: p.at.X.Points() * perPoint, Y: float64(img.Bounds().Dy()) - p.at.Y.Points()*perPoint}
	}
	return img, spots
}

// PNG writes the chart as a picture on paper.
func (c Chart) PNG(to io.Writer) error { return c.page(new([]placed)).PNG(to) }

// SVG writes the chart as a drawing on paper, to be enlarged and edited.
func (c Chart) SVG(to io.Writer) error { return c.page(new([]placed)).SVG(to) }

// Room that is kept around the axes.
const (
	border      vg.Length = 18
	rightMargin vg.Length = 56 // the names of the grades
)

// draw draws everything and gives where the points lie.
func (c Chart) draw(all draw.Canvas, ink Ink) []placed {
	charting.Ground(all, ink)
	inner := draw.Crop(all, border, -border, border, -border)
	width := inner.Max.X - inner.Min.X
	if width < 200 || inner.Max.Y-inner.Min.Y < 200 {
		return c.drawField(all, ink)
	}
	top := c.heading(inner, ink)
	small := charting.Aligned(charting.Letters(ink.Second, charting.SmallSize), text.XLeft, text.YTop)
	bottom := inner.Min.Y
	for _, line := range c.printed(small, width) {
		bottom += lineHeight(line)
	}
	at := vg.Point{X: inner.Min.X, Y: bottom}
	for _, line := range c.printed(small, width) {
		all.FillText(small, at, line)
		at.Y -= lineHeight(line)
	}
	entries := rows(c.legend(), charting.Letters(ink.Text, charting.TextSize), width)
	legendTop := bottom + 10 + rowHeight*vg.Length(len(entries))
	drawLegend(all, ink, entries, vg.Point{X: inner.Min.X, Y: legendTop})
	inner.Min.Y, inner.Max.Y = legendTop+8, top-10
	return c.drawField(inner, ink)
}

// heading writes title and summary and gives the height at which they end.
func (c Chart) heading(inner draw.Canvas, ink Ink) vg.Length {
	at := vg.Point{X: inner.Min.X, Y: inner.Max.Y}
	title := charting.Aligned(charting.Bold(charting.Letters(ink.Text, charting.TitleSize)), text.XLeft, text.YTop)
	for _, line := range charting.Wrapped(c.Title(), title, inner.Max.X-inner.Min.X) {
		inner.FillText(title, at, line)
		at.Y -= charting.TitleSize * 1.35
	}
	summary := charting.Aligned(charting.Letters(ink.Text, charting.TextSize), text.XLeft, text.YTop)
	for _, line := range charting.Wrapped(c.Summary(), summary, inner.Max.X-inner.Min.X) {
		inner.FillText(summary, at, line)
		at.Y -= charting.TextSize * 1.35
	}
	return at.Y
}

// printed is the lines of the small print, an empty one between its parts.
func (c Chart) printed(s text.Style, width vg.Length) []string {
	var out []string
	for i, note := range c.notes(wording.Caution) {
		if i > 0 {
			out = append(out, "")
		}
		out = append(out, charting.Wrapped(note, s, width)...)
	}
	return out
}

func lineHeight(line string) vg.Length {
	if line == "" {
		return charting.SmallSize / 2
	}
	return charting.SmallSize * 1.3
}

func (c Chart) drawField(within draw.Canvas, ink Ink) []placed {
	within.Max.X -= rightMargin
	p := c.plot(ink, within.Max.X-within.Min.X)
	f := field{Canvas: p.DataCanvas(within), ink: ink}
	f.x, f.y = p.Transforms(&f.Canvas)
	f.normal(c.Normal)
	f.grades(c)
	if c.Series.Since == 0 && len(c.Series.Points) > 0 {
		f.operation("operation")
	}
	p.Draw(within)
	f.other(c)
	f.plan(c.Series.Plan)
	where := f.place(c)
	f.points(c, where)
	f.labels(c, where)
	return where
}
