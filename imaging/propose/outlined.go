package propose

import (
	"math"
	"slices"

	"ogive/geometry/hand"
	"ogive/geometry/outline"
	"ogive/geometry/plane"
	"ogive/imaging/photo"
)

// outlined finds the axes of the fingers beside the second to fourth web on the
// outline of the hand. There are none unless exactly one region of the
// photograph is a hand of that side with all its digits apart: which web is
// which could only be guessed.
func outlined(p *photo.Photograph, side hand.Side, view hand.View) (map[hand.Web]phalanges, glance) {
	s := newSilhouette(p)
	var hands []map[hand.Web]phalanges
	for number := 1; number <= s.count(); number++ {
		if found, ok := s.fingers(number, thumbFirst(side, view)); ok {
			hands = append(hands, found)
		}
	}
	if len(hands) != 1 {
		return nil, s.g
	}
	return hands[0], s.g
}

// thumbFirst reports whether the outline, clockwise from the wrist, meets the
// thumb first: the back of a right hand and the palm of a left one.
func thumbFirst(side hand.Side, view hand.View) bool {
	return (side == hand.Right) == (view == hand.Dorsal)
}

// fingers looks for the second to fourth web on the outline of a region.
func (s *silhouette) fingers(number int, thumbFirst bool) (map[hand.Web]phalanges, bool) {
	line := s.outline(number)
	row := inRow(slices.DeleteFunc(outline.Valleys(line), func(v valley) bool {
		return !s.finger(line, number, v, 0) || !s.finger(line, number, v, 1)
	}))
	step := 1
	if !thumbFirst {
		slices.Reverse(row)
		step = -1
	}
	switch {
	case len(row) == 4 && thumbAtStart(line, row):
		row = row[1:]
	case len(row) == 3 && s.thumbBefore(line, number, row, step):
	default:
		return nil, false
	}
	found := map[hand.Web]phalanges{}
	for i, v := range row {
		if f, ok := s.phalanges(line, number, v); ok {
			if !thumbFirst {
				slices.Reverse(f.mcp[:])
				slices.Reverse(f.pip[:])
			}
			found[measured[i]] = f
		}
	}
	return found, true
}

type valley = outline.Valley[plane.Pixel]

// inRow is the valleys in their order, beginning where the one before is not
// beside; none if they don't all follow one another.
func inRow(valleys []valley) []valley {
	n, first := len(valleys), -1
	for i, v := range valleys {
		if valleys[(i+n-1)%n].Tips[1] == v.Tips[0] {
			continue
		}
		if first >= 0 {
			return nil
		}
		first = i
	}
	if first < 0 {
		return nil
	}
	return slices.Concat(valleys[first:], valleys[:first])
}

// finger reports whether what lies beyond one side of a valley is a finger and
// not a bulge of the wrist.
func (s *silhouette) finger(line []point, number int, v valley, i int) bool {
	side := walk(line, v.At, v.Tips[i], 2*i-1)
	_, _, ok := s.axis(side, number, length(side), 2*i-1)
	return ok
}

// thumbAtStart reports whether the first of four webs lies proximal of the last,
// as the web of the thumb does on every hand.
func thumbAtStart(line []point, row []valley) bool {
	webs := line[row[1].At].Mid(line[row[2].At])
	tips := line[row[1].Tips[0]].Mid(line[row[1].Tips[1]]).Mid(line[row[2].Tips[0]].Mid(line[row[2].Tips[1]]))
	distal := tips.Sub(webs).Direction()
	return line[row[0].At].Sub(line[row[3].At]).Dot(distal) < 0
}

// Of a thumb's web where the thumb itself was not told: its least depth in parts
// of a finger's length, and what there may be at the other side of the hand, in
// parts of that.
const (
	thumbDepth = 0.35
	otherDepth = 0.5
)

// thumbBefore reports whether the outline beyond the first of four fingers has
// a thumb and its web, and beyond the last has no such hollow. Otherwise one of
// the four may be the thumb, and two fingers joined.
func (s *silhouette) thumbBefore(line []point, number int, row []valley, step int) bool {
	reach := length(walk(line, row[1].At, row[1].Tips[0], -1))
	first, last, thumb := row[0].Tips[0], row[2].Tips[1], 0
	if step < 0 {
		first, last, thumb = row[0].Tips[1], row[2].Tips[0], 1
	}
	before, ends := s.hollow(line, first, -step, reach)
	after, _ := s.hollow(line, last, step, reach)
	return ends && before.Depth > plane.Pixel(thumbDepth*reach) && after.Depth < otherDepth*before.Depth &&
		s.finger(line, number, before, thumb)
}

