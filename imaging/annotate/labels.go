package annotate

import (
	"math"

	"ogive/geometry/hand"
	"ogive/imaging/markshapes"
	"ogive/imaging/wording"
)

// label is a few words beside a mark.
type label struct {
	words string
	box   box
}

// placeLabels finds places for the names beside the marks.
func (sc *scene) placeLabels() []label {
	p := labelPlacer{sheet: sc.sheet, field: sc.fieldBox(), lines: sc.labelCover()}
	for _, d := range sc.webs {
		if d.hasCrown {
			p.keep = append(p.keep, d.crown)
		}
	}
	p.keep = append(p.keep, sc.jointSpots()...)
	for _, f := range hand.Digits {
		for _, j := range hand.Joints {
			if at, ok := sc.marks.Joint(f, j); ok && sc.near(at) {
				p.beside(sc.at(at), sc.jointRadius(), sc.jointLabel(f, j))
			}
		}
	}
	if at, words := sc.referenceLabel(); words != "" {
		p.beside(at, 0.5*sc.em, words)
	}
	for _, d := range sc.webs {
		if d.slope != nil && d.Slope != nil {
			p.beside(d.slope.labelAt(), 0.3*sc.em, wording.Degrees(*d.Slope))
		}
	}
	return p.placed
}

// jointSpots are the places of all marked joints.
func (sc *scene) jointSpots() []spot {
	var out []spot
	for _, f := range hand.Digits {
		for _, j := range hand.Joints {
			if at, ok := sc.marks.Joint(f, j); ok && sc.near(at) {
				out = append(out, sc.at(at))
			}
		}
	}
	return out
}

// jointLabel names the joint; its digit too, once for each digit.
func (sc *scene) jointLabel(f hand.Digit, j hand.Joint) string {
	name := wording.Joint(j, sc.marks.View)
	for _, first := range hand.Joints {
		if _, ok := sc.marks.Joint(f, first); ok {
			if first == j {
				return f.String() + " " + name
			}
			break
		}
	}
	return name
}

// labelPlacer puts labels one after the other where they disturb least.
type labelPlacer struct {
	*sheet
	field  box
	lines  *markshapes.Cover
	keep   []spot
	placed []label
}

// beside places a label around a mark of radius r.
func (p *labelPlacer) beside(q spot, r float64, words string) {
	w, h := p.fonts.small.WidthOf(words), 1.05*p.fonts.small.Size
	gap := r + 0.3*p.em
	var best box
	least := math.Inf(1)
	for i, way := range []spot{xy(1, 0), xy(-1, 0), xy(0, 1), xy(0, -1), xy(0.75, 0.75), xy(-0.75, 0.75), xy(0.75, -0.75), xy(-0.75, -0.75)} {
		c := q.Add(xy(way.X*(gap+w/2), way.Y*(gap+h/2)))
		b := boxAt(c.X-w/2, c.Y-h/2, w, h)
		if cost := p.cost(b) + 0.2*float64(i); cost < least {
			least, best = cost, b
		}
	}
	p.placed = append(p.placed, label{words, best})
}

func (p *labelPlacer) cost(b box) float64 {
	c := p.lines.Under(b.Grown(0.2 * p.em))
	for _, l := range p.placed {
		if l.box.Meets(b.Grown(0.2 * p.em)) {
			c += 12
		}
	}
	for _, k := range p.keep {
		if b.Distance(k) < 1.4*p.jointRadius() {
			c += 20
		}
	}
	if !b.Within(p.field) {
		c += 60
	}
	return c
}
