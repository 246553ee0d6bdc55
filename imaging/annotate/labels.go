package annotate

import (
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
	p := labelPlacer{sheet: sc.sheet, Placer: markshapes.Placer{Field: sc.fieldBox(), Cover: sc.labelCover(), Em: sc.em, Clear: 1.4 * sc.jointRadius()}}
	for _, d := range sc.webs {
		if d.hasCrown {
			p.Keep = append(p.Keep, d.crown)
		}
	}
	p.Keep = append(p.Keep, sc.jointSpots()...)
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

// beside places a label around a mark of radius r.
func (p *labelPlacer) beside(q spot, r float64, words string) {
	f := p.fonts.small
	b, _ := p.Beside(q, r+0.3*p.em, f.WidthOf(words), 1.05*f.Size)
	p.Take(b)
	p.placed = append(p.placed, label{words, b})
}

// labelPlacer puts labels on a sheet.
type labelPlacer struct {
	*sheet
	markshapes.Placer
	placed []label
}
