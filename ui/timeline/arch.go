package timeline

import (
	"image"

	"fyne.io/fyne/v2/theme"
	"github.com/fogleman/gg"

	"ogive/geometry/followup"
	"ogive/geometry/plane"
	"ogive/ui/look"
)

// arch is a web between two fingers, from the MCP joints at the foot of the
// drawing to the PIP joints at its head.
type arch struct {
	index, other *plane.Ratio // nil where not known
}

// archOf is the web where it was last seen, and where the other hand's is.
func archOf(s followup.Series) arch {
	var a arch
	if n := len(s.Points); n > 0 {
		a.index = &s.Points[n-1].Index.Value
	}
	if n := len(s.Band); n > 0 {
		a.other = &s.Band[n-1].Index.Value
	}
	return a
}

// draw draws the skin, and the other hand's web as a dashed line.
func (a arch) draw(w, h int) image.Image {
	c := gg.NewContext(max(w, 1), max(h, 1))
	width, height := float64(w), float64(h)
	c.DrawRoundedRectangle(0, 0, width, height, height/12)
	c.Clip()
	c.SetColor(look.Colour(look.Skin))
	c.Clear()
	left, right, middle := 0.36*width, 0.64*width, 0.5*width
	level := func(r plane.Ratio) float64 { return height * (1 - min(max(float64(r), 0), 1)) }
	if a.index != nil {
		crown := level(*a.index)
		spring := crown - 0.22*height
		c.MoveTo(left, -height)
		c.LineTo(left, spring)
		c.QuadraticTo(left, crown-0.06*height, middle, crown)
		c.QuadraticTo(right, crown-0.06*height, right, spring)
		c.LineTo(right, -height)
		c.ClosePath()
		c.SetColor(look.Colour(look.Card))
		c.FillPreserve()
		c.SetColor(look.Colour(look.SkinLine))
		c.SetLineWidth(height / 24)
		c.Stroke()
	}
	if a.other != nil {
		y := level(*a.other)
		c.SetColor(look.Colour(theme.ColorNameForeground))
		c.SetDash(height/10, height/14)
		c.SetLineWidth(height / 28)
		c.DrawLine(0, y, width, y)
		c.Stroke()
	}
	return c.Image()
}
