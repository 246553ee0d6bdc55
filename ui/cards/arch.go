package cards

import (
	"image"
	"math"

	"fyne.io/fyne/v2/theme"
	"github.com/fogleman/gg"

	"ogive/geometry/plane"
	"ogive/geometry/reading"
	"ogive/imaging/annotate"
	"ogive/imaging/palette"
	"ogive/ui/look"
)

// frame is how much of the plane the drawings of all arches show, so that their
// widths can be compared by eye.
type frame struct {
	width plane.Millimetre // shown across a drawing
	reach plane.Millimetre // of the borders beyond the springings
}

// frameWidths are the widths a frame can have. They are few, so that the
// drawings don't swell and shrink with a dragged point.
var frameWidths = []plane.Millimetre{6, 9, 13, 18, 25, 35, 50, 70, 100, 150}

// frameFor is the least frame that shows the arch of every web.
func frameFor(webs []reading.Web) frame {
	var need plane.Millimetre
	for _, w := range webs {
		line, ok := annotate.ArchLine(w, 0)
		if !ok {
			continue
		}
		for _, p := range line {
			need = max(need, 2.6*max(p.X, -p.X), 1.6*-p.Y*archSide/archRise)
		}
	}
	width := frameWidths[len(frameWidths)-1]
	for _, f := range frameWidths {
		if f >= need {
			width = f
			break
		}
	}
	return frame{width: width, reach: width}
}

// bar is the length of the scale's bar: up to a third of the drawing, 1 to
// 20 mm.
func (f frame) bar() plane.Millimetre {
	for _, b := range []plane.Millimetre{20, 10, 5, 2} {
		if b <= f.width*0.35 {
			return b
		}
	}
	return 1
}

// archSide and archRise are the size of a drawing on the screen.
const archSide, archRise = 112, 84

// drawing is one arch to draw.
type drawing struct {
	line []plane.Position
	f    frame
}

// draw draws skin up to the arch, the arch as it is drawn on the photograph, and
// a bar for the scale.
func (d drawing) draw(w, h int) image.Image {
	c := gg.NewContext(max(w, 1), max(h, 1))
	if len(d.line) == 0 || w <= 0 || h <= 0 {
		return c.Image()
	}
	px := float64(w) / archSide
	k := float64(w) / float64(d.f.width)
	crown := float64(h) - 18*px
	c.DrawRoundedRectangle(0, 0, float64(w), float64(h), 4*px)
	c.Clip()
	trace := func() {
		for _, p := range d.line {
			c.LineTo(float64(w)/2+float64(p.X)*k, crown+float64(p.Y)*k)
		}
	}
	trace()
	last := farther(float64(w)/2+float64(d.line[len(d.line)-1].X)*k, float64(w))
	first := farther(float64(w)/2+float64(d.line[0].X)*k, float64(w))
	c.LineTo(last, -float64(h))
	c.LineTo(last, 2*float64(h))
	c.LineTo(first, 2*float64(h))
	c.LineTo(first, -float64(h))
	c.ClosePath()
	c.SetColor(look.Colour(look.Skin))
	c.Fill()
	c.SetLineJoinRound()
	trace()
	c.SetColor(look.Casing())
	c.SetLineWidth(6 * px)
	c.StrokePreserve()
	c.SetColor(look.Mark(palette.Arch))
	c.SetLineWidth(3.4 * px)
	c.Stroke()
	d.drawBar(c, k, px, float64(h))
	return c.Image()
}

// farther is beyond the side of the drawing on which x lies.
func farther(x, w float64) float64 { return x + math.Copysign(w, x-w/2) }

func (d drawing) drawBar(c *gg.Context, k, px, h float64) {
	length := float64(d.f.bar()) * k
	x, y := 6*px, h-6*px
	c.SetColor(look.Colour(theme.ColorNameForeground))
	c.SetLineWidth(1.5 * px)
	c.MoveTo(x, y-3*px)
	c.LineTo(x, y)
	c.LineTo(x+length, y)
	c.LineTo(x+length, y-3*px)
	c.Stroke()
}
