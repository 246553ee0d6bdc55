package propose

import "math"

// colour is light, red against green and blue against green, as logarithms: a
// change of light leaves the latter two alone.
type colour [3]float64

// darkest keeps the logarithm of a black pixel, which is all noise, from
// running away.
const darkest = 0.012

func colourOf(light [3]float64) colour {
	r, g, b := math.Log(light[0]+darkest), math.Log(light[1]+darkest), math.Log(light[2]+darkest)
	return colour{(r + g + b) / 3, r - g, b - g}
}

// class is what is known of the colours of skin or of drape: a normal
// distribution, its channels taken as independent.
type class struct {
	n            float64
	mean, spread colour
}

// shade and tint are how much colours are expected to vary beyond what a few
// samples show, as standard deviations: light by shadow and by shading.
const (
	shade = 0.25
	tint  = 0.05
)

func classOf(samples []colour) class {
	c := class{n: float64(len(samples))}
	for _, s := range samples {
		for i, x := range s {
			c.mean[i] += x / c.n
		}
	}
	for _, s := range samples {
		for i, x := range s {
			c.spread[i] += (x - c.mean[i]) * (x - c.mean[i]) / c.n
		}
	}
	for i, sd := range [3]float64{shade, tint, tint} {
		c.spread[i] += sd * sd
	}
	return c
}

// strange is the squared distance of x from the class, in its variances.
func (c class) strange(x colour) float64 {
	var d float64
	for i := range x {
		d += (x[i] - c.mean[i]) * (x[i] - c.mean[i]) / c.spread[i]
	}
	return d
}

// against is the logarithm of how much more likely x is in c than in other,
// limited so that no single sample decides.
func (c class) against(other class, x colour) float64 {
	d := other.strange(x) - c.strange(x)
	for i := range x {
		d += math.Log(other.spread[i] / c.spread[i])
	}
	return max(-certain, min(certain, d/2))
}

const certain = 6
