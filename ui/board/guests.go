package board

import (
	"ogive/geometry/plane"
	"ogive/imaging/markshapes"
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
	GhostLine:  {Core: palette.Ghost, Width: 1.6, Dash: []float64{5, 6}},
	PlanLine:   {Core: palette.Plan, Width: 3.6},
	FlapLine:   {Core: palette.Flap, Width: 2.2, Dash: []float64{15, 5}},
	ZigzagLine: {Core: palette.Zigzag, Width: 2.2},
	GraftLine:  {Core: palette.Graft, Width: 3.2, Dash: []float64{0.4, 6}},
	TruthLine:  {Core: palette.Truth, Width: 2.2, Dash: []float64{10, 5, 0.4, 5}},
	PatchLine:  {Core: palette.Patch, Width: 1.1},
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
		p.Lines(guestStrokes[l.Style], p.guestPath(l))
	}
}

func (p *pen) guestPath(l Line) []spot {
	if l.Closed {
		return markshapes.Closed(p.path(l.Points))
	}
	return p.path(l.Points)
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
		p.Solid(palette.Paper, handleShape(h.Shape, q, r))
		p.Fill(palette.Ink, handleShape(h.Shape, q, 0.55*r))
		p.Fill(palette.Plan, handleShape(h.Shape, q, 0.3*r))
	}
}

func handleShape(s HandleShape, q spot, r float64) []spot {
	switch s {
	case SquareHandle:
		return markshapes.Quadrate(q, r)
	case DiamondHandle:
		return markshapes.Diamond(q, r)
	case TriangleHandle:
		return markshapes.Triangle(q, r)
	}
	return markshapes.Disc(q, r)
}
