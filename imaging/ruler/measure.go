package ruler

import (
	"math"
	"slices"
)

// span is how far a tick reaches along itself, in lines of the strip, and how
// strong it is.
type span struct{ number, column, low, high, contrast float64 }

// spans looks along each tick, both ways from the course, for where it ends.
func (t *track) spans(numbers []numbered) []span {
	var out []span
	for _, n := range numbers {
		y := t.course.at(n.at)
		gap := t.rule.spacing(n.number)
		here := t.inked(n.at, y, gap)
		if here < faint/2 {
			continue
		}
		out = append(out, span{float64(n.number), n.at, t.end(n.at, y, -1, gap, here), t.end(n.at, y, 1, gap, here), here})
	}
	return out
}

// inked is how much the strip differs at a tick from what it is on both sides.
func (t *track) inked(x, y, gap float64) float64 {
	x += t.course.lean * (y - t.course.at(x))
	side := (t.strip.at(x-0.45*gap, y) + t.strip.at(x+0.45*gap, y)) / 2
	return float64(t.sign * (t.strip.at(x, y) - side))
}

// end is where a tick ends in the direction step, to a part of a line.
func (t *track) end(x, y float64, step int, gap, here float64) float64 {
	before := here
	last := float64(len(t.strip.lines) - 1)
	for {
		next := y + float64(step)
		if next < 0 || next > last {
			return y
		}
		now := t.inked(x, next, gap)
		if now < here/2 {
			return y + float64(step)*(before-here/2)/math.Max(before-now, 1e-9)
		}
		y, before = next, now
	}
}

// centre lays the course half way along the short ticks, and finds by how much
// the ticks lean.
func (t *track) centre(numbers []numbered) bool {
	spans := t.spans(numbers)
	if len(spans) < 3 {
		return false
	}
	lengths := make([]float64, len(spans))
	for i, s := range spans {
		lengths[i] = s.high - s.low
	}
	slices.Sort(lengths)
	short := lengths[len(lengths)*3/10]
	var at, middle []float64
	for _, s := range spans {
		if l := s.high - s.low; l < 1.2*short+0.5 && l > 0.6*short-0.5 {
			at = append(at, s.column)
			middle = append(middle, (s.low+s.high)/2)
		}
	}
	if len(at) < 2 {
		return false
	}
	slope := medianSlope(at, middle)
	start := make([]float64, len(at))
	for i := range at {
		start[i] = middle[i] - slope*at[i]
	}
	slices.Sort(start)
	c := course{start: start[len(start)/2], slope: slope, half: math.Max(0.3*short, 0.5), lean: t.course.lean}
	// The lean found is that of ticks against the lines of the strip.
	t.course = c
	t.course.lean = t.leaning(numbers, short)
	return true
}

// leaning is the median shift of the ticks from a quarter of their length to
// three quarters, per line.
func (t *track) leaning(numbers []numbered, short float64) float64 {
	d := 0.3 * short
	if d < 1 {
		return 0
	}
	up, down := t.course, t.course
	up.half, down.half = math.Max(0.12*short, 0.5), math.Max(0.12*short, 0.5)
	up.lean, down.lean = 0, 0
	up.start -= d
	down.start += d
	above, below := t.strip.profile(up), t.strip.profile(down)
	var shifts []float64
	for _, n := range numbers {
		gap := t.rule.spacing(n.number)
		a, okA := settle(above, n.at-t.course.lean*d, gap, t.sign)
		b, okB := settle(below, n.at+t.course.lean*d, gap, t.sign)
		if okA && okB {
			shifts = append(shifts, (b-a)/(2*d))
		}
	}
	if len(shifts) < 3 {
		return t.course.lean
	}
	slices.Sort(shifts)
	return shifts[len(shifts)/2]
}

// medianSlope is the median of the slopes between points half the row apart
// (after Theil and Sen, with fewer pairs).
func medianSlope(x, y []float64) float64 {
	h := (len(x) + 1) / 2
	var slopes []float64
	for i := 0; i+h < len(x); i++ {
		if x[i+h] != x[i] {
			slopes = append(slopes, (y[i+h]-y[i])/(x[i+h]-x[i]))
		}
	}
	if len(slopes) == 0 {
		return 0
	}
	slices.Sort(slopes)
	return slopes[len(slopes)/2]
}

