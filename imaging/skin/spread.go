package skin

import (
	"math"
	"slices"

	"ogive/geometry/skincolour"
)

// samples are the pixels of a spot by channel.
type samples [3][]float32

func (s *samples) add(r, g, b float32) {
	s[0], s[1], s[2] = append(s[0], r), append(s[1], g), append(s[2], b)
}

func (s *samples) count() int { return len(s[0]) }

// median is that of each channel: hairs, pores and gloss don't move it.
func (s *samples) median() (out light) {
	for i, channel := range s {
		out[i] = float64(median(channel))
	}
	return out
}

func median[T ~float32 | ~float64](list []T) T {
	if len(list) == 0 {
		return 0
	}
	slices.Sort(list)
	n := len(list)
	return (list[n/2] + list[(n-1)/2]) / 2
}

// deviation is the standard deviation as the median of the distances from the
// median tells it (1.4826 makes it that of a normal distribution).
func deviation(list []float64) float64 {
	middle := median(list)
	for i, x := range list {
		list[i] = math.Abs(x - middle)
	}
	return 1.4826 * median(list)
}

// leastSpread is the least standard uncertainty of a coordinate, for a patch
// whose parts happen to agree (this project's own).
const leastSpread = 0.2

// spread is how much the colour changes from part to part of a spot. It is not
// divided by the root of the number of pixels: the colour changes over the skin,
// and a spot a little aside would have given another.
func (s *Sampler) spread(parts [parted]light) skincolour.Lab {
	var l, a, b []float64
	for _, part := range parts {
		c := s.colour(part)
		l, a, b = append(l, c.L), append(a, c.A), append(b, c.B)
	}
	return skincolour.Lab{
		L: max(leastSpread, deviation(l)), A: max(leastSpread, deviation(a)), B: max(leastSpread, deviation(b)),
	}
}

// unsteadiness is how much the light changes over a neutral patch, as a part of
// itself: all channels together, and each against the others.
func (r reading) unsteadiness() (level, channels float64) {
	var levels []float64
	var apart [3][]float64
	for _, part := range r.parts {
		together := 0.0
		for i, v := range part {
			together += v / r.median[i] / 3
		}
		levels = append(levels, together)
		for i, v := range part {
			apart[i] = append(apart[i], v/r.median[i]/together)
		}
	}
	for i := range apart {
		channels = max(channels, deviation(apart[i]))
	}
	return deviation(levels), channels
}
