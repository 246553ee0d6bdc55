package annotate

import "ogive/imaging/markshapes"

// drawArches draws each web's fitted arch as a bold line with the traced border
// as a fine one on top of it, so that it is seen where they part.
func (sc *scene) drawArches() {
	arch := stroke{Core: cores[kindArch], Width: sc.bold()}
	border := stroke{Core: cores[kindBorder], Width: 0.6 * sc.fine(), Thin: true}
	for _, d := range sc.webs {
		sc.Lines(sc.levelStroke(), d.level)
		sc.Lines(arch, d.curve)
		sc.Lines(border, d.border)
		sc.Lines(sc.spanStroke(), d.springing)
		sc.Lines(stroke{Core: cores[kindBorder], Width: sc.fine()}, saltires(d.seeds, 0.3*sc.em)...)
	}
}

// saltires are slanting crosses at the points.
func saltires(points []spot, r float64) [][]spot {
	var out [][]spot
	for _, q := range points {
		out = append(out, markshapes.Saltire(q, r)...)
	}
	return out
}

// levelStroke is dotted, spanStroke dashed.
func (s *sheet) levelStroke() stroke {
	return stroke{Core: cores[kindJoint], Width: s.fine(), Dash: []float64{0.02 * s.pen, 0.6 * s.pen}}
}

func (s *sheet) spanStroke() stroke {
	return stroke{Core: cores[kindCrown], Width: s.fine(), Dash: []float64{0.4 * s.pen, 0.4 * s.pen}}
}

// drawCrowns draws crowns and springings over everything else.
func (sc *scene) drawCrowns() {
	for _, d := range sc.webs {
		sc.drawSpringings(d)
		if d.hasCrown {
			sc.Crown(d.crown, d.distal, sc.crownRadius()*sc.room(d))
		}
	}
}

// crownRadius is the reach of the crown's mark.
func (s *sheet) crownRadius() float64 { return 0.95 * s.pen }

// room is the part of their size at which the marks of a web are drawn: less than
// 1 where the arch is so narrow that they would hide it.
func (sc *scene) room(d drawnWeb) float64 {
	if len(d.curve) == 0 {
		return 1
	}
	mouth := d.curve[0].Sub(d.curve[len(d.curve)-1]).Length()
	return clamp(mouth/(2.6*sc.crownRadius()), 0.5, 1)
}

// drawSpringings draws a short bar across the border at each springing.
func (sc *scene) drawSpringings(d drawnWeb) {
	if d.springing != nil {
		sc.Springings(d.springing[0], d.springing[1], 0.5*sc.pen*sc.room(d), sc.springingStroke().Width)
	}
}

func (s *sheet) springingStroke() stroke {
	return stroke{Core: cores[kindCrown], Width: 1.9 * s.fine()}
}
