// Package charting holds what the program's charts have in common: inks,
// lettering, and the ways in which a drawing becomes an image or a file.
//
//	page := charting.Page{Width: 820, Height: 540, Draw: func(c draw.Canvas, ink charting.Ink) { ... }}
//	err := page.PDF(file)
//	img := page.Image(image.Pt(1200, 700), 1, charting.Chalk) // for a window
//
// The same drawing gives the same bytes.
package charting

import (
	"bytes"
	"fmt"
	"image"
	"image/png"
	"io"
	"math"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
	"gonum.org/v1/plot/vg/vgimg"
	"gonum.org/v1/plot/vg/vgsvg"
)

// Page is a drawing on paper of a size in points.
type Page struct {
	Width, Height vg.Length
	// Draw draws on a canvas of any size, the ground too: see Ground.
	Draw func(c draw.Canvas, ink Ink)
}

// pngScale is how many pixels of a PNG a point is.
const pngScale = 2

// Image is the drawing as an image of that size in pixels, whatever the page's
// size is; scale is how many pixels of it a point of type is, 1 on a plain
// screen. It fails on no size, and has at least one pixel.
func (p Page) Image(size image.Point, scale float64, ink Ink) image.Image {
	dpi := dotsPerInch(scale)
	size.X, size.Y = max(size.X, 1), max(size.Y, 1)
	canvas := vgimg.NewWith(vgimg.UseImage(image.NewRGBA(image.Rectangle{Max: size})), vgimg.UseDPI(dpi))
	points := func(pixels int) vg.Length { return vg.Length(float64(pixels) * vg.Inch.Points() / float64(dpi)) }
	p.Draw(draw.NewCanvas(canvas, points(size.X), points(size.Y)), ink)
	return canvas.Image()
}

func dotsPerInch(scale float64) int { return max(int(math.Round(vg.Inch.Points()*scale)), 1) }

// PerPoint is how many pixels of an image of that scale a point has: a whole
// number of them to the inch.
func PerPoint(scale float64) float64 { return float64(dotsPerInch(scale)) / vg.Inch.Points() }

// PNG writes the page as a picture on paper.
func (p Page) PNG(to io.Writer) error {
	size := image.Pt(int(p.Width*pngScale), int(p.Height*pngScale))
	if err := png.Encode(to, p.Image(size, pngScale, Paper)); err != nil {
		return fmt.Errorf("the chart could not be written as PNG: %w", err)
	}
	return nil
}

// SVG writes the page as a drawing on paper, to be enlarged and edited.
func (p Page) SVG(to io.Writer) error {
	canvas := vgsvg.New(p.Width, p.Height)
	p.Draw(draw.New(canvas), Paper)
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

// Ground fills the canvas with the paper.
func Ground(c draw.Canvas, ink Ink) {
	c.SetColor(ink.Ground)
	// A little more than all, since the last pixels may lie beyond the last point.
	c.Fill(draw.Crop(c, -1, 1, -1, 1).Rectangle.Path())
}
