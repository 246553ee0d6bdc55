package annotate

import (
	"math"

	"ogive/geometry/reading"
	"ogive/imaging/markshapes"
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
		half = math.Max(half, math.Abs(q.Sub(centre).Dot(along)))
	}
	s.from = s.axis[1].Sub(s.axis[0]).Unit()
	if along.Dot(s.from) < 0 {
		along = along.Times(-1)
	}
	s.to = along
	s.fitted = [2]spot{centre.Sub(along.Times(half * 1.15)), centre.Add(along.Times(half * 1.15))}
	s.reach = math.Max(2.5*em, 0.6*half)
	s.vertex = s.fitted[0]
	turn := s.from.Square().Dot(along)
	if turn != 0 {
		t := s.axis[0].Sub(centre).Dot(s.from.Square()) / turn
		meet := centre.Add(along.Times(t))
		if finite(meet) && meet.Sub(centre).Length() < 2*half+4*em && boxAt(meet.X, meet.Y, 0, 0).Within(field) {
			s.vertex, s.onAxis = meet, true
		}
	}
	if centre.Sub(s.vertex).Dot(s.to) < 0 {
		s.from, s.to = s.from.Times(-1), s.to.Times(-1)
	}
}

// straight is the total least squares line through the points: a point on it
// and its unit direction, from the first point towards the last.
func straight(ps []spot) (centre, along spot) {
	for _, p := range ps {
		centre = centre.Add(p.Times(1 / float64(len(ps))))
	}
	var xx, xAndY, yy float64
	for _, p := range ps {
		v := p.Sub(centre)
		xx, xAndY, yy = xx+v.X*v.X, xAndY+v.X*v.Y, yy+v.Y*v.Y
	}
	sin, cos := math.Sincos(math.Atan2(2*xAndY, xx-yy) / 2)
	along = xy(cos, sin)
	if along.Dot(ps[len(ps)-1].Sub(ps[0])) < 0 {
		along = along.Times(-1)
	}
	return centre, along
}

// angles are the directions of axis and junction in radians, the second within
// half a turn of the first.
func (s *slope) angles() (from, to float64) {
	from = math.Atan2(s.from.Y, s.from.X)
	return from, from + math.Atan2(s.from.Square().Dot(s.to), s.from.Dot(s.to))
}

// labelAt is the middle of the angle's arc, a little outside.
func (s *slope) labelAt() spot {
	from, to := s.angles()
	sin, cos := math.Sincos((from + to) / 2)
	return s.vertex.Add(xy(cos, sin).Times(s.reach))
}

// extensions are what must be added to axis and junction for the angle between
// them to be seen: both to the vertex and on to the arc, or a parallel to the
// axis where they do not meet.
func (s *slope) extensions(em float64) [][]spot {
	beyond := func(way spot) spot { return s.vertex.Add(way.Times(1.3 * s.reach)) }
	if !s.onAxis {
		return [][]spot{{s.vertex, beyond(s.from)}}
	}
	var out [][]spot
	for i, line := range [][2]spot{s.axis, s.fitted} {
		if distanceToLine(s.vertex, line[0], line[1]) > em/2 {
			end := line[0]
			if s.vertex.Sub(line[1]).Length() < s.vertex.Sub(end).Length() {
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
		thin := stroke{Core: cores[kindJoint], Width: sc.fine()}
		dashed := thin
		dashed.Dash = []float64{0.5 * sc.em, 0.5 * sc.em}
		sc.Lines(thin, s.axis[:], arrowHead(s.axis[0], s.axis[1], 0.8*sc.em))
		sc.Lines(dashed, s.extensions(sc.em)...)
		sc.Lines(stroke{Core: cores[kindJunction], Width: sc.bold()}, s.fitted[:])
		sc.Lines(stroke{Core: cores[kindBorder], Width: sc.fine()}, markshapes.Arc(s.vertex, s.reach, from, to))
		sc.Lines(stroke{Core: cores[kindBorder], Width: sc.fine()}, saltires(s.line, 0.2*sc.em)...)
	}
}

// arrowHead shows which way the axis runs.
func arrowHead(from, to spot, size float64) []spot {
	u := to.Sub(from).Unit()
	back, side := to.Sub(u.Times(size)), u.Square().Times(0.45*size)
	return []spot{back.Add(side), to, back.Sub(side)}
}
