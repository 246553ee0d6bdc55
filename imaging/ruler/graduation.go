package ruler

import (
	"math"
	"slices"
)

// Graduation is the pattern of long and short ticks (common practice, no
// source).
type Graduation int

// The graduations. On Millimetres each fifth tick is longer and each tenth
// longest; on HalfMillimetres each second, tenth and twentieth; on Sixteenths of
// an inch each second, fourth, eighth and sixteenth.
const (
	Unknown Graduation = iota
	Millimetres
	HalfMillimetres
	Sixteenths
)

// ranks lists, for each graduation, every how many ticks a longer kind comes.
var ranks = map[Graduation][]int{
	Millimetres:     {5, 10},
	HalfMillimetres: {2, 10, 20},
	Sixteenths:      {2, 4, 8, 16},
}

// step is the millimetres between two ticks.
func (g Graduation) step() float64 {
	switch g {
	case Millimetres:
		return 1
	case HalfMillimetres:
		return 0.5
	case Sixteenths:
		return 25.4 / 16
	}
	return 0
}

// rank is how long the tick is that lies number ticks from one of the longest: 0
// for the shortest kind.
func (g Graduation) rank(number int) int {
	rank := 0
	for i, every := range ranks[g] {
		if number%every == 0 {
			rank = i + 1
		}
	}
	return rank
}

// pattern is a graduation together with the number of one of its longest ticks.
type pattern struct {
	Graduation
	zero int
}

// fewestForPattern is the number of ticks below which no pattern is claimed.
const fewestForPattern = 12

// patternOf finds the graduation that explains most of how the lengths of the
// ticks differ; a length that is not known is NaN. It is Unknown where none
// explains at least explained of the variance, or two do about as well.
func patternOf(lengths []float64) pattern {
	const explained = 0.7
	lengths = limited(lengths)
	best, second := pattern{}, 0.0
	most := 0.0
	for _, g := range []Graduation{Millimetres, HalfMillimetres, Sixteenths} {
		period := ranks[g][len(ranks[g])-1]
		share, zero := 0.0, 0
		for z := range period {
			if s := explainedBy(g, z, lengths); s > share {
				share, zero = s, z
			}
		}
		if share > most {
			best, second, most = pattern{g, zero}, most, share
		} else {
			second = math.Max(second, share)
		}
	}
	if most < explained || most-second < 0.03 {
		return pattern{}
	}
	return best
}

// limited is the lengths with the longest ones, which may have run into a figure
// or the ruler's other edge, cut to twice the median.
func limited(lengths []float64) []float64 {
	var known []float64
	for _, l := range lengths {
		if !math.IsNaN(l) {
			known = append(known, l)
		}
	}
	if len(known) < fewestForPattern {
		return nil
	}
	slices.Sort(known)
	most := 2.5 * known[len(known)/2]
	out := slices.Clone(lengths)
	for i := range out {
		out[i] = math.Min(out[i], most)
	}
	return out
}

// explainedBy is the share of the variance of the lengths that lies between the
// ranks of the graduation, less what as many free numbers explain by chance. It
// is 0 where a higher rank is shorter.
func explainedBy(g Graduation, zero int, lengths []float64) float64 {
	kinds := len(ranks[g]) + 1
	count, sum, squares := make([]float64, kinds), make([]float64, kinds), make([]float64, kinds)
	var n, total, all float64
	for i, l := range lengths {
		if math.IsNaN(l) {
			continue
		}
		k := g.rank(i - zero)
		count[k]++
		sum[k] += l
		squares[k] += l * l
		n++
		total += l
		all += l * l
	}
	spread := all - total*total/n
	if !(spread > 0) || n < fewestForPattern {
		return 0
	}
	within, free, before := 0.0, 0.0, 0.0
	for k := range kinds {
		if count[k] == 0 {
			continue
		}
		mean := sum[k] / count[k]
		if mean < before*0.97 {
			return 0
		}
		before = mean
		within += squares[k] - sum[k]*mean
		free++
	}
	return 1 - within/(n-free)*(n-1)/spread
}
