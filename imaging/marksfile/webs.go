package marksfile

import (
	"fmt"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
)

const (
	// leastDistance is the distance in pixels below which two marks are taken
	// for one.
	leastDistance plane.Pixel = 1
	// maxPoints is more than any border has.
	maxPoints = 20_000
	// leastEdge is the fewest points a border can be drawn with.
	leastEdge = 5
)

const webForm = "the number of a web: 1 (thumb-index), 2 (index-middle), 3 (middle-ring) or 4 (ring-little)"

func (f field) webs() []hand.WebMarks {
	if f.missing() {
		return nil
	}
	var out []hand.WebMarks
	taken := map[hand.Web]bool{}
	for _, e := range f.list("a list of at most 4 webs", 0, len(hand.Webs)) {
		if e.object(`a web, such as {"web": 3, "seeds": [[x, y], [x, y], [x, y]]}`, "web", "edge", "seeds") {
			out = append(out, e.web(taken))
		}
	}
	return out
}

func (f field) web(taken map[hand.Web]bool) hand.WebMarks {
	w := hand.WebMarks{Web: f.at("web").webNumber(taken)}
	edge, seeds := f.at("edge"), f.at("seeds")
	if edge.missing() && seeds.missing() {
		f.refuse("has neither an edge nor seeds", `give "seeds": three points (border, crown, border), or "edge": the traced border`)
	}
	if !edge.missing() {
		w.Edge = edge.points(fmt.Sprintf("the border as a list of %d points or more", leastEdge), leastEdge, maxPoints)
		if edge.sound() && together(w.Edge) {
			edge.refuse("has all its points at one place", "trace the border again")
		}
	}
	if !seeds.missing() {
		w.Seeds = seeds.points("3 points: border, crown, border", 3, 3)
		seeds.checkSeeds(w.Seeds)
	}
	return w
}

func (f field) checkSeeds(seeds []plane.PixelPoint) {
	if !f.sound() {
		return
	}
	for i, p := range seeds {
		for k, q := range seeds[:i] {
			if p.Distance(q) < leastDistance {
				f.element(i).refuse(fmt.Sprintf("lies on seeds[%d]", k), "give the border of one finger, the crown, the border of the other finger")
			}
		}
	}
}

func (f field) webNumber(taken map[hand.Web]bool) hand.Web {
	n := f.numberOf(webForm)
	if !f.sound() {
		return 0
	}
	w := hand.Web(n)
	switch {
	case float64(w) != n || !w.Valid():
		f.refuse(fmt.Sprintf("%g is no web", n), "give "+webForm)
	case taken[w]:
		f.refuse(fmt.Sprintf("the %v is there twice", w), "keep one of them")
	}
	taken[w] = true
	return w
}

func (f field) junctions() []hand.JunctionMarks {
	if f.missing() {
		return nil
	}
	var out []hand.JunctionMarks
	taken := map[hand.Web]bool{}
	for _, e := range f.list("a list of at most 4 junctions", 0, len(hand.Webs)) {
		if e.object(`a junction, such as {"web": 3, "line": [[x, y], [x, y]], "axis": [[x, y], [x, y]]}`, "web", "line", "axis") {
			out = append(out, e.junction(taken))
		}
	}
	return out
}

func (f field) junction(taken map[hand.Web]bool) hand.JunctionMarks {
	j := hand.JunctionMarks{Web: f.at("web").webNumber(taken)}
	line, axis := f.at("line"), f.at("axis")
	j.Line = line.points("2 points or more along the junction of glabrous and pigmented skin", 2, maxPoints)
	if line.sound() && together(j.Line) {
		line.refuse("has all its points at one place", "mark the junction again")
	}
	ends := axis.points("2 points on the digit's long axis", 2, 2)
	if !axis.sound() {
		return j
	}
	j.Axis = [2]plane.PixelPoint(ends)
	if together(ends) {
		axis.refuse("has length zero", "give two points well apart on the digit's long axis")
	}
	return j
}

// together reports whether all points lie at one place.
func together(ps []plane.PixelPoint) bool {
	for _, p := range ps {
		if p.Distance(ps[0]) >= leastDistance {
			return false
		}
	}
	return true
}

// element is the field of element i of a list.
func (f field) element(i int) field { return field{f.items[i], element(f.path, i), f.first} }
