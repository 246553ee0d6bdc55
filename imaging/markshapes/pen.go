package markshapes

import (
	"image"
	"image/color"

	"github.com/fogleman/gg"

	"ogive/imaging/palette"
)

// Pen draws on a picture. Widths of strokes and dashes are in units, so that one
// drawing suits screens and pictures of every size.
type Pen struct {
	gg     *gg.Context
	img    *image.RGBA
	unit   float64
	casing float64
}

// NewPen is a pen on img with a unit of that many pixels. Casing is how far, in
// units, the dark casing shows on either side of a core.
func NewPen(img *image.RGBA, unit, casing float64) *Pen {
	p := &Pen{gg: gg.NewContextForRGBA(img), img: img, unit: unit, casing: casing}
	p.gg.SetLineCapRound()
	p.gg.SetLineJoinRound()
	return p
}

// Stroke is how a line is drawn: the colour and width of its core, dashes if any.
type Stroke struct {
	Core  color.RGBA
	Width float64
	Dash  []float64
	// Thin halves the casing, for a line that lies on another.
	Thin bool
}

// Lines draws each of the paths with a light core in a dark casing, all casings
// below all cores, so that crossings stay clean.
func (p *Pen) Lines(st Stroke, paths ...[]Spot) {
	var seen [][]Spot
	for _, path := range paths {
		seen = append(seen, p.Seen(path)...)
	}
	if len(seen) == 0 {
		return
	}
	casing := p.casing
	if st.Thin {
		casing /= 2
	}
	p.dash(st.Dash)
	p.Plain(palette.Ink, st.Width+2*casing, seen...)
	p.Plain(st.Core, st.Width, seen...)
	p.dash(nil)
}

// Ring draws a closed outline as a line, and leaves what is inside to be seen.
func (p *Pen) Ring(st Stroke, outline []Spot) { p.Lines(st, Closed(outline)) }

// Plain draws lines without a casing.
func (p *Pen) Plain(c color.Color, width float64, paths ...[]Spot) {
	p.gg.SetColor(c)
	p.gg.SetLineWidth(width * p.unit)
	for _, path := range paths {
		if len(path) > 1 {
			p.trace(path)
		}
	}
	p.gg.Stroke()
}

// PlainDashed draws a dashed line without a casing.
func (p *Pen) PlainDashed(c color.Color, width float64, dash []float64, paths ...[]Spot) {
	p.dash(dash)
	p.Plain(c, width, paths...)
	p.dash(nil)
}

// Solid fills a closed outline with a light core in a dark casing.
func (p *Pen) Solid(c color.Color, outline []Spot) {
	p.trace(outline)
	p.gg.ClosePath()
	p.gg.SetColor(palette.Ink)
	p.gg.SetLineWidth(2 * p.casing * p.unit)
	p.gg.StrokePreserve()
	p.gg.SetColor(c)
	p.gg.Fill()
}

// Fill fills a closed outline without a casing.
func (p *Pen) Fill(c color.Color, outline []Spot) {
	p.trace(outline)
	p.gg.ClosePath()
	p.gg.SetColor(c)
	p.gg.Fill()
}

func (p *Pen) dash(lengths []float64) {
	scaled := make([]float64, len(lengths))
	for i, d := range lengths {
		scaled[i] = d * p.unit
	}
	p.gg.SetDash(scaled...)
}

func (p *Pen) trace(path []Spot) {
	p.gg.NewSubPath()
	for i, q := range path {
		if i == 0 {
			p.gg.MoveTo(q.X, q.Y)
			continue
		}
		p.gg.LineTo(q.X, q.Y)
	}
}
