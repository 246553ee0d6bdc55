package annotate

import (
	"math"

	"ogive/geometry/reading"
)

// slope is how the skin junction of one web lies to the digit's long axis.
type slope struct {
	line   []spot  // the junction as marked
	axis   [2]spot // the digit's axis as marked
	fitted [2]spot // the straight line through the junction
	vertex spot    // where the angle is shown
	onAxis bool    // the vertex is where the two lines meet
	// from and to are the directions of the axis and of the fitted line, no
	// more than a right angle apart.
	from, to spot
	reach    float64 // radius of the angle's arc
}

// slopeOf finds the places of a web's slope; nil if none was marked.
func (sc *scene) slopeOf(w reading.Web) *slope {
	for _, m := range sc.marks.Junctions {
		if m.Web != w.Web {
			continue
		}
		line, axis := sc.spots(m.Line), sc.spots(m.Axis[:])
		if len(line) < 2 || len(axis) != 2 || axis[0] == axis[1] {
			return nil
		}
		s := slope{line: line, axis: [2]spot{axis[0], axis[1]}}
		s.layOut(sc.em, sc.fieldBox())
		return &s
	}
	return nil
}

// layOut fits the straight line and finds where the angle is shown: where the
// two lines meet, if that is near enough, else on the junction itself.
func (s *slope) layOut(em float64, field box) {
	centre, along := straight(s.line)
	half := 0.0
	for _, q := range s.line {
		half = math.Max(half, math.Abs(q.sub(centre).dot(along)))
	}
	s.from = s.axis[1].sub(s.axis[0]).unit()
	if along.dot(s.from) < 0 {
		along = along.times(-1)
	}
	s.to = along
	s.fitted = [2]spot{centre.sub(along.times(half * 1.15)), centre.add(along.times(half * 1.15))}
	s.reach = math.Max(2.5*em, 0.6*half)
	s.vertex = s.fitted[0]
	turn := s.from.square().dot(along)
	if turn != 0 {
		t := s.axis[0].sub(centre).dot(s.from.square()) / turn
		meet := centre.add(along.times(t))
		if finite(meet) && meet.sub(centre).length() < 2*half+4*em && boxAt(meet.x, meet.y, 0, 0).within(field) {
			s.vertex, s.onAxis = meet, true
		}
	}
	if centre.sub(s.vertex).dot(s.to) < 0 {
		s.from, s.to = s.from.times(-1), s.to.times(-1)
	}
}

// straight is the total least squares line through the points: a point on it
// and its unit direction, from the first point towards the last.
func straight(ps []spot) (centre, along spot) {
	for _, p := range ps {
		centre = centre.add(p.times(1 / float64(len(ps))))
	}
	var xx, xy, yy float64
	for _, p := range ps {
		v := p.sub(centre)
		xx, xy, yy = xx+v.x*v.x, xy+v.x*v.y, yy+v.y*v.y
	}
	sin, cos := math.Sincos(math.Atan2(2*xy, xx-yy) / 2)
	along = spot{cos, sin}
	if along.dot(ps[len(ps)-1].sub(ps[0])) < 0 {
		along = along.times(-1)
	}
	return centre, along
}

// angles are the directions of axis and junction in radians, the second within
// half a turn of the first.
func (s *slope) angles() (from, to float64) {
	from = math.Atan2(s.from.y, s.from.x)
	return from, from + math.Atan2(s.from.square().dot(s.to), s.from.dot(s.to))
}

// labelAt is the middle of the angle's arc, a little outside.
func (s *slope) labelAt() spot {
	from, to := s.angles()
	sin, cos := math.Sincos((from + to) / 2)
	return s.vertex.add(spot{cos, sin}.times(s.reach))
}

// extensions are what must be added to axis and junction for the angle between
// them to be seen: both to the vertex and on to the arc, or a parallel to the
// axis where they do not meet.
func (s *slope) extensions(em float64) [][]spot {
	beyond := func(way spot) spot { return s.vertex.add(way.times(1.3 * s.reach)) }
	if !s.onAxis {
		return [][]spot{{s.vertex, beyond(s.from)}}
	}
	var out [][]spot
	for i, line := range [][2]spot{s.axis, s.fitted} {
		if distanceToLine(s.vertex, line[0], line[1]) > em/2 {
			end := line[0]
			if s.vertex.sub(line[1]).length() < s.vertex.sub(end).length() {
				end = line[1]
			}
			out = append(out, []spot{end, s.vertex})
		}
		if tip := beyond([]spot{s.from, s.to}[i]); distanceToLine(tip, line[0], line[1]) > em/2 {
			out = append(out, []spot{s.vertex, tip})
		}
	}
	return out
}

func (sc *scene) drawSlopes() {
	for _, d := range sc.webs {
		if d.slope == nil {
			continue
		}
		s := d.slope
		from, to := s.angles()
		thin := stroke{core: cores[kindJoint], width: sc.fine()}
		dashed := thin
		dashed.dash = []float64{0.5 * sc.em, 0.5 * sc.em}
		sc.lines(thin, s.axis[:], arrowHead(s.axis[0], s.axis[1], 0.8*sc.em))
		sc.lines(dashed, s.extensions(sc.em)...)
		sc.lines(stroke{core: cores[kindJunction], width: sc.bold()}, s.fitted[:])
		sc.lines(stroke{core: cores[kindBorder], width: sc.fine()}, arc(s.vertex, s.reach, from, to))
		sc.lines(stroke{core: cores[kindBorder], width: sc.fine()}, crosses(s.line, 0.2*sc.em)...)
	}
}

// arrowHead shows which way the axis runs.
func arrowHead(from, to spot, size float64) []spot {
	u := to.sub(from).unit()
	back, side := to.sub(u.times(size)), u.square().times(0.45*size)
	return []spot{back.add(side), to, back.sub(side)}
}

// crosses are oblique crosses at the points.
func crosses(points []spot, r float64) [][]spot {
	var out [][]spot
	for _, q := range points {
		out = append(out,
			[]spot{q.add(spot{-r, -r}), q.add(spot{r, r})},
			[]spot{q.add(spot{-r, r}), q.add(spot{r, -r})})
	}
	return out
}
