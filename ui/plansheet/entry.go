package plansheet

import (
	"image"

	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"github.com/fogleman/gg"

	"ogive/imaging/sheet"
	"ogive/ui/column"
	"ogive/ui/flow"
	"ogive/ui/look"
)

// pageWidth and pageHeight are how large a page is drawn.
const pageWidth, pageHeight = 62, 88

// proportion is the height over the width of a paper (ISO 216; 8.5 by 11 inches).
func proportion(p sheet.Paper) float64 {
	if p == sheet.Letter {
		return 11.0 / 8.5
	}
	return 297.0 / 210
}

// newEntry is one kind of page: a drawing of it at the left, what is on it at the
// right.
func newEntry(draw func(d drawing), paper sheet.Paper, title, words string) *column.Block {
	const gap, below = 12, 14
	raster := canvas.NewRaster(func(w, h int) image.Image { return drawPage(w, h, paper, draw) })
	head, body := column.Title(title), column.Remark(words)
	return column.NewBlock(func(room float32) float32 {
		flow.Put(raster, 0, 2, pageWidth, pageHeight)
		y := float32(-6)
		for _, t := range []*column.Text{head, body} {
			h := t.HeightAt(room - pageWidth - gap)
			flow.Put(t, pageWidth+gap, y, room-pageWidth-gap, h)
			y += h
		}
		return max(y, pageHeight) + below
	}, nil, raster, head, body)
}

// drawing draws on a page whose width is 100 and whose height is high.
type drawing struct {
	*gg.Context
	high float64
}

func drawPage(w, h int, paper sheet.Paper, draw func(drawing)) image.Image {
	c := gg.NewContext(max(w, 1), max(h, 1))
	if w <= 0 || h <= 0 {
		return c.Image()
	}
	k := float64(w) / 102
	if most := float64(h) / (100*proportion(paper) + 2); most < k {
		k = most
	}
	c.Scale(k, k)
	c.Translate(1, 1)
	d := drawing{c, 100 * proportion(paper)}
	d.DrawRectangle(0, 0, 100, d.high)
	d.SetColor(look.Colour(look.Card))
	d.FillPreserve()
	d.ink(1.6)
	d.Stroke()
	draw(d)
	return c.Image()
}

func (d drawing) ink(width float64) {
	d.SetColor(look.Colour(theme.ColorNameForeground))
	d.SetLineWidth(width)
}

// text draws lines of text from y on, each as long as its part of the width.
func (d drawing) text(y, step, width float64, parts ...float64) {
	d.SetColor(look.Colour(look.SecondInk))
	d.SetLineWidth(width)
	for i, part := range parts {
		d.DrawLine(12, y+float64(i)*step, 12+76*part, y+float64(i)*step)
	}
	d.Stroke()
}

// drawPhotograph is a picture with an arch on it, and figures below.
func drawPhotograph(d drawing) {
	d.text(12, 0, 3, 0.5)
	d.DrawRectangle(12, 20, 76, 58)
	d.SetColor(look.Colour(look.Skin))
	d.Fill()
	d.ink(3)
	d.arch(50, 62, 13, 26)
	d.Stroke()
	d.text(88, 7, 2, 1, 0.8, 0.9)
	d.ink(1.2)
	d.DrawLine(12, d.high-12, 60, d.high-12)
	d.Stroke()
}

// arch is a web's arch with its crown at x, y.
func (d drawing) arch(x, y, half, rise float64) {
	d.MoveTo(x-half, y-rise)
	d.CubicTo(x-half, y-rise/3, x-half/3, y, x, y)
	d.CubicTo(x+half/3, y, x+half, y-rise/3, x+half, y-rise)
}

// drawOutlines is an arch, a zigzag and a flap, with both check bars.
func drawOutlines(d drawing) {
	d.text(12, 0, 3, 0.6)
	d.ink(2)
	d.arch(40, 52, 13, 28)
	d.MoveTo(70, 24)
	for i := range 6 {
		d.LineTo(70+16*float64(1-i%2), 24+float64(i+1)*9)
	}
	d.MoveTo(28, 70)
	d.LineTo(33, 98)
	d.LineTo(47, 98)
	d.LineTo(52, 70)
	d.Stroke()
	d.bar(26, d.high-14, 1, 0)
	d.bar(12, d.high-14, 0, -1)
}

// bar is a check bar from x, y along dx, dy.
func (d drawing) bar(x, y, dx, dy float64) {
	const length, tick = 36, 3.5
	d.ink(1.8)
	d.DrawLine(x, y, x+length*dx, y+length*dy)
	for _, end := range []float64{0, length} {
		d.DrawLine(x+end*dx-tick*dy, y+end*dy-tick*dx, x+end*dx+tick*dy, y+end*dy+tick*dx)
	}
	d.Stroke()
}

// drawFigures is a table and sentences.
func drawFigures(d drawing) {
	d.text(12, 0, 3, 0.6)
	d.ink(2.4)
	for y := 26.0; y < d.high/2; y += 9 {
		d.DrawLine(56, y, 76, y)
	}
	d.Stroke()
	for y := 26.0; y < d.high/2; y += 9 {
		d.text(y, 0, 2, 0.45)
	}
	d.text(d.high/2+12, 7, 2, 1, 0.9, 0.95, 0.4, 0.8, 0.6)
}

// drawFamily is large text in few words.
func drawFamily(d drawing) {
	d.text(16, 0, 6, 0.8)
	for y := 34.0; y < d.high-30; y += 36 {
		d.text(y, 0, 4, 0.5)
		d.text(y+9, 8, 2.4, 1, 0.94, 0.7)
	}
}