// settle finds a tick near x to a fraction of a sample: where the profile, less
// the straight line between the middles of the spaces on both sides, is most
// like a bell of about the width of a tick. Found by Newton's method.
func settle(light []float32, x, gap float64, sign float32) (float64, bool) {
	width := math.Min(math.Max(0.14*gap, 0.9), 4)
	reach := math.Min(0.5*gap, 3*width)
	start := x
	for range 12 {
		left, right := sampled(light, x-0.5*gap), sampled(light, x+0.5*gap)
		var slope, bend, sum float64
		for i := int(math.Ceil(x - reach)); float64(i) <= x+reach; i++ {
			if i < 0 || i >= len(light) {
				continue
			}
			d := float64(i) - x
			ink := float64(sign) * (float64(light[i]) - (left + (right-left)*(d/gap+0.5)))
			w := d / width
			bell := math.Exp(-w * w / 2)
			sum += bell * ink
			slope += bell * w * ink
			bend += bell * (w*w - 1) * ink
		}
		if sum < faint/2*width || bend >= 0 {
			return x, false
		}
		step := -slope / bend * width
		x += min(max(step, -0.25*gap), 0.25*gap)
		if math.Abs(x-start) > 0.4*gap {
			return x, false
		}
		if math.Abs(step) < 1e-3 {
			return x, true
		}
	}
	return x, true
}

func sampled(light []float32, x float64) float64 {
	x = min(max(x, 0), float64(len(light)-1)-1e-6)
	i := int(x)
	u := x - float64(i)
	return (1-u)*float64(light[i]) + u*float64(light[i+1])
}

// measure places every tick that the rule foretells on the strip, and takes the
// place the rule gives for those that are not seen there.
func (t *track) measure() {
	light := t.strip.profile(t.course)
	t.place(light)
	var numbers []numbered
	for i, ok := range t.seen {
		if ok {
			numbers = append(numbers, numbered{t.first + i, t.places[i]})
		}
	}
	if r, ok := fitRule(numbers, t.rule.spacing(t.rule.origin)); ok {
		t.rule = r
		t.place(light)
	}
	t.discardStrays()
}

func (t *track) place(light []float32) {
	t.places, t.seen = nil, nil
	low, high := t.rule.number(1), t.rule.number(float64(t.strip.columns-2))
	if !(high >= low && high-low < float64(t.strip.columns)) {
		return // foreshortened beyond all rulers: nothing is placed
	}
	first, last := int(math.Ceil(low)), int(math.Floor(high))
	t.first = first
	for k := first; k <= last; k++ {
		x, ok := settle(light, t.rule.at(k), t.rule.spacing(k), t.sign)
		if !ok {
			x = t.rule.at(k)
		}
		t.places, t.seen = append(t.places, x), append(t.seen, ok)
	}
}

// discardStrays takes a place for not seen where it is off the rule by more than
// the rest explains.
func (t *track) discardStrays() {
	var off []float64
	for i, ok := range t.seen {
		if ok {
			off = append(off, math.Abs(t.places[i]-t.rule.at(t.first+i)))
		}
	}
	if len(off) == 0 {
		return
	}
	slices.Sort(off)
	t.noise = 1.4826 * off[len(off)/2]
	limit := math.Max(4*t.noise, 0.15)
	for i := range t.seen {
		if want := t.rule.at(t.first + i); t.seen[i] && math.Abs(t.places[i]-want) > limit {
			t.places[i], t.seen[i] = want, false
		}
	}
}

// enough reports whether most of the ticks between the clicks were seen.
func (t *track) enough() bool {
	all, seen := 0, 0
	for i, x := range t.places {
		if x > float64(t.strip.before)-2 && x < float64(t.strip.before)+t.strip.length+2 {
			all++
			if t.seen[i] {
				seen++
			}
		}
	}
	return all >= 3 && seen >= 3 && float64(seen) >= 0.5*float64(all)
}
