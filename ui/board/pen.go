package board

import (
	"image"
	"image/color"
	"math"

	"github.com/fogleman/gg"

	"ogive/geometry/plane"
	"ogive/imaging/display"
	"ogive/imaging/palette"
)

// pen draws on a frame. Sizes are in units of Fyne's, so that marks are as large
// on every screen, at every zoom.
type pen struct {
	gg    *gg.Context
	img   *image.RGBA
	view  display.View
	scale float64
	size  float64 // of marks: scale, or less
}

func newPen(img *image.RGBA, v display.View, scale float64) *pen {
	p := &pen{gg: gg.NewContextForRGBA(img), img: img, view: v, scale: scale, size: scale}
	p.gg.SetLineCapRound()
	p.gg.SetLineJoinRound()
	return p
}

// spot is a place in the frame, in screen pixels.
type spot struct{ x, y float64 }

func (a spot) add(v spot) spot           { return spot{a.x + v.x, a.y + v.y} }
func (a spot) sub(b spot) spot           { return spot{a.x - b.x, a.y - b.y} }
func (a spot) times(f float64) spot      { return spot{a.x * f, a.y * f} }
func (a spot) length() float64           { return math.Hypot(a.x, a.y) }
func (a spot) to(b spot, t float64) spot { return a.add(b.sub(a).times(t)) }
func (a spot) square() spot              { return spot{-a.y, a.x} }

// unit is a one long; zero stays zero.
func (a spot) unit() spot {
	if n := a.length(); n > 0 {
		return a.times(1 / n)
	}
	return a
}

func (p *pen) at(q plane.PixelPoint) spot {
	s := p.view.Screen(q)
	return spot{s.X, s.Y}
}

func (p *pen) path(line []plane.PixelPoint) []spot {
	out := make([]spot, len(line))
	for i, q := range line {
		out[i] = p.at(q)
	}
	return out
}

// sees reports whether something of the given size at q can be seen.
func (p *pen) sees(q spot, size float64) bool {
	m := size * p.scale
	b := p.img.Rect
	return q.x > -m && q.y > -m && q.x < float64(b.Dx())+m && q.y < float64(b.Dy())+m
}

// stroke is how a line is drawn: the colour and width of its core, dashes.
type stroke struct {
	core  color.RGBA
	width float64
	dash  []float64
	// thin halves the casing, for a line that lies on another.
	thin bool
}

// casing is how far the dark casing shows on either side of a core.
const casing float64 = 1.2

// lines draws each of the paths with a light core in a dark casing, all casings
// below all cores, so that crossings stay clean.
func (p *pen) lines(st stroke, paths ...[]spot) {
	var seen [][]spot
	for _, path := range paths {
		seen = append(seen, p.clipped(path)...)
	}
	if len(seen) == 0 {
		return
	}
	dash := make([]float64, len(st.dash))
	for i, d := range st.dash {
		dash[i] = d * p.scale
	}
	p.gg.SetDash(dash...)
	cased := casing
	if st.thin {
		cased /= 2
	}
	p.strokes(palette.Ink, st.width+2*cased, seen)
	p.strokes(st.core, st.width, seen)
	p.gg.SetDash()
}

func (p *pen) strokes(c color.RGBA, width float64, paths [][]spot) {
	p.gg.SetColor(c)
	p.gg.SetLineWidth(width * p.scale)
	for _, path := range paths {
		p.trace(path)
	}
	p.gg.Stroke()
}

func (p *pen) trace(path []spot) {
	p.gg.NewSubPath()
	for i, q := range path {
		if i == 0 {
			p.gg.MoveTo(q.x, q.y)
			continue
		}
		p.gg.LineTo(q.x, q.y)
	}
}

// solid fills a closed outline with a light core in a dark casing.
func (p *pen) solid(c color.RGBA, outline []spot) {
	p.trace(outline)
	p.gg.ClosePath()
	p.gg.SetColor(palette.Ink)
	p.gg.SetLineWidth(2 * casing * p.scale)
	p.gg.StrokePreserve()
	p.gg.SetColor(c)
	p.gg.Fill()
}

// hollow draws a closed outline that leaves the photograph to be seen inside.
func (p *pen) hollow(st stroke, outline []spot) {
	p.lines(st, append(outline[:len(outline):len(outline)], outline[0]))
}

// disc is the outline of a circle.
func disc(c spot, r float64) []spot {
	const n = 28
	out := make([]spot, n)
	for i := range out {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / n)
		out[i] = c.add(spot{r * cos, r * sin})
	}
	return out
}
