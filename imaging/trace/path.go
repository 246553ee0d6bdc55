package trace

import "math"

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

// flood is the cheapest way from any start to every sample.
type flood struct {
	cost []int32
	from []int32
}

var neighbours = [8][2]int{{1, 0}, {1, 1}, {0, 1}, {-1, 1}, {-1, 0}, {-1, -1}, {0, -1}, {1, -1}}

// wayCosts gives for each direction of travel the offset to the sample looked at
// on the drape's side; the skin's lies opposite.
func (t *terrain) lookAside() [8]int {
	reach := int(math.Max(1, math.Min(3, t.frame.gap/t.step/7)))
	var o [8]int
	for d, n := range neighbours {
		dx, dy := -n[1], n[0]
		r := reach
		if dx != 0 && dy != 0 {
			r = int(math.Max(1, math.Round(float64(reach)/math.Sqrt2)))
		}
		s := int(t.frame.turn) * r
		o[d] = s * (dy*t.w + dx)
	}
	return o
}

// spread runs Dijkstra's algorithm over buckets of equal cost.
func (t *terrain) spread(starts []arrival) flood {
	n := len(t.open)
	f := flood{cost: make([]int32, n), from: make([]int32, n)}
	for i := range f.cost {
		f.cost[i], f.from[i] = dearest, -1
	}
	aside := t.lookAside()
	var step [8]int
	var long [8]float64
	for d, v := range neighbours {
		step[d] = v[1]*t.w + v[0]
		long[d] = math.Hypot(float64(v[0]), float64(v[1])) * costUnit
	}
	var heads []int32
	next := make([]int32, 0, 4*n)
	node := make([]int32, 0, 4*n)
	push := func(at int, cost, from int32) {
		if cost >= f.cost[at] {
			return
		}
		f.cost[at], f.from[at] = cost, from
		for int(cost) >= len(heads) {
			heads = append(heads, -1)
		}
		next = append(next, heads[cost])
		node = append(node, int32(at))
		heads[cost] = int32(len(node) - 1)
	}
	for _, s := range starts {
		push(s.at, s.cost, -1)
	}
	for c := 0; c < len(heads); c++ {
		for heads[c] >= 0 {
			e := heads[c]
			heads[c] = next[e]
			at := int(node[e])
			if int(f.cost[at]) != c {
				continue
			}
			for d := range neighbours {
				to := at + step[d]
				if !t.open[to] {
					continue
				}
				contrast := t.contrast(to, aside[d])
				off := float64(t.drape[to])
				cost := long[d] * (baseCost + flatCost*(1-contrast)*(1-contrast) + placeCost*off*off)
				push(to, int32(c)+1+int32(cost), int32(at))
			}
		}
	}
	return f
}

func (t *terrain) contrast(at, aside int) float64 {
	c := float64(t.drape[at+aside]-t.drape[at-aside]) / 2
	return math.Max(0, math.Min(1, c))
}

// path is the border's samples in order.
func (t *terrain) path() ([]int, bool) {
	first := t.spread(t.gate(0))
	var past []arrival
	for _, a := range t.around() {
		if first.cost[a.at] < dearest {
			past = append(past, arrival{a.at, first.cost[a.at] + a.cost})
		}
	}
	if len(past) == 0 {
		return nil, false
	}
	second := t.spread(past)
	best := arrival{-1, dearest}
	for _, a := range t.gate(1) {
		if c := second.cost[a.at]; c < dearest && c+a.cost < best.cost {
			best = arrival{a.at, c + a.cost}
		}
	}
	if best.at < 0 {
		return nil, false
	}
	var way []int
	at := best.at
	for ; second.from[at] >= 0; at = int(second.from[at]) {
		way = append(way, at)
	}
	for ; first.from[at] >= 0; at = int(first.from[at]) {
		way = append(way, at)
	}
	way = append(way, at)
	for i, j := 0, len(way)-1; i < j; i, j = i+1, j-1 {
		way[i], way[j] = way[j], way[i]
	}
	return way, true
}

// astray is what it costs to lie a distance off a click.
func (t *terrain) astray(distance float64) int32 {
	x := 2 * distance / t.frame.slack
	return int32(costUnit * x * x / 2)
}

// gate is the samples at the level of a border click, near it.
func (t *terrain) gate(side int) []arrival {
	f := t.frame
	var all []arrival
	for k, open := range t.open {
		if !open {
			continue
		}
		along, over := f.at(t.pointAt(float64(k%t.w), float64(k/t.w)))
		off := math.Abs(over - f.side[side])
		if math.Abs(along-f.level[side]) <= 0.71*t.step && off <= f.slack+t.step {
			all = append(all, arrival{k, t.astray(off)})
		}
	}
	return all
}

// around is the samples near the crown click.
func (t *terrain) around() []arrival {
	f := t.frame
	var all []arrival
	for k, open := range t.open {
		if !open {
			continue
		}
		off := float64(t.pointAt(float64(k%t.w), float64(k/t.w)).Distance(f.seeds[1]))
		if off <= f.slack+t.step {
			all = append(all, arrival{k, t.astray(off)})
		}
	}
	return all
}
