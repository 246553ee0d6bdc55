package round

import (
	"fyne.io/fyne/v2/lang"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/imaging/rounds"
	"ogive/ui/board"
	"ogive/ui/marking"
)

// truthScene draws the truth over the answer.
func (r *Room) truthScene() board.Scene {
	t := r.taking
	d := t.feedback.Drawing
	s := board.Scene{View: t.picture.Truth.View, Blind: true, Quiet: true}
	if t.work != nil {
		s.Placed = t.work.State().Placed()
	}
	for _, w := range d.Answered {
		s.Lines = append(s.Lines, yours(w)...)
	}
	for _, w := range d.Webs {
		s.Lines = append(s.Lines, truly(w)...)
		if w.HasCrown {
			s.Handles = append(s.Handles, board.Handle{At: w.Crown, Shape: board.DiamondHandle, Label: crownLabel(t)})
		}
	}
	if len(d.Band) > 0 {
		s.Lines = append(s.Lines, board.Line{Points: d.Band, Closed: true, Style: board.GhostLine, Label: lang.L("a normal crown lies in here")})
	}
	s.Handles = append(s.Handles, t.trueJoints()...)
	if t.crown != nil {
		s.Handles = append(s.Handles, board.Handle{At: *t.crown, Label: lang.L("your crown")})
	}
	return s
}

// trueJoints are those that were to be marked; by eye those from which the
// depth of the web is told, with their names.
func (t *taking) trueJoints() []board.Handle {
	var handles []board.Handle
	truth := t.picture.Truth
	if t.work != nil {
		for _, spot := range t.work.State().Order() {
			if at, ok := truth.Joints[spot.Digit][spot.Joint]; ok && spot.Kind == marking.JointPoint {
				handles = append(handles, board.Handle{At: at, Shape: board.DiamondHandle})
			}
		}
		return handles
	}
	if truth.View == hand.WebView {
		return nil
	}
	for _, d := range digitsOf(t.picture.Web) {
		for _, j := range []hand.Joint{hand.MCP, hand.PIP} {
			if at, ok := truth.Joints[d][j]; ok {
				handles = append(handles, board.Handle{At: at, Shape: board.DiamondHandle, Label: j.Label(truth.View)})
			}
		}
	}
	return handles
}

// crownLabel names the true crown by eye; blind there is one for each web, and the
// legend names them.
func crownLabel(t *taking) string {
	if t.work != nil {
		return ""
	}
	return lang.L("the crown of this web")
}

// truly is a web as it is.
func truly(w rounds.WebDrawing) []board.Line {
	var lines []board.Line
	for _, points := range [][]plane.PixelPoint{w.Arch, w.Junction} {
		if len(points) > 1 {
			lines = append(lines, board.Line{Points: points, Style: board.TruthLine})
		}
	}
	if len(w.Axis) > 1 {
		lines = append(lines, board.Line{Points: w.Axis, Style: board.GhostLine, Label: lang.L("long axis of the finger")})
	}
	return lines
}

// yours is a web as the blind marks give it.
func yours(w rounds.WebDrawing) []board.Line {
	var lines []board.Line
	for _, points := range [][]plane.PixelPoint{w.Arch, w.Junction, w.Axis} {
		if len(points) > 1 {
			lines = append(lines, board.Line{Points: points, Style: board.ZigzagLine})
		}
	}
	return lines
}
