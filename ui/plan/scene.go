package plan

import (
	"fyne.io/fyne/v2/lang"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/geometry/reading"
	"ogive/imaging/planning"
	"ogive/imaging/wording"
	"ogive/ui/board"
	"ogive/ui/marking"
)

// draw shows the plan on the photograph.
func (r *Room) draw() {
	s := board.Scene{View: r.file.View, Placed: r.joints(), Quiet: true, Reading: r.free(), Lines: r.lines()}
	if p := r.column.panel(); p != nil {
		p.draw(&s)
	}
	for _, g := range r.grips() {
		h := g.Handle
		if h.ID == r.selected {
			h.Label = g.name
			s.Lines = append(s.Lines, board.Line{Points: r.plate.around(h.At), Closed: true, Style: board.PatchLine})
		}
		s.Handles = append(s.Handles, h)
	}
	r.plate.Draw(s)
}

// joints are the joints beside the web in hand, to judge the index by eye.
func (r *Room) joints() []marking.Placed {
	if r.web == 0 {
		return nil
	}
	var out []marking.Placed
	radial, ulnar := r.web.Digits()
	for _, d := range []hand.Digit{radial, ulnar} {
		for _, j := range []hand.Joint{hand.MCP, hand.PIP} {
			if at, ok := r.model.Here.Ground.Marks.Joint(d, j); ok {
				out = append(out, marking.Placed{Spot: marking.Spot{Kind: marking.JointPoint, Digit: d, Joint: j}, At: at})
			}
		}
	}
	return out
}

// free is the reading of the webs that are not planned. The border of a planned
// web is what is to be replaced.
func (r *Room) free() marking.Reading {
	out := marking.Reading{Reading: r.model.Here.Reading, Scaled: true}
	var webs []reading.Web
	for _, w := range out.Webs {
		if r.file.Web(w.Web) == nil {
			webs = append(webs, w)
		}
	}
	out.Webs = webs
	return out
}

// lines are the outlines of the plan: the web in hand as far as the tab shows it,
// of the other webs the arch that was chosen.
func (r *Room) lines() []board.Line {
	var out []board.Line
	for _, w := range r.plan.Webs {
		switch {
		case w.Web == r.web:
		case w.Chosen >= 0 && w.Alternatives[w.Chosen].Arch != nil:
			out = append(out, board.Line{Points: w.Alternatives[w.Chosen].Arch.Pixels, Style: board.PlanLine, Label: wording.Web(w.Web)})
		}
	}
	if p := r.proposals[r.web]; r.column.tab == archTab && p.Origin == otherHand && len(p.curve) > 0 {
		out = append(out, board.Line{Points: p.curve, Style: board.GhostLine, Label: r.ghostName(p.curve)})
	}
	if a := r.now(); a != nil {
		out = append(out, r.linesOf(*a)...)
	}
	return out
}

// ghostName names the other hand's arch where it does not lie under the planned
// one.
func (r *Room) ghostName(curve []plane.PixelPoint) string {
	const apart = 30
	a := r.now()
	if a == nil || a.Arch == nil || r.plate.apart(curve[len(curve)/2], a.Arch.Pixels[len(a.Arch.Pixels)/2]) > apart {
		return lang.L("other hand, mirrored")
	}
	return ""
}

func (r *Room) linesOf(a planning.Alternative) []board.Line {
	var out []board.Line
	if a.Flap != nil && r.column.tab != archTab {
		out = append(out, board.Line{Points: a.Flap.Pixels, Closed: true, Style: board.FlapLine})
	}
	if r.column.tab == zigzagTab {
		out = append(out, r.zigzagLines(a)...)
	}
	if a.Arch != nil {
		out = append(out, board.Line{Points: a.Arch.Pixels, Style: board.PlanLine})
	}
	return out
}

// zigzagLines are the join, the incision on the face that is worked on, limb by
// limb, and a fine line for the other face.
func (r *Room) zigzagLines(a planning.Alternative) []board.Line {
	var out []board.Line
	if w := r.kept(); w != nil && w.Join != nil {
		out = append(out, board.Line{Points: w.Join[:], Style: board.GhostLine})
	}
	near := r.near()
	if far := cutOf(a, near.other()); far != nil && r.face == bothFaces {
		out = append(out, board.Line{Points: far.Pixels, Style: board.PatchLine, Label: throughHand(near.other())})
	}
	cut := cutOf(a, near)
	if cut == nil {
		return out
	}
	out = append(out, board.Line{Points: cut.Pixels, Style: board.ZigzagLine})
	for i, l := range cut.Figures.Limbs {
		if r.besideSelected(*cut, i) {
			out = append(out, board.Line{Points: cut.Pixels[i : i+2], Style: board.ZigzagLine, Label: lang.L("limb {{.Angle}}", map[string]any{"Angle": wording.Degrees(l.Obliquity)})})
		}
	}
	return out
}

// besideSelected reports whether the limb at i ends in the selected point, and has
// room for a label of its own.
func (r *Room) besideSelected(cut planning.Cut, i int) bool {
	for k := i; k <= i+1; k++ {
		if r.selected == zigzagID(k) {
			return r.roomy(cut, k)
		}
	}
	return false
}

func throughHand(f face) string {
	if f == palmarFace {
		return lang.L("palm, seen through the hand")
	}
	return lang.L("back, seen through the hand")
}

// around is a square around a place, as large on the screen at any zoom.
func (p *plate) around(at plane.PixelPoint) []plane.PixelPoint {
	d := p.pixels(14)
	return []plane.PixelPoint{at.Add(plane.Vec(-d, -d)), at.Add(plane.Vec(d, -d)), at.Add(plane.Vec(d, d)), at.Add(plane.Vec(-d, d))}
}
