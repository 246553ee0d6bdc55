package planning

import (
	"fmt"

	"ogive/geometry/arch"
	"ogive/geometry/hand"
	"ogive/geometry/plane"
)

// BeginJoin is a join to begin with, from the planned crown. It ends where the
// fingers part, at the crown of the present web, where that was read. Else its
// distal end is not known: it is set in the middle between the most distal joint
// that is marked on both digits, on the planned axis if there is none, to be
// dragged; so it is where the present web lies no further distal than the planned
// crown, where nothing is joined (Separates). JoinNote says which it is.
func (h Hand) BeginJoin(w hand.Web, a arch.Arch) *[2]plane.PixelPoint {
	from, to := a.Crown, h.joinEnd(w, a)
	if present, ok := h.presentCrown(w); ok && h.Separates(w, a) {
		to = present
	}
	ps := h.pixels([]plane.Position{from, to})
	return &[2]plane.PixelPoint{ps[0], ps[1]}
}

// JoinNote says in a sentence what is to be known of the join that BeginJoin
// gives; it is empty where the present web tells the join's end.
func (h Hand) JoinNote(w hand.Web, a arch.Arch) string {
	_, ok := h.presentCrown(w)
	switch {
	case !ok:
		return fmt.Sprintf("The distal end of the join at the %v is not known, as its present border is not marked; drag it to where the fingers part.", w)
	case !h.Separates(w, a):
		return fmt.Sprintf("The %v does not reach distal of the planned crown: there is nothing to separate, so no join and no zigzag is drawn.", w)
	}
	return ""
}

// Separates reports whether there is anything to separate at w, as far as is
// known: the present web, where it was read, lies distal of the planned crown.
func (h Hand) Separates(w hand.Web, a arch.Arch) bool {
	present, ok := h.presentCrown(w)
	return !ok || present.Sub(a.Crown).Dot(a.Axis) >= leastJoin
}

// presentCrown is the crown of the web as it is now, where its border was traced
// or found from the user's own marks.
func (h Hand) presentCrown(w hand.Web) (plane.Position, bool) {
	for _, r := range h.accepted() {
		if r.Web == w {
			return h.Ground.Fit.Best.Position(r.Crown), true
		}
	}
	return plane.Position{}, false
}

// joinEnd is the end of a join that the present web does not tell.
func (h Hand) joinEnd(w hand.Web, a arch.Arch) plane.Position {
	to := a.Crown.Add(a.Axis.Scale(usualJoin))
	radial, ulnar := w.Digits()
	for _, j := range []hand.Joint{hand.PIP, hand.DIP, hand.Tip} {
		r, okR := h.Ground.Marks.Joint(radial, j)
		u, okU := h.Ground.Marks.Joint(ulnar, j)
		if okR && okU {
			to = h.Ground.Fit.Best.Position(r).Mid(h.Ground.Fit.Best.Position(u))
		}
	}
	if to.Sub(a.Crown).Dot(a.Axis) < leastJoin {
		return a.Crown.Add(a.Axis.Scale(usualJoin))
	}
	return to
}

// usualJoin is the length in millimetres of a join whose end nothing tells;
// leastJoin is how far distal to the crown an end must lie to tell it.
const usualJoin, leastJoin = 20, 2

// webAt is the web in which the crown of a lies: the one whose present crown is
// nearest to its axis, among those read; zero where none was.
func (h Hand) webAt(a arch.Arch) hand.Web {
	var out hand.Web
	nearest := a.Span()/2 + usualWidth/2
	for _, r := range h.accepted() {
		off := h.Ground.Fit.Best.Position(r.Crown).Sub(a.Crown).Cross(a.Axis)
		if off = max(off, -off); off < nearest {
			out, nearest = r.Web, off
		}
	}
	return out
}
