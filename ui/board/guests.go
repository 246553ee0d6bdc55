package board

import (
	"image/color"

	"ogive/geometry/plane"
	"ogive/imaging/palette"
)

// Line is a curve of another room drawn over the photograph: a ghost, a plan.
type Line struct {
	Points []plane.PixelPoint
	Closed bool
	Style  LineStyle
	// Label stands near the line's middle; it may be empty.
	Label string
}

// LineStyle is what a line stands for. Styles are told apart by dashes and width
// as well as by colour.
type LineStyle int

// The styles of lines.
const (
	GhostLine  LineStyle = iota // the other hand: dashed, light
	PlanLine                    // a planned arch: bold
	FlapLine                    // the outline of a flap: long dashes
	ZigzagLine                  // an incision: unbroken
	GraftLine                   // where skin is lacking: dotted
	TruthLine                   // the known answer: dash and dot
	PatchLine                   // a patch of skin: fine
)

// guestStrokes are how the styles are drawn.
var guestStrokes = map[LineStyle]stroke{
	GhostLine:  {core: palette.Ghost, width: 1.6, dash: []float64{5, 6}},
	PlanLine:   {core: palette.Plan, width: 3.6},
	FlapLine:   {core: palette.Flap, width: 2.2, dash: []float64{15, 5}},
	ZigzagLine: {core: palette.Zigzag, width: 2.2},
	GraftLine:  {core: palette.Graft, width: 3.2, dash: []float64{0.4, 6}},
	TruthLine:  {core: palette.Truth, width: 2.2, dash: []float64{10, 5, 0.4, 5}},
	PatchLine:  {core: palette.Patch, width: 1.1},
}

// Handle is a point of another room that can be dragged.
type Handle struct {
	ID    string
	At    plane.PixelPoint
	Shape HandleShape
	// Label stands beside the handle; it may be empty.
	Label string
}

// HandleShape is how a handle looks.
type HandleShape int

// The shapes of handles.
const (
	RoundHandle HandleShape = iota
	SquareHandle
	DiamondHandle
	TriangleHandle
)

const handleSize = 6.5 // half the size of a handle, in units of Fyne's

// guestLines draws the lines of other rooms.
func (p *pen) guestLines(lines []Line) {
	for _, l := range lines {
		p.lines(guestStrokes[l.Style], outlined(p.path(l.Points), l.Closed))
	}
}

// outlined is a path that ends where it began, if it is closed.
func outlined(path []spot, closed bool) []spot {
	if closed && len(path) > 2 {
		return append(path, path[0])
	}
	return path
}

// handles draws the handles: a light plate with an eye, no mark looks like it.
// The one that is held is larger.
func (p *pen) handles(handles []Handle, held string) {
	for _, h := range handles {
		q := p.at(h.At)
		if !p.sees(q, 30) {
			continue
		}
		r := handleSize * p.scale
		if held != "" && h.ID == held {
			r *= 1.25
		}
		p.solid(palette.Paper, handleShape(h.Shape, q, r))
		p.fill(palette.Ink, handleShape(h.Shape, q, 0.55*r))
		p.fill(palette.Plan, handleShape(h.Shape, q, 0.3*r))
	}
}

func handleShape(s HandleShape, q spot, r float64) []spot {
	switch s {
	case SquareHandle:
		return square(q, r)
	case DiamondHandle:
		return diamond(q, r)
	case TriangleHandle:
		return triangle(q, r)
	}
	return disc(q, r)
}

// fill fills a closed outline without a casing.
func (p *pen) fill(c color.Color, outline []spot) {
	p.trace(outline)
	p.gg.ClosePath()
	p.gg.SetColor(c)
	p.gg.Fill()
}

// middle is the place half way along a path.
func middle(path []spot) (spot, bool) {
	whole := 0.0
	for i := 1; i < len(path); i++ {
		whole += path[i].sub(path[i-1]).length()
	}
	gone := 0.0
	for i := 1; i < len(path); i++ {
		step := path[i].sub(path[i-1]).length()
		if step > 0 && gone+step >= whole/2 {
			return path[i-1].to(path[i], (whole/2-gone)/step), true
		}
		gone += step
	}
	return spot{}, false
}
