package compared

import (
	"image"
	"image/color"
	"math"
	"strings"

	"golang.org/x/image/draw"

	"ogive/geometry/norms"
	"ogive/geometry/plane"
	"ogive/imaging/markshapes"
	"ogive/imaging/palette"
	"ogive/imaging/photo"
	"ogive/imaging/wording"
)

// legible is the side in pixels of a square photograph that is large enough for
// lettering to be read.
const legible = 800

// Picture is a copy of the operated hand's photograph with its arches unbroken
// and those of the other hand dashed, and below it the figures, the verdicts and
// what must be known beside them. The photograph itself is not touched.
func Picture(photograph *photo.Photograph, p Pair, t Titles) *image.RGBA {
	size := photograph.Size()
	k := 1
	for k*k*size.X*size.Y < legible*legible && k < legible {
		k++
	}
	field := image.Rect(0, 0, k*size.X, k*size.Y)
	pg := newPage(field, math.Max(13, math.Sqrt(float64(field.Dx())*float64(field.Dy()))/64))
	pg.write(p, t)
	img := image.NewRGBA(image.Rect(0, 0, field.Dx(), field.Dy()+pg.height()))
	draw.Draw(img, img.Bounds(), image.NewUniform(palette.Paper), image.Point{}, draw.Src)
	source := photograph.Picture()
	draw.CatmullRom.Scale(img, field, source, source.Bounds(), draw.Src, nil)
	arches(img.SubImage(field).(*image.RGBA), p, float64(k), pg.em)
	pg.draw(img)
	return img
}

var (
	operatedStroke = markshapes.Stroke{Core: palette.Cores[palette.Arch], Width: 3}
	otherStroke    = markshapes.Stroke{Core: palette.Ghost, Width: 2, Dash: []float64{6, 6}}
)

// arches draws the operated arches and the ghosts over them.
func arches(img *image.RGBA, p Pair, k, em float64) {
	pen := markshapes.NewPen(img, em/14, 1.4)
	path := func(line []plane.PixelPoint) []markshapes.Spot {
		var out []markshapes.Spot
		for _, q := range line {
			out = append(out, markshapes.XY(k*float64(q.X), k*float64(q.Y)))
		}
		return out
	}
	var own, ghosts [][]markshapes.Spot
	for _, w := range p.Comparison.Webs {
		own = append(own, path(readingOf(p.Operated.Reading, w.Web).Curve))
		if w.Ghost != nil {
			ghosts = append(ghosts, path(w.Ghost.CurvePixel))
		}
	}
	pen.Lines(operatedStroke, own...)
	pen.Lines(otherStroke, ghosts...)
}

// page is the sheet below the photograph, written line by line.
type page struct {
	field image.Rectangle
	em    float64
	faces struct{ regular, bold, italic, title markshapes.Face }
	y     float64
	parts []func(*image.RGBA, float64)
}

func newPage(field image.Rectangle, em float64) *page {
	pg := &page{field: field, em: em, y: em}
	pg.faces.regular, pg.faces.bold = markshapes.Regular(em), markshapes.Bold(em)
	pg.faces.italic, pg.faces.title = markshapes.Italic(em), markshapes.Bold(1.25*em)
	return pg
}

func (pg *page) height() int { return int(math.Ceil(pg.y + pg.em)) }

func (pg *page) draw(img *image.RGBA) {
	for _, part := range pg.parts {
		part(img, float64(pg.field.Dy()))
	}
}

func (pg *page) write(p Pair, t Titles) {
	pg.paragraph(pg.faces.title, palette.Ink, p.Title())
	pg.key(t)
	for _, w := range p.Comparison.Webs {
		pg.y += 0.5 * pg.em
		pg.paragraph(pg.faces.bold, palette.Ink, wording.WebName(w.Web)+", "+wording.WebDigits(w.Web))
		for _, f := range p.Figures(w) {
			pg.figure(f)
		}
	}
	pg.y += 0.6 * pg.em
	for i, text := range p.Notes() {
		if i < len(p.Comparison.Reminders) {
			pg.paragraph(pg.faces.bold, palette.Ink, text)
		} else {
			pg.paragraph(pg.faces.regular, palette.Faded, text)
		}
	}
	pg.y += 0.4 * pg.em
	pg.paragraph(pg.faces.italic, palette.Ink, wording.Caution)
}

// key shows how the two arches are drawn.
func (pg *page) key(t Titles) {
	for _, row := range []struct {
		stroke markshapes.Stroke
		name   string
	}{{operatedStroke, t.Operated}, {otherStroke, t.Other}} {
		y := pg.y + 0.62*pg.em
		pg.parts = append(pg.parts, func(img *image.RGBA, below float64) {
			pen := markshapes.NewPen(img, pg.em/14, 1.4)
			pen.Lines(row.stroke, []markshapes.Spot{markshapes.XY(pg.em, below+y), markshapes.XY(4*pg.em, below+y)})
		})
		pg.cell(pg.faces.regular, palette.Ink, 4.6, row.name)
		pg.y += 1.32 * pg.em
	}
}

// figure is one row: the name, both values, the difference, the verdict.
func (pg *page) figure(f Figure) {
	beside := orNotKnown(f.Operated) + " beside " + orNotKnown(f.Other)
	if f.Operated == "" && f.Other == "" {
		beside = ""
	}
	pg.cell(pg.faces.regular, palette.Faded, 1, wording.Term(f.Name))
	pg.cell(pg.faces.regular, palette.Ink, 10, beside)
	pg.cell(pg.faces.bold, palette.Ink, 28, orNotKnown(f.Difference))
	if f.Verdict == nil {
		pg.y += 1.32 * pg.em
		return
	}
	face := pg.faces.regular
	switch {
	case f.Verdict.Certain:
		face = pg.faces.bold
	case f.Verdict.Finding != norms.NoDifference:
		face = pg.faces.italic // as every doubt is written
	}
	pg.wrapped(face, palette.Ink, 36, VerdictWords(*f.Verdict)+"; "+LimitWords(*f.Verdict))
}

// cell writes at a distance from the left in ems, on the line at hand.
func (pg *page) cell(f markshapes.Face, c color.Color, ems float64, text string) {
	y := pg.y + 0.98*f.Size
	pg.parts = append(pg.parts, func(img *image.RGBA, below float64) {
		markshapes.Write(img, f, c, markshapes.XY(ems*pg.em, below+y), text)
	})
}

func (pg *page) paragraph(f markshapes.Face, c color.Color, text string) { pg.wrapped(f, c, 1, text) }

// wrapped writes a text from a distance in ems to the right edge, in as many
// lines as it needs.
func (pg *page) wrapped(f markshapes.Face, c color.Color, ems float64, text string) {
	for _, line := range broken(f, text, float64(pg.field.Dx())-(ems+1)*pg.em) {
		pg.cell(f, c, ems, line)
		pg.y += 1.32 * f.Size
	}
}

// broken is a text in lines no wider than width, but for single words.
func broken(f markshapes.Face, text string, width float64) []string {
	var lines []string
	line := ""
	for _, word := range strings.Fields(text) {
		joined := strings.TrimSpace(line + " " + word)
		if line != "" && f.WidthOf(joined) > width {
			lines, joined = append(lines, line), word
		}
		line = joined
	}
	return append(lines, line)
}
