package board

import (
	"image"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/imaging/display"
	"ogive/imaging/palette"
	"ogive/ui/marking"
)

// Widths of lines and reaches of marks, in units of Fyne's.
const (
	fine     = 1.2
	bold     = 4.6
	markSize = 5.5 // half the size of a joint's mark
	quiet    = 0.6 // the part of their size that quiet marks have
)

// paintMarks draws the scene over the photograph, what matters most last.
func (b *Board) paintMarks(img *image.RGBA) {
	p := newPen(img, b.view, b.scale)
	s := b.scene
	if s.Quiet {
		p.size *= quiet
	}
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
			p.brackets(p.at(q))
		}
	}
	p.handles(s.Handles, b.pointer.hold.handle)
	b.labels(p, at)
}

// axes draws the digits' axes from MCP to PIP, with marks at each quarter so
// that the index can be checked by eye.
func (p *pen) axes(at map[marking.Spot]plane.PixelPoint) {
	var paths [][]spot
	for _, f := range hand.Digits {
		mcp, ok := at[marking.Spot{Kind: marking.JointPoint, Digit: f, Joint: hand.MCP}]
		pip, also := at[marking.Spot{Kind: marking.JointPoint, Digit: f, Joint: hand.PIP}]
		if !ok || !also {
			continue
		}
		a, b := p.at(mcp), p.at(pip)
		paths = append(paths, []spot{a, b})
		across := b.sub(a).unit().square().times(p.scale)
		for quarter := 1; quarter <= 3; quarter++ {
			half := 3.5
			if quarter == 2 {
				half = 6.0
			}
			q := a.to(b, float64(quarter)/4)
			paths = append(paths, []spot{q.add(across.times(-half)), q.add(across.times(half))})
		}
	}
	p.lines(stroke{core: palette.Cores[palette.Joint], width: fine}, paths...)
}

// reference draws the ruler between its ends, or the card's outline.
func (p *pen) reference(at map[marking.Spot]plane.PixelPoint) {
	var points []spot
	for n := range 4 {
		if q, ok := at[marking.Spot{Kind: marking.ScalePoint, N: n}]; ok {
			points = append(points, p.at(q))
		}
	}
	st := stroke{core: palette.Cores[palette.Reference], width: fine}
	switch len(points) {
	case 2:
		p.lines(st, points)
	case 4:
		st.dash = []float64{6, 5}
		p.hollow(st, points)
	}
}

// webs draws each web's fitted arch as a bold line; the traced border is a fine
// one on top of it, so that it is seen where they part.
func (p *pen) webs(s Scene) {
	for _, w := range s.Reading.Webs {
		p.lines(stroke{core: palette.Cores[palette.Joint], width: 1.8, dash: []float64{0.4, 5}, thin: true}, p.path(level(s, w.Web, w.Crown, w.Index != nil)))
		if w.Shape == 0 {
			continue
		}
		st := stroke{core: palette.Cores[palette.Arch], width: bold}
		if s.Proposed[w.Web] {
			st.dash = []float64{9, 8}
		}
		p.lines(st, p.path(w.Curve))
		p.lines(stroke{core: palette.Cores[palette.Crown], width: fine, dash: []float64{4, 4}}, p.path(w.Springing[:]))
	}
}

// borders draws the traced borders.
func (p *pen) borders(s Scene) {
	for _, web := range hand.Webs {
		st := stroke{core: palette.Cores[palette.Border], width: 1, thin: true}
		if s.Proposed[web] {
			st.dash = []float64{5, 6}
		}
		p.lines(st, p.path(s.Reading.Edges[web]))
	}
}

// crowns draws crowns and springings over the borders.
func (p *pen) crowns(s Scene) {
	for _, w := range s.Reading.Webs {
		if w.Shape == 0 {
			continue
		}
		p.springings(p.at(w.Springing[0]), p.at(w.Springing[1]))
		distal := p.at(w.Springing[0]).to(p.at(w.Springing[1]), 0.5).sub(p.at(w.Crown)).unit()
		p.crown(p.at(w.Crown), distal)
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

// springings draws a short bar across the border at each springing.
func (p *pen) springings(a, b spot) {
	v := b.sub(a).unit().times(6 * p.scale)
	st := stroke{core: palette.Cores[palette.Crown], width: 2}
	p.lines(st, []spot{a.sub(v), a.add(v)}, []spot{b.sub(v), b.add(v)})
}

// crown draws two darts along the web's axis that point at the crown from either
// side and leave the arch itself, and the crown, open to the eye.
func (p *pen) crown(q, distal spot) {
	if distal == (spot{}) {
		distal = spot{0, -1}
	}
	const near, far = 7, 17
	across := distal.square().times(4 * p.scale)
	for _, way := range []spot{distal.times(p.scale), distal.times(-p.scale)} {
		base := q.add(way.times(far))
		p.solid(palette.Cores[palette.Crown], []spot{q.add(way.times(near)), base.add(across), base.sub(across)})
	}
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
		p.lines(stroke{core: palette.Cores[palette.Junction], width: 2}, line)
		p.lines(stroke{core: palette.Cores[palette.Joint], width: fine, dash: []float64{8, 5}}, axis)
	}
}
