package marking

import (
	"slices"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/geometry/scale"
	"ogive/imaging/marksfile"
)

// fileOf is the state as a marks file: complete items in their place, the rest
// by name.
func fileOf(photograph string, state State) marksfile.File {
	f := marksfile.File{Photograph: photograph, Marks: state.Marks(), Reference: state.Reference()}
	f.Marks.Webs = slices.DeleteFunc(f.Marks.Webs, func(w hand.WebMarks) bool { return crowded(w.Seeds) })
	if f.Reference != nil && crowded(f.Reference.Points()) {
		f.Reference = nil
	}
	kept := map[Spot]bool{}
	u := marksfile.Unfinished{ScaleOn: string(state.Method), Length: state.Length, Card: [2]plane.Millimetre{state.Card.Width, state.Card.Height}}
	if f.Reference != nil {
		for n := range state.scalePoints() {
			kept[Spot{Kind: ScalePoint, N: n}] = true
		}
	}
	for _, w := range f.Marks.Webs {
		for n := range w.Seeds {
			kept[Spot{Kind: SeedPoint, Web: w.Web, N: n}] = true
		}
		if state.Proposed[w.Web] {
			u.Proposed = append(u.Proposed, w.Web)
		}
	}
	for _, j := range f.Marks.Junctions {
		for n := range j.Axis {
			kept[Spot{Kind: AxisPoint, Web: j.Web, N: n}] = true
		}
		for n := range j.Line {
			kept[Spot{Kind: JunctionPoint, Web: j.Web, N: n}] = true
		}
	}
	for _, spot := range everySpot() {
		if at, placed := state.Points[spot]; placed && !kept[spot] && spot.Kind != JointPoint {
			u.Points = append(u.Points, marksfile.NamedPoint{Name: spot.Key(), At: at})
		}
		if state.Skipped[spot] {
			u.Skipped = append(u.Skipped, spot.Key())
		}
	}
	f.Unfinished = &u
	return f
}

// crowded reports whether two of the points lie at one place, which a marks file
// does not take for a finished item.
func crowded(ps []plane.PixelPoint) bool {
	for i, p := range ps {
		for _, q := range ps[:i] {
			if p.Distance(q) < 1 {
				return true
			}
		}
	}
	return false
}

// stateOf is the inverse of fileOf.
func stateOf(f marksfile.File) State {
	s := newState()
	s.Side, s.View, s.ClickSD = f.Marks.Side, f.Marks.View, f.Marks.ClickSD
	switch r := f.Reference.(type) {
	case scale.Ruler:
		s.Method, s.Length = scale.ByRuler, r.Length
	case scale.Ticks:
		// The window marks the ends of a row of ticks and finds the rest again.
		s.Method, s.Length = scale.ByRuler, r.Step*plane.Millimetre(len(r.At)-1)
		f.Reference = scale.Ruler{From: r.At[0], To: r.At[len(r.At)-1], Length: s.Length}
	case scale.Card:
		s.Method, s.Card = scale.ByCard, CardSize{r.Width, r.Height}
	}
	if f.Reference != nil {
		for n, p := range f.Reference.Points() {
			s.Points[Spot{Kind: ScalePoint, N: n}] = p
		}
	}
	for _, d := range hand.Digits {
		for _, j := range hand.Joints {
			if p, ok := f.Marks.Joint(d, j); ok {
				s.Points[Spot{Kind: JointPoint, Digit: d, Joint: j}] = p
			} else if f.Absent[d][j] {
				s.Skipped[Spot{Kind: JointPoint, Digit: d, Joint: j}] = true
			}
		}
	}
	for _, w := range f.Marks.Webs {
		for n, p := range w.Seeds {
			s.Points[Spot{Kind: SeedPoint, Web: w.Web, N: n}] = p
		}
		if len(w.Edge) > 0 {
			s.Edges[w.Web] = w.Edge
		}
	}
	for _, j := range f.Marks.Junctions {
		for n, p := range j.Line {
			s.Points[Spot{Kind: JunctionPoint, Web: j.Web, N: n}] = p
		}
		for n, p := range j.Axis {
			s.Points[Spot{Kind: AxisPoint, Web: j.Web, N: n}] = p
		}
	}
	if f.Unfinished != nil {
		s.resume(*f.Unfinished)
	}
	return s
}

// resume takes up unfinished work.
func (s *State) resume(u marksfile.Unfinished) {
	spots := map[string]Spot{}
	for _, spot := range everySpot() {
		spots[spot.Key()] = spot
	}
	for _, p := range u.Points {
		if spot, ok := spots[p.Name]; ok {
			s.Points[spot] = p.At
		}
	}
	for _, name := range u.Skipped {
		if spot, ok := spots[name]; ok {
			s.Skipped[spot] = true
		}
	}
	for _, w := range u.Proposed {
		s.Proposed[w] = true
	}
	if u.ScaleOn == string(scale.ByCard) {
		s.Method = scale.ByCard
	}
	if u.Length > 0 {
		s.Length = u.Length
	}
	if u.Card[0] > 0 && u.Card[1] > 0 {
		s.Card = CardSize{u.Card[0], u.Card[1]}
	}
}
