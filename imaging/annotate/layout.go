package annotate

import (
	"math"
	"slices"
)

// box is a rectangle on the picture.
type box struct{ left, top, right, bottom float64 }

func boxAt(x, y, w, h float64) box { return box{x, y, x + w, y + h} }

func (b box) width() float64      { return b.right - b.left }
func (b box) height() float64     { return b.bottom - b.top }
func (b box) centre() spot        { return spot{(b.left + b.right) / 2, (b.top + b.bottom) / 2} }
func (b box) grown(d float64) box { return box{b.left - d, b.top - d, b.right + d, b.bottom + d} }
func (b box) meets(c box) bool {
	return b.left < c.right && c.left < b.right && b.top < c.bottom && c.top < b.bottom
}
func (b box) within(c box) bool {
	return b.left >= c.left && b.top >= c.top && b.right <= c.right && b.bottom <= c.bottom
}
func (b box) nearest(q spot) spot {
	return spot{clamp(q.x, b.left, b.right), clamp(q.y, b.top, b.bottom)}
}
func (b box) distance(q spot) float64 { return q.sub(b.nearest(q)).length() }

func clamp(x, low, high float64) float64 { return math.Min(math.Max(x, low), high) }

// note is a card that wants a place: its size, the spot it speaks of, and the
// direction in which it would best lie (zero: any).
type note struct {
	w, h    float64
	anchor  spot
	towards spot
}

// grounds is where notes may be placed.
type grounds struct {
	field box
	em    float64
	// keep are spots that are never covered.
	keep []spot
	// spare is not covered either, unless there is no other room.
	spare []box
	// busy says how much a box would cover of what is better seen, lines how
	// much of it a leader would cross.
	busy, lines *cover
}

// placement is where a note lies; found is false where there was no room.
type placement struct {
	box   box
	found bool
}

// Costs of a place, in ems of way from the anchor.
const (
	costOfWay      = 0.55
	costOfBack     = 5.0  // lying proximal of the web
	costOfCrossing = 14.0 // leader across another leader
	costOfPassing  = 10.0 // leader over another kept spot
	costOfLeader   = 0.8  // share of what a leader runs over
	gainOfLine     = 1.6  // standing level with another note
)

// arrange finds places for the notes: inside the field, apart from each other,
// clear of every kept spot, and otherwise where they cover and cross the least.
// Each in turn takes the best place, then each again, knowing the others.
func (g grounds) arrange(notes []note) []placement {
	places := make([]placement, len(notes))
	for range 3 {
		for i := range notes {
			places[i] = g.best(i, notes, places, g.spare)
			if !places[i].found {
				places[i] = g.best(i, notes, places, nil)
			}
		}
	}
	return places
}

func (g grounds) best(i int, notes []note, places []placement, spare []box) placement {
	n := notes[i]
	least, best := math.Inf(1), placement{}
	step := g.em / 2
	inner := g.field.grown(-g.em / 2)
	for y := inner.top; y+n.h <= inner.bottom; y += step {
		for x := inner.left; x+n.w <= inner.right; x += step {
			b := boxAt(x, y, n.w, n.h)
			if !g.free(b, i, places) || slices.ContainsFunc(spare, b.meets) {
				continue
			}
			if c := g.cost(b, i, notes, places, least); c < least {
				least, best = c, placement{b, true}
			}
		}
	}
	return best
}

// free reports whether b covers no kept spot and no other note.
func (g grounds) free(b box, i int, places []placement) bool {
	for _, k := range g.keep {
		if b.distance(k) < clearance*g.em {
			return false
		}
	}
	for j, p := range places {
		if j != i && p.found && p.box.meets(b.grown(g.em/2)) {
			return false
		}
	}
	return true
}

// clearance is the least distance, in ems, from a note to a kept spot.
const clearance = 1.2

// cost is how bad b is for note i. It stops early above limit.
func (g grounds) cost(b box, i int, notes []note, places []placement, limit float64) float64 {
	n := notes[i]
	c := costOfWay*b.distance(n.anchor)/g.em + g.busy.under(b)
	c += costOfBack * (1 - b.centre().sub(n.anchor).unit().dot(n.towards)) / 2
	if c-gainOfLine >= limit {
		return c
	}
	end := b.nearest(n.anchor)
	for _, k := range g.keep {
		if k != n.anchor && distanceToLine(k, n.anchor, end) < g.em {
			c += costOfPassing
		}
	}
	c += costOfLeader * g.crossed(n.anchor, end)
	level := false
	for j, p := range places {
		if j == i || !p.found {
			continue
		}
		level = level || math.Abs(p.box.top-b.top) < 1e-6
		other := p.box.nearest(notes[j].anchor)
		if cross(n.anchor, end, notes[j].anchor, other) {
			c += costOfCrossing
		}
		if lineMeets(n.anchor, end, p.box) || lineMeets(notes[j].anchor, other, b) {
			c += costOfCrossing
		}
	}
	if level {
		c -= gainOfLine
	}
	return c
}

// crossed is what a leader from the anchor to end runs over, but for the
// nearest surroundings of the anchor.
func (g grounds) crossed(anchor, end spot) float64 {
	d := end.sub(anchor)
	n := int(d.length() / (g.em / 2))
	sum := 0.0
	for i := 4; i <= n; i++ {
		q := anchor.to(end, float64(i)/float64(n))
		sum += g.lines.under(box{q.x, q.y, q.x, q.y}.grown(g.em/2)) / 2
	}
	return sum
}

// distanceToLine is the distance from q to the straight line between a and b.
func distanceToLine(q, a, b spot) float64 {
	d := b.sub(a)
	t := 0.0
	if dd := d.dot(d); dd > 0 {
		t = clamp(q.sub(a).dot(d)/dd, 0, 1)
	}
	return q.sub(a.to(b, t)).length()
}

// cross reports whether the lines ab and cd cross.
func cross(a, b, c, d spot) bool {
	turn := func(p, q, r spot) float64 { return q.sub(p).square().dot(r.sub(p)) }
	return turn(a, b, c)*turn(a, b, d) < 0 && turn(c, d, a)*turn(c, d, b) < 0
}

// lineMeets reports whether the line ab passes through r.
func lineMeets(a, b spot, r box) bool {
	low, high := 0.0, 1.0
	clip := func(from, step, least, most float64) bool {
		if step == 0 {
			return from >= least && from <= most
		}
		t0, t1 := (least-from)/step, (most-from)/step
		low, high = math.Max(low, math.Min(t0, t1)), math.Min(high, math.Max(t0, t1))
		return low <= high
	}
	return clip(a.x, b.x-a.x, r.left, r.right) && clip(a.y, b.y-a.y, r.top, r.bottom)
}
