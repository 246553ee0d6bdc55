package ruler

import (
	"cmp"
	"errors"
	"math"
	"slices"

	"ogive/geometry/plane"
)

// lengths is how far each tick reaches from the course to the side on which the
// long ones are longer, in spaces; NaN where it was not seen.
func (t *track) lengths() []float64 {
	var low, high []float64
	ends := make([]span, len(t.places))
	for i, x := range t.places {
		ends[i].contrast = math.NaN()
		gap, y := t.rule.spacing(t.first+i), t.course.at(x)
		if here := t.inked(x, y, gap); t.seen[i] && here > faint/2 {
			s := span{low: (y - t.end(x, y, -1, gap, here)) * lineStep / gap, high: (t.end(x, y, 1, gap, here) - y) * lineStep / gap, contrast: here}
			ends[i] = s
			low, high = append(low, s.low), append(high, s.high)
		}
	}
	downwards := spread(high) >= spread(low)
	out := make([]float64, len(ends))
	for i, e := range ends {
		switch {
		case math.IsNaN(e.contrast):
			out[i] = math.NaN()
		case downwards:
			out[i] = e.high
		default:
			out[i] = e.low
		}
	}
	return out
}

// spread is how far the longest tenth lies beyond the median.
func spread(lengths []float64) float64 {
	if len(lengths) == 0 {
		return 0
	}
	slices.Sort(lengths)
	return lengths[len(lengths)*95/100] - lengths[len(lengths)/2]
}

// between is the ticks from the one meant by the first click to the one meant by
// the last.
func (t *track) between() (Found, error) {
	start := float64(t.strip.before)
	first, doubtFirst, ok1 := t.meant(t.across(start))
	last, doubtLast, ok2 := t.meant(t.across(start + t.strip.length))
	if !ok1 || !ok2 {
		return Found{}, errors.New("an end of the ruler lies on none of its ticks; click both ends on ticks")
	}
	if last-first < 2 {
		return Found{}, errors.New("the two ends lie fewer than three ticks apart; click two ticks further from each other")
	}
	f := Found{Graduation: t.pattern.Graduation, Seen: slices.Clone(t.seen[first : last+1]), first: -doubtFirst, last: doubtLast}
	for i := first; i <= last; i++ {
		f.Ticks = append(f.Ticks, t.strip.tick(t.places[i], t.course))
	}
	return f, nil
}

// across is the column at which a tick crosses the course that reaches the line
// between the clicks at column x.
func (t *track) across(x float64) float64 {
	return x - t.course.lean*(float64(t.strip.middle)-t.course.at(x))
}

// tick is where a tick crosses the course, as a place in the photograph: the
// centre of a sample is half a sample from its edge.
func (s *strip) tick(x float64, c course) plane.PixelPoint { return s.pixel(x, c.at(x)) }

// How a click finds its tick: it misses by about missSD pixels, and a long tick
// is clicked the more often the longer it is, here as the logarithm of the odds
// (this project's own).
const missSD = 3.0

var oddsOfLong = []float64{0, 1.5, 3, 3.5, 4}

// meant is the place in the row of the tick that a click that
// lies at column x of the course most likely meant, and how many ticks further along another likely one lies (0: none).
func (t *track) meant(x float64) (place, other int, ok bool) {
	type candidate struct {
		place int
		cost  float64
	}
	var all []candidate
	for i, at := range t.places {
		d := math.Abs(at-x) * t.strip.shrink
		gap := t.rule.spacing(t.first+i) * t.strip.shrink
		if d > math.Max(3*missSD, 0.6*gap) {
			continue
		}
		odds := 0.0
		if p := t.pattern; p.Graduation != Unknown {
			odds = oddsOfLong[p.rank(i-p.zero)]
		}
		all = append(all, candidate{i, d*d/(2*missSD*missSD) - odds})
	}
	if len(all) == 0 {
		return 0, 0, false
	}
	slices.SortFunc(all, func(a, b candidate) int { return cmp.Compare(a.cost, b.cost) })
	if len(all) > 1 && all[1].cost-all[0].cost < 3 {
		other = all[1].place - all[0].place
	}
	return all[0].place, other, true
}
