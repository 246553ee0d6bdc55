package ruler

import (
	"math"
	"slices"
)

// track is a row of ticks followed along the strip.
type track struct {
	strip  *strip
	course course
	sign   float32
	rule   rule
	first  int // number of the first tick in places
	// places holds the column of each tick, and seen whether it was seen there.
	places  []float64
	seen    []bool
	noise   float64 // of a seen tick, samples
	pattern pattern
}

// follow goes along the ticks of a row. Their first course runs along the line
// of the row; from where the ticks then prove to begin and end, a better one
// follows, which runs half way along the short ticks.
func (s *strip) follow(seed row) (track, bool) {
	t := track{strip: s, sign: seed.sign, course: course{start: float64(seed.line), half: 1}}
	numbers := chain(seed.ticks, seed.gap)
	for round := 0; ; round++ {
		ok := false
		if t.rule, ok = fitRule(numbers, seed.gap); !ok {
			return t, false
		}
		if round == 3 {
			break
		}
		before := t.course
		if !t.centre(numbers) {
			return t, false
		}
		if round > 0 && t.course.near(before, float64(s.columns)) {
			break
		}
		r := readRow(s.profile(t.course), float64(t.sign))
		if len(r.ticks) < 3 {
			return t, false
		}
		// The gap of the row alone would be wrong where the new course crosses
		// other marks, and the old one where it crossed only long ticks.
		if r.coverage > 0.3 {
			seed.gap = r.gap
		}
		numbers = chain(r.ticks, seed.gap)
	}
	t.measure()
	t.pattern = patternOf(t.lengths())
	return t, t.enough()
}

// followEither follows the ticks of a row, or what lies between them: where
// ticks are closer than the lens can tell apart, the light hardly says which is
// which. The pattern of long ticks does, and so do the clicks.
func (s *strip) followEither(seed row) (track, bool) {
	t, ok := s.follow(seed)
	if ok && t.pattern.Graduation != Unknown {
		return t, true
	}
	other := readRow(s.profile(course{start: float64(seed.line), half: 1}), -float64(seed.sign))
	other.line, other.sign = seed.line, -seed.sign
	if other.coverage < 0.5*seed.coverage || !other.alike(seed) {
		return t, ok
	}
	u, okOther := s.follow(other)
	if !okOther || ok && u.evidence() <= t.evidence()+2*seed.narrow {
		return t, ok
	}
	return u, true
}

// evidence is, as a logarithm of odds, what speaks for these being ticks: there
// is a pattern of long ones, and both clicks lie on one.
func (t *track) evidence() float64 {
	sum := 0.0
	if t.pattern.Graduation != Unknown {
		sum = 6
	}
	for _, x := range []float64{float64(t.strip.before), float64(t.strip.before) + t.strip.length} {
		number := t.rule.number(t.across(x))
		off := math.Abs(number-math.Round(number)) * t.rule.spacing(int(number)) * t.strip.shrink
		sum -= off * off / (2 * missSD * missSD)
	}
	return sum
}

// numbered is a tick with its number along the ruler, counted from any of them.
type numbered struct {
	number int
	at     float64
}

// chain numbers the ticks that are a gap apart from each other: from the longest
// regular run on, both ways, over places where ticks are missing and past marks
// that are none.
func chain(ps []peak, gap float64) []numbered {
	begin, end := longestRun(ps, gap)
	if end-begin < 2 {
		return nil
	}
	var run []numbered
	for k := begin; k <= end; k++ {
		run = append(run, numbered{k - begin, ps[k].at})
	}
	run = extend(run, ps[end+1:])
	back := slices.Clone(ps[:begin])
	slices.Reverse(back)
	slices.Reverse(run)
	run = extend(run, back)
	slices.SortFunc(run, func(a, b numbered) int { return a.number - b.number })
	return run
}

func longestRun(ps []peak, gap float64) (begin, end int) {
	from := 0
	for k := 1; k < len(ps); k++ {
		if math.Abs(ps[k].at-ps[k-1].at-gap) > math.Max(alike*gap, 0.75) {
			from = k
		}
		if k-from > end-begin {
			begin, end = from, k
		}
	}
	return begin, end
}

// mostMissing is the number of ticks in a row that may be hidden.
const mostMissing = 8

// extend goes on from the last of the run, in the direction in which it runs, to
// the peaks ahead, nearest first.
func extend(run []numbered, ahead []peak) []numbered {
	step := 1
	if run[len(run)-1].number < run[0].number {
		step = -1
	}
	for missing, k := 0, 0; k < len(ahead) && missing <= mostMissing; {
		last := run[len(run)-1]
		early := run[max(0, len(run)-7)]
		gap := (last.at - early.at) / float64(last.number-early.number) * float64(step)
		ways := (ahead[k].at - last.at) / gap
		next := int(math.Round(ways))
		switch {
		case next > mostMissing:
			return run
		case next >= 1 && math.Abs(ways-float64(next)) < math.Max(0.2, 0.8/math.Abs(gap)):
			run = append(run, numbered{last.number + step*next, ahead[k].at})
		}
		k++
	}
	return run
}
