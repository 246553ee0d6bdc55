package chart

import (
	"bytes"
	"fmt"
	"image"
	"image/png"
	"io"
	"math"

	"gonum.org/v1/plot/text"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
	"gonum.org/v1/plot/vg/vgimg"
	"gonum.org/v1/plot/vg/vgsvg"

	"ogive/imaging/wording"
)

// The page that SVG and PNG are drawn on, in points, and how many pixels of the
// PNG a point is.
const (
	pageWidth, pageHeight = 820, 540
	pngScale              = 2
)

// Spot is where a point of the series lies on an image, in its pixels.
type Spot struct {
	Point int // in Series.Points
	X, Y  float64
}

// Image is the chart as an image of that size in pixels, with the places of its
// points; scale is how many pixels of it a point of type is, 1 on a plain
// screen. Sizes too small to draw in give a chart without its texts. It fails
// on no size, and has at least one pixel.
func (c Chart) Image(size image.Point, scale float64, ink Ink) (image.Image, []Spot) {
	dpi := max(int(math.Round(vg.Inch.Points()*scale)), 1)
	perPoint := float64(dpi) / vg.Inch.Points()
	size.X, size.Y = max(size.X, 1), max(size.Y, 1)
	canvas := vgimg.NewWith(vgimg.UseImage(image.NewRGBA(image.Rectangle{Max: size})), vgimg.UseDPI(dpi))
	w, h := vg.Length(float64(size.X)/perPoint), vg.Length(float64(size.Y)/perPoint)
	where := c.draw(draw.NewCanvas(canvas, w, h), ink)
	spots := make([]Spot, len(where))
	for i, p := range where {
		spots[i] = Spot{Point: i, X: p.at.X.Points() * perPoint, Y: (h - p.at.Y).Points() * perPoint}
	}
	return canvas.Image(), spots
}

// PNG writes the chart as a picture on paper.
func (c Chart) PNG(to io.Writer) error {
	img, _ := c.Image(image.Pt(pageWidth*pngScale, pageHeight*pngScale), pngScale, Paper)
	if err := png.Encode(to, img); err != nil {
		return fmt.Errorf("the chart could not be written as PNG: %w", err)
	}
	return nil
}

// SVG writes the chart as a drawing on paper, to be enlarged and edited.
func (c Chart) SVG(to io.Writer) error {
	canvas := vgsvg.New(pageWidth, pageHeight)
	c.draw(draw.New(canvas), Paper)
	var drawn bytes.Buffer
	if _, err := canvas.WriteTo(&drawn); err != nil {
		return fmt.Errorf("the chart could not be drawn as SVG: %w", err)
	}
	// The other two have the same widths, where Liberation is not installed.
	named := bytes.ReplaceAll(drawn.Bytes(), []byte("font-family:Liberation Sans;"), []byte("font-family:Liberation Sans,Arial,Helvetica,sans-serif;"))
	if _, err := to.Write(named); err != nil {
		return fmt.Errorf("the chart could not be written as SVG: %w", err)
	}
	return nil
}

// Room that is kept around the axes.
const (
	border      vg.Length = 18
	rightMargin vg.Length = 56 // the names of the grades
)

// draw draws everything and gives where the points lie.
func (c Chart) draw(all draw.Canvas, ink Ink) []placed {
	all.SetColor(ink.Ground)
	// A little more than all, since the last pixels may lie beyond the last point.
	all.Fill(draw.Crop(all, -1, 1, -1, 1).Rectangle.Path())
	inner := draw.Crop(all, border, -border, border, -border)
	width := inner.Max.X - inner.Min.X
	if width < 200 || inner.Max.Y-inner.Min.Y < 200 {
		return c.drawField(all, ink)
	}
	top := c.heading(inner, ink)
	small := aligned(letters(ink.Second, smallSize), text.XLeft, text.YTop)
	bottom := inner.Min.Y
	for _, line := range c.printed(small, width) {
		bottom += lineHeight(line)
	}
	at := vg.Point{X: inner.Min.X, Y: bottom}
	for _, line := range c.printed(small, width) {
		all.FillText(small, at, line)
		at.Y -= lineHeight(line)
	}
	entries := rows(c.legend(), letters(ink.Text, textSize), width)
	legendTop := bottom + 10 + rowHeight*vg.Length(len(entries))
	drawLegend(all, ink, entries, vg.Point{X: inner.Min.X, Y: legendTop})
	inner.Min.Y, inner.Max.Y = legendTop+8, top-10
	return c.drawField(inner, ink)
}

// heading writes title and summary and gives the height at which they end.
func (c Chart) heading(inner draw.Canvas, ink Ink) vg.Length {
	at := vg.Point{X: inner.Min.X, Y: inner.Max.Y}
	title := aligned(bold(letters(ink.Text, titleSize)), text.XLeft, text.YTop)
	for _, line := range wrapped(c.Title(), title, inner.Max.X-inner.Min.X) {
		inner.FillText(title, at, line)
		at.Y -= titleSize * 1.35
	}
	summary := aligned(letters(ink.Text, textSize), text.XLeft, text.YTop)
	for _, line := range wrapped(c.Summary(), summary, inner.Max.X-inner.Min.X) {
		inner.FillText(summary, at, line)
		at.Y -= textSize * 1.35
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
		out = append(out, wrapped(note, s, width)...)
	}
	return out
}

func lineHeight(line string) vg.Length {
	if line == "" {
		return smallSize / 2
	}
	return smallSize * 1.3
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
