package board

import (
	"image"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/imaging/display"
	"ogive/imaging/markshapes"
	"ogive/imaging/palette"
	"ogive/ui/marking"
)

// Widths of lines and reaches of marks, in units of Fyne's.
const (
	fine     = 1.2
	bold     = 4.6
	markSize = 5.5 // half the size of a joint's mark
	quiet    = 0.6 // the part of their size that quiet marks have
	// crownReach is how far the darts reach from the crown.
	crownReach = 17
)

// paintMarks draws the scene over the photograph, what matters most last.
func (b *Board) paintMarks(img *image.RGBA) {
	p := newPen(img, b.view, b.scale)
	s := b.scene
	if s.Quiet {
		p.size *= quiet
	}
	p.room = p.rooms(s.Placed)
	at := map[marking.Spot]plane.PixelPoint{}
	for _, m := range s.Placed {
		at[m.Spot] = m.At
	}
	p.axes(at)
	p.reference(at)
	if !s.Blind {
		p.webs(s)
	}
	p.borders(s)
	if !s.Blind {
		p.crowns(s)
	}
	p.junctions(at)
	p.guestLines(s.Lines)
	for _, m := range s.Placed {
		p.mark(m, s.Proposed[m.Spot.Web])
	}
	if s.Selected != nil {
		if q, ok := at[*s.Selected]; ok {
			p.brackets(p.at(q), p.room[*s.Selected])
		}
	}
	p.handles(s.Handles, b.pointer.hold.handle)
	b.labels(p, at)
}

// axes draws the digits' axes from MCP to PIP, with marks at each quarter so
// that the index can be checked by eye.
func (p *pen) axes(at map[marking.Spot]plane.PixelPoint) {
	var paths [][]spot
	for _, axis := range p.axesOf(at) {
		paths = append(paths, markshapes.Axis(axis[0], axis[1], 3.5*p.scale, 6*p.scale)...)
	}
	p.Lines(stroke{Core: palette.Cores[palette.Joint], Width: fine}, paths...)
}

// axesOf are the axes of those digits whose MCP and PIP are marked.
func (p *pen) axesOf(at map[marking.Spot]plane.PixelPoint) [][]spot {
	var axes [][]spot
	for _, f := range hand.Digits {
		mcp, ok := at[marking.Spot{Kind: marking.JointPoint, Digit: f, Joint: hand.MCP}]
		pip, also := at[marking.Spot{Kind: marking.JointPoint, Digit: f, Joint: hand.PIP}]
		if ok && also {
			axes = append(axes, []spot{p.at(mcp), p.at(pip)})
		}
	}
	return axes
}

// reference draws the ruler between its ends, or the card's outline.
func (p *pen) reference(at map[marking.Spot]plane.PixelPoint) {
	var points []spot
	for n := range 4 {
		if q, ok := at[marking.Spot{Kind: marking.ScalePoint, N: n}]; ok {
			points = append(points, p.at(q))
		}
	}
	st := stroke{Core: palette.Cores[palette.Reference], Width: fine, Thin: true}
	switch len(points) {
	case 2:
		p.Lines(st, points)
	case 4:
		st.Dash = []float64{6, 5}
		p.Ring(st, points)
	}
}

// webs draws each web's fitted arch as a bold line; the traced border is a fine
// one on top of it, so that it is seen where they part.
func (p *pen) webs(s Scene) {
	for _, w := range s.Reading.Webs {
		p.Lines(stroke{Core: palette.Cores[palette.Joint], Width: 1.8, Dash: []float64{0.4, 5}, Thin: true}, p.path(level(s, w.Web, w.Crown, w.Index != nil)))
		if w.Shape == 0 {
			continue
		}
		st := stroke{Core: palette.Cores[palette.Arch], Width: bold * p.roomOf(w)}
		if s.Proposed[w.Web] {
			st.Dash = []float64{9, 8}
		}
		p.Lines(st, p.path(w.Curve))
		p.Lines(stroke{Core: palette.Cores[palette.Crown], Width: fine, Dash: []float64{4, 4}}, p.path(w.Springing[:]))
	}
}

// borders draws the traced borders.
func (p *pen) borders(s Scene) {
	for _, web := range hand.Webs {
		st := stroke{Core: palette.Cores[palette.Border], Width: 1, Thin: true}
		if s.Proposed[web] {
			st.Dash = []float64{5, 6}
		}
		p.Lines(st, p.path(s.Reading.Edges[web]))
	}
}

// crowns draws crowns and springings over the borders.
func (p *pen) crowns(s Scene) {
	for _, w := range s.Reading.Webs {
		if w.Shape == 0 {
			continue
		}
		a, b, crown := p.at(w.Springing[0]), p.at(w.Springing[1]), p.at(w.Crown)
		room := p.roomOf(w)
		p.Springings(a, b, 6*room*p.scale, 2*room)
		p.Crown(crown, a.To(b, 0.5).Sub(crown), crownReach*room*p.scale)
	}
}

// level is the line along which the index is read, if it is.
func level(s Scene, web hand.Web, crown plane.PixelPoint, read bool) []plane.PixelPoint {
	if !read {
		return nil
	}
	var ends [2][2]plane.PixelPoint
	found := 0
	radial, ulnar := web.Digits()
	for i, f := range []hand.Digit{radial, ulnar} {
		for _, m := range s.Placed {
			if m.Spot.Kind == marking.JointPoint && m.Spot.Digit == f && m.Spot.Joint <= hand.PIP {
				ends[i][m.Spot.Joint-hand.MCP] = m.At
				found++
			}
		}
	}
	if found != 4 {
		return nil
	}
	return display.Level(crown, ends)
}

// junctions draws the line of the skin junction and the digit's long axis.
func (p *pen) junctions(at map[marking.Spot]plane.PixelPoint) {
	for _, w := range hand.Webs {
		var line, axis []spot
		for n := 0; ; n++ {
			q, ok := at[marking.Spot{Kind: marking.JunctionPoint, Web: w, N: n}]
			if !ok {
				break
			}
			line = append(line, p.at(q))
		}
		for n := range 2 {
			if q, ok := at[marking.Spot{Kind: marking.AxisPoint, Web: w, N: n}]; ok {
				axis = append(axis, p.at(q))
			}
		}
		p.Lines(stroke{Core: palette.Cores[palette.Junction], Width: 2}, line)
		p.Lines(stroke{Core: palette.Cores[palette.Joint], Width: fine, Dash: []float64{8, 5}}, axis)
	}
}
