package sheet

import (
	"fmt"

	"ogive/geometry/flap"
	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/geometry/skinbudget"
	"ogive/imaging/planning"
	"ogive/imaging/wording"
)

// pieces adds an alternative: all of it in its place, and each line once more on
// its own, turned with its distal end up.
func (g *gatherer) pieces(title string, w planning.Web, a planning.Alternative) {
	together := Piece{Name: title + ": all in place", Together: true,
		Note: "As on the photograph. Crosses: " + hand.MCP.Label(g.plan.View) + " and " + hand.PIP.Label(g.plan.View) + " of both digits."}
	if w.Join != nil {
		together.Outlines = append(together.Outlines, Outline{Kind: JoinLine, Points: []plane.Position{w.Join.Line.From, w.Join.Line.To}})
	}
	var apart []Piece
	if a.Arch != nil {
		o := Outline{Kind: ArchLine, Points: a.Arch.Curve}
		together.Outlines = append(together.Outlines, o)
		apart = append(apart, Piece{Name: title + ": arch", Outlines: []Outline{turned(o, a.Arch.Arch.Axis, false)}})
	}
	if a.Flap != nil && len(a.Flap.Flap.Outline) > 2 {
		outlines := flapOutlines(a.Flap.Flap)
		together.Outlines = append(together.Outlines, outlines...)
		apart = append(apart, g.flapPiece(title, a.Flap))
	}
	for _, face := range []struct {
		cut  *planning.Cut
		kind Kind
		view hand.View
	}{{a.Dorsal, DorsalZigzag, hand.Dorsal}, {a.Palmar, PalmarZigzag, hand.Palmar}} {
		if face.cut == nil {
			continue
		}
		o := Outline{Kind: face.kind, Points: face.cut.Zigzag.Points}
		together.Outlines = append(together.Outlines, o)
		line := face.cut.Zigzag.Join
		apart = append(apart, Piece{Name: title + ": " + face.kind.String(), Note: g.faceNote(face.view),
			Outlines: []Outline{turned(o, line.To.Sub(line.From), g.through(face.view))}})
	}
	together.Landmarks = g.landmarks(w.Web)
	if len(together.Outlines) > 0 {
		g.content.Pieces = append(g.content.Pieces, together.turned(g.upright(together)))
	}
	g.content.Pieces = append(g.content.Pieces, apart...)
}

// flapOutlines is the cut of a flap and its base, which is not cut.
func flapOutlines(f flap.Flap) []Outline {
	last := len(f.Outline) - 1
	return []Outline{
		{Kind: FlapOutline, Points: f.Outline},
		{Kind: BaseLine, Points: []plane.Position{f.Outline[last], f.Outline[0]}},
	}
}

func (g *gatherer) flapPiece(title string, f *planning.Flap) Piece {
	face := hand.Dorsal
	if f.Flap.Kind == flap.PalmarFlap {
		face = hand.Palmar
	}
	p := Piece{
		Name: fmt.Sprintf("%s: %v flap", title, f.Flap.Kind),
		Note: fmt.Sprintf("Length %s, base %s, area %s. %s", wording.Millimetres(f.Figures.Length), wording.Millimetres(f.Figures.Base),
			wording.SquareMillimetres(f.Figures.Area), g.faceNote(face)),
	}
	for _, o := range flapOutlines(f.Flap) {
		p.Outlines = append(p.Outlines, turned(o, f.Flap.Axis(), g.through(face)))
	}
	return p
}

// through reports whether lines on that face are drawn as seen through the hand,
// which happens on a photograph of the other face.
func (g *gatherer) through(face hand.View) bool { return face != g.plan.View }

func (g *gatherer) faceNote(face hand.View) string {
	note := "As it lies when you look at the " + wording.View(face) + "."
	if g.through(face) {
		note += " Turned over against the photograph."
	}
	return note
}

// upright is the way on the plane that points up on the photograph where the
// piece lies: the plane may be turned against the photograph, as its ruler is.
func (g *gatherer) upright(p Piece) plane.Vector[plane.Millimetre] {
	m := g.here.Ground.Fit.Best
	from := m.Back().Pixel(p.Outlines[0].Points[0])
	return m.Position(from.Add(plane.Vec[plane.Pixel](0, -1))).Sub(m.Position(from))
}

// turned is the piece with the way up pointing up.
func (p Piece) turned(up plane.Vector[plane.Millimetre]) Piece {
	outlines, landmarks := p.Outlines, p.Landmarks
	p.Outlines, p.Landmarks = nil, nil
	for _, o := range outlines {
		p.Outlines = append(p.Outlines, turned(o, up, false))
	}
	for _, l := range landmarks {
		l.At = turned(Outline{Points: []plane.Position{l.At}}, up, false).Points[0]
		p.Landmarks = append(p.Landmarks, l)
	}
	return p
}

// turned is the outline with the axis up; through turns it over as well.
func turned(o Outline, axis plane.Vector[plane.Millimetre], through bool) Outline {
	up := axis.Direction()
	if up == (plane.Vector[plane.Millimetre]{}) {
		up = plane.Vec[plane.Millimetre](0, -1)
	}
	right := plane.Vec(-up.Y, up.X)
	if through {
		right = right.Scale(-1)
	}
	out := Outline{Kind: o.Kind, Closed: o.Closed}
	for _, q := range o.Points {
		v := q.Sub(plane.Position{})
		out.Points = append(out.Points, plane.Pt(v.Dot(right), -v.Dot(up)))
	}
	return out
}

// landmarks are the joints of both digits, as far as they are marked.
func (g *gatherer) landmarks(w hand.Web) []Landmark {
	var out []Landmark
	radial, ulnar := w.Digits()
	for _, d := range []hand.Digit{radial, ulnar} {
		for _, j := range []hand.Joint{hand.MCP, hand.PIP} {
			if at, ok := g.here.Ground.Marks.Joints[d][j]; ok {
				out = append(out, Landmark{Name: d.String() + " " + wording.Joint(j, g.plan.View), At: g.here.Ground.Fit.Best.Position(at)})
			}
		}
	}
	return out
}

// graftPieces are the templates of the graft.
func (g *gatherer) graftPieces(w planning.Web) {
	radial, ulnar := w.Web.Digits()
	for _, p := range w.Skin.Patches {
		d := ulnar
		if p.Radial {
			d = radial
		}
		g.content.Pieces = append(g.content.Pieces, Piece{
			Name:     fmt.Sprintf("%s: graft, %v finger", wording.WebName(w.Web), d),
			Note:     fmt.Sprintf("%.1f mm along the finger × %.1f mm around it. A template to begin cutting from.", float64(p.Length), float64(p.Width)),
			Outlines: []Outline{{Kind: GraftOutline, Points: p.Outline, Closed: true}},
		})
	}
	if len(w.Skin.Patches) > 0 {
		g.note(skinbudget.TemplateNote)
	}
}
