package annotate

// drawArches draws each web's fitted arch as a bold line with the traced border
// as a fine one on top of it, so that it is seen where they part.
func (sc *scene) drawArches() {
	arch := stroke{core: cores[kindArch], width: sc.bold()}
	border := stroke{core: cores[kindBorder], width: 0.6 * sc.fine(), thin: true}
	for _, d := range sc.webs {
		sc.lines(sc.levelStroke(), d.level)
		sc.lines(arch, d.curve)
		sc.lines(border, d.border)
		sc.lines(sc.spanStroke(), d.springing)
		sc.lines(stroke{core: cores[kindBorder], width: sc.fine()}, crosses(d.seeds, 0.3*sc.em)...)
	}
}

// levelStroke is dotted, spanStroke dashed.
func (s *sheet) levelStroke() stroke {
	return stroke{core: cores[kindJoint], width: s.fine(), dash: []float64{0.02 * s.pen, 0.6 * s.pen}}
}

func (s *sheet) spanStroke() stroke {
	return stroke{core: cores[kindCrown], width: s.fine(), dash: []float64{0.4 * s.pen, 0.4 * s.pen}}
}

// drawCrowns draws crowns and springings over everything else.
func (sc *scene) drawCrowns() {
	for _, d := range sc.webs {
		sc.drawSpringings(d)
		if d.hasCrown {
			sc.drawCrown(d.crown, d.distal, sc.crownRadius())
		}
	}
}

// crownRadius is the reach of the crown's mark.
func (s *sheet) crownRadius() float64 { return 0.95 * s.pen }

// drawCrown draws two darts along the web's axis that point at the crown from
// either side and leave the arch itself, and the crown, open to the eye.
func (s *sheet) drawCrown(q, distal spot, r float64) {
	if distal == (spot{}) {
		distal = spot{0, -1}
	}
	across := distal.square().times(0.36 * r)
	for _, way := range []spot{distal, distal.times(-1)} {
		point, base := q.add(way.times(0.38*r)), q.add(way.times(r))
		s.solid(cores[kindCrown], []spot{point, base.add(across), base.sub(across)})
	}
}

// drawSpringings draws a short bar across the border at each springing.
func (sc *scene) drawSpringings(d drawnWeb) {
	if d.springing == nil {
		return
	}
	across := d.springing[1].sub(d.springing[0]).unit()
	for _, q := range d.springing {
		sc.drawSpringing(q, across, 0.5*sc.pen)
	}
}

func (s *sheet) drawSpringing(q, across spot, half float64) {
	v := across.times(half)
	s.lines(stroke{core: cores[kindCrown], width: 1.9 * s.fine()}, []spot{q.sub(v), q.add(v)})
}
