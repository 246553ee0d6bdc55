package trace

import (
	"math"
	"slices"
)

// A border is the cheapest way through the terrain that has drape on its one
// side and skin on its other all along: from the first click's level, past the
// crown click, to the third click's level.

const (
	costUnit  = 64.0
	baseCost  = 0.04 // per sample, of a perfect border
	flatCost  = 1.0  // where there is no border
	placeCost = 0.5  // off the middle between drape and skin
	dearest   = int32(math.MaxInt32)
)

// arrival is a sample reached at a cost.
type arrival struct {
	at   int
	cost int32
}

var strides = [8]float64{1, math.Sqrt2, 1, math.Sqrt2, 1, math.Sqrt2, 1, math.Sqrt2}

var neighbours = [8][2]int{{1, 0}, {1, 1}, {0, 1}, {-1, 1}, {-1, 0}, {-1, -1}, {0, -1}, {1, -1}}

// lookAside gives for each direction of travel the offset to the sample looked at
// on the drape's side; the skin's lies opposite.
func (t *terrain) lookAside() [8]int {
	reach := int(max(1, min(3, t.frame.gap/t.step/7)))
	var o [8]int
	for d, n := range neighbours {
		dx, dy := -n[1], n[0]
		r := reach
		if dx != 0 && dy != 0 {
			r = int(max(1, math.Round(float64(reach)/math.Sqrt2)))
		}
		s := int(t.frame.turn) * r
		o[d] = s * (dy*t.w + dx)
	}
	return o
}

// search is Dijkstra's algorithm over buckets of equal cost. Every sample stands
// for two places, one before and one after the crown: only near the crown click
// does a way lead from the first to the second.
type search struct {
	cost, from []int32 // by place
	heads      []int32 // by cost, the latest entry
	next, node []int32 // by entry
}

func (s *search) push(place int, cost, from int32) {
	if cost >= s.cost[place] {
		return
	}
	s.cost[place], s.from[place] = cost, from
	for int(cost) >= len(s.heads) {
		s.heads = append(s.heads, -1)
	}
	s.next = append(s.next, s.heads[cost])
	s.node = append(s.node, int32(place))
	s.heads[cost] = int32(len(s.node) - 1)
}

// pop is a place not yet left that costs no more than c, or none.
func (s *search) pop(c int) (place int, ok bool) {
	for s.heads[c] >= 0 {
		e := s.heads[c]
		s.heads[c] = s.next[e]
		if place = int(s.node[e]); int(s.cost[place]) == c {
			return place, true
		}
	}
	return 0, false
}

func newSearch(places int) *search {
	s := &search{cost: make([]int32, places), from: make([]int32, places)}
	for i := range s.cost {
		s.cost[i], s.from[i] = dearest, -1
	}
	return s
}

// path is the border's samples in order.
func (t *terrain) path() ([]int, bool) {
	n := len(t.open)
	s := newSearch(2 * n)
	for _, a := range t.enter {
		s.push(a.at, a.cost, -1)
	}
	aside := t.lookAside()
	best := arrival{-1, dearest}
	for c := 0; c < len(s.heads) && int32(c) < best.cost; c++ {
		for {
			place, ok := s.pop(c)
			if !ok {
				break
			}
			at, after := place, 0
			if place >= n {
				at, after = place-n, n
				if x := t.leave[at]; x >= 0 && int32(c)+x < best.cost {
					best = arrival{place, int32(c) + x}
				}
			} else if x := t.past[at]; x >= 0 {
				s.push(at+n, int32(c)+x, int32(place))
			}
			for d, v := range neighbours {
				to := at + v[1]*t.w + v[0]
				if t.open[to] {
					s.push(to+after, int32(c)+t.stepCost(to, d, aside[d]), int32(place))
				}
			}
		}
	}
	if best.at < 0 {
		return nil, false
	}
	var way []int
	for p := int32(best.at); p >= 0; p = s.from[p] {
		if k := int(p) % n; len(way) == 0 || way[len(way)-1] != k {
			way = append(way, k)
		}
	}
	slices.Reverse(way)
	return way, true
}

// stepCost is the cost of a step in direction d that ends at a sample.
func (t *terrain) stepCost(to, d, aside int) int32 {
	dull := 1 - t.contrast(to, aside)
	off := float64(t.drape[to])
	return 1 + int32(costUnit*strides[d]*(baseCost+flatCost*dull*dull+placeCost*off*off))
}

func (t *terrain) contrast(at, aside int) float64 {
	c := float64(t.drape[at+aside]-t.drape[at-aside]) / 2
	return max(0, min(1, c))
}

// astray is what it costs to lie a distance off a click.
func (t *terrain) astray(distance float64) int32 {
	x := 2 * distance / t.frame.slack
	return int32(costUnit * x * x / 2)
}

// setGates marks the samples where a border may begin, where it may end, and
// where it may pass the crown.
func (t *terrain) setGates() {
	f := t.frame
	t.leave = make([]int32, len(t.open))
	t.past = make([]int32, len(t.open))
	for k, open := range t.open {
		t.leave[k], t.past[k] = -1, -1
		if !open {
			continue
		}
		p := t.pointAt(float64(k%t.w), float64(k/t.w))
		along, over := f.at(p)
		for side := range 2 {
			off := math.Abs(over - f.side[side])
			if math.Abs(along-f.level[side]) > 0.71*t.step || off > f.slack+t.step {
				continue
			}
			if side == 0 {
				t.enter = append(t.enter, arrival{k, t.astray(off)})
			} else {
				t.leave[k] = t.astray(off)
			}
		}
		if off := math.Hypot(along, over); off <= f.slack+t.step {
			t.past[k] = t.astray(off)
		}
	}
}