// hollow is the deepest hollow of the outline from a tip on, as far as the
// photograph shows it and no further than three fingers are long. Ends reports
// whether the outline comes back from where the hollow ends, as it does from a
// tip.
func (s *silhouette) hollow(line []point, tip, step int, reach float64) (deepest valley, ends bool) {
	n := len(line)
	w := []int{tip}
	for gone := 0.0; gone < 3*reach; {
		i := w[len(w)-1]
		next := (i + step + n) % n
		if next == tip || s.atEdge(line[next]) {
			break
		}
		gone += float64(line[next].Distance(line[i]))
		w = append(w, next)
	}
	for i := 0; i < len(w)-1; {
		from, j := line[w[i]], i+1
		for k := i + 2; k < len(w); k++ {
			if plane.Pixel(step)*line[w[j]].Sub(from).Cross(line[w[k]].Sub(from)) <= 0 {
				j = k
			}
		}
		chord := line[w[j]].Sub(from).Direction()
		for _, at := range w[i:j] {
			if d := plane.Pixel(math.Abs(float64(chord.Cross(line[at].Sub(from))))); d > deepest.Depth {
				deepest = valley{At: at, Tips: [2]int{w[i], w[j]}, Depth: d}
				ends = j < len(w)-1
			}
		}
		i = j
	}
	if step < 0 {
		slices.Reverse(deepest.Tips[:])
	}
	return deepest, ends
}

// atEdge reports whether p lies at the edge of the photograph.
func (s *silhouette) atEdge(p point) bool {
	near := plane.Pixel(2 * s.g.shrink)
	end := s.place(float64(s.g.w), float64(s.g.h))
	return p.X < near || p.Y < near || p.X > end.X-near || p.Y > end.Y-near
}

// Where a finger's width is looked at to find its axis, and where its joints
// are taken to lie, in parts of the way along the border from web to tip.
const (
	lookFrom, lookTo = 0.25, 0.70
	looks            = 6
	standInPIP       = 0.35
	standInLength    = 0.75
)

// phalanges finds the axes of the two fingers beside a valley. PIP and MCP joints
// can't be seen on an outline: places about as far up and down stand in for
// them.
func (s *silhouette) phalanges(line []point, number int, v valley) (phalanges, bool) {
	var f phalanges
	sides := [2][]point{walk(line, v.At, v.Tips[0], -1), walk(line, v.At, v.Tips[1], 1)}
	reach := math.Min(length(sides[0]), length(sides[1]))
	for i, side := range sides {
		centre, axis, ok := s.axis(side, number, reach, 2*i-1)
		if !ok {
			return f, false
		}
		web := line[v.At]
		up := float64(web.Sub(centre).Dot(axis)) + standInPIP*reach
		f.pip[i] = centre.Add(axis.Scale(up))
		f.mcp[i] = f.pip[i].Add(axis.Scale(-standInLength * reach))
	}
	across := f.mcp[1].Sub(f.mcp[0])
	apart := f.pip[1].Sub(f.pip[0])
	return f, f.length() > shortest && across.Dot(apart) > 0 && across.Norm() > shortest/4
}

// axis is the line along the middle of a finger, pointing distally, found from
// one of its borders: turn is -1 where the finger lies to the left of its border
// seen from web to tip, 1 where to the right.
func (s *silhouette) axis(side []point, number int, reach float64, turn int) (point, vector, bool) {
	var middles []point
	for k := range looks {
		at := lookFrom + (lookTo-lookFrom)*float64(k)/(looks-1)
		p, q := along(side, (at-0.08)*reach), along(side, (at+0.08)*reach)
		inward := q.Sub(p).Direction().Left().Scale(float64(-turn))
		if m, ok := s.middle(p.Mid(q), inward, number, 0.8*reach); ok {
			middles = append(middles, m)
		}
	}
	if len(middles) < 4 {
		return point{}, vector{}, false
	}
	slopes := make([]vector, 0, len(middles))
	var centre vector
	for i, m := range middles {
		centre = centre.Add(m.Sub(middles[0]))
		if i >= len(middles)/2 {
			slopes = append(slopes, m.Sub(middles[i-len(middles)/2]))
		}
	}
	var axis vector
	for _, v := range slopes {
		axis = axis.Add(v)
	}
	return middles[0].Add(centre.Scale(1 / float64(len(middles)))), axis.Direction(), true
}

// middle goes into the finger from a point on its border to the border opposite:
// the place half way; false if there is none within the reach.
func (s *silhouette) middle(from point, inward vector, number int, reach float64) (point, bool) {
	step := float64(s.g.shrink) / 2
	for d := 2 * float64(s.g.shrink); d < reach; d += step {
		if !s.holds(number, from.Add(inward.Scale(d))) {
			return from.Add(inward.Scale(d / 2)), d > 4*float64(s.g.shrink)
		}
	}
	return point{}, false
}

// walk is the part of a closed line from one of its points to another.
func walk(line []point, from, to, step int) []point {
	n := len(line)
	out := []point{line[from]}
	for i := from; i != to; {
		i = (i + step + n) % n
		out = append(out, line[i])
	}
	return out
}

func length(line []point) float64 {
	var l float64
	for i := 1; i < len(line); i++ {
		l += float64(line[i].Distance(line[i-1]))
	}
	return l
}

// along is the point so far along a line.
func along(line []point, far float64) point {
	for i := 1; i < len(line); i++ {
		d := float64(line[i].Distance(line[i-1]))
		if far <= d {
			return line[i-1].Towards(line[i], far/d)
		}
		far -= d
	}
	return line[len(line)-1]
}
