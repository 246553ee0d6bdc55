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
func outlined(p *photo.Photograph, side hand.Side, view hand.View) map[hand.Web]phalanges {
	s := newSilhouette(p)
	var hands []map[hand.Web]phalanges
	for number := 1; number <= s.count(); number++ {
		if found, ok := s.fingers(number, thumbFirst(side, view)); ok {
			hands = append(hands, found)
		}
	}
	if len(hands) != 1 {
		return map[hand.Web]phalanges{}
	}
	return hands[0]
}

// thumbFirst reports whether the outline, clockwise from the wrist, meets the
// thumb first: the back of a right hand and the palm of a left one.
func thumbFirst(side hand.Side, view hand.View) bool {
	return (side == hand.Right) == (view == hand.Dorsal)
}

// fingers looks for four webs in a row on the outline of a region.
func (s *silhouette) fingers(number int, thumbFirst bool) (map[hand.Web]phalanges, bool) {
	line := s.outline(number)
	row := inRow(outline.Valleys(line))
	if len(row) != len(hand.Webs) {
		return nil, false
	}
	if !thumbFirst {
		slices.Reverse(row)
	}
	if !thumbAtStart(line, row) {
		return nil, false
	}
	found := map[hand.Web]phalanges{}
	for i, v := range row[1:] {
		if f, ok := s.beside2(line, number, v); ok {
			if !thumbFirst {
				f.mcp[0], f.mcp[1] = f.mcp[1], f.mcp[0]
				f.pip[0], f.pip[1] = f.pip[1], f.pip[0]
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

// thumbAtStart reports whether the first of the webs lies proximal of the last,
// as the web of the thumb does on every hand.
func thumbAtStart(line []point, row []valley) bool {
	webs := line[row[1].At].Mid(line[row[2].At])
	tips := line[row[1].Tips[0]].Mid(line[row[1].Tips[1]]).Mid(line[row[2].Tips[0]].Mid(line[row[2].Tips[1]]))
	distal := tips.Sub(webs).Direction()
	return line[row[0].At].Sub(line[row[3].At]).Dot(distal) < 0
}

// Where a finger's width is looked at to find its axis, and where its joints
// are taken to lie, in parts of the way along the border from web to tip.
const (
	lookFrom, lookTo = 0.25, 0.70
	looks            = 6
	standInPIP       = 0.35
	standInLength    = 0.75
)

// beside2 finds the axes of the two fingers beside a valley. PIP and MCP joints
// can't be seen on an outline: places about as far up and down stand in for
// them.
func (s *silhouette) beside2(line []point, number int, v valley) (phalanges, bool) {
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
