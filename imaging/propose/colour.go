package propose

import "math"

// colour is light, red against green and blue against green, as logarithms: a
// change of light leaves the latter two alone.
type colour [3]float64

// darkest keeps the logarithm of a black pixel, which is all noise, from
// running away.
const darkest = 0.012

func colourOf(light [3]float64) colour {
	r, g, b := logarithm(light[0]+darkest), logarithm(light[1]+darkest), logarithm(light[2]+darkest)
	return colour{(r + g + b) / 3, r - g, b - g}
}

// light is the three channels, the inverse of colourOf.
func (c colour) light() [3]float64 {
	g := c[0] - (c[1]+c[2])/3
	return [3]float64{math.Exp(g+c[1]) - darkest, math.Exp(g) - darkest, math.Exp(g+c[2]) - darkest}
}

// logarithm is that of a positive normal number to about 0.0002, which is plenty
// for a pixel and quicker.
func logarithm(x float64) float64 {
	bits := math.Float64bits(x)
	return float64(int(bits>>52)-1023)*math.Ln2 + logarithms[bits>>(52-logBits)&(1<<logBits-1)]
}

const logBits = 11

var logarithms = func() (t [1 << logBits]float64) {
	for i := range t {
		t[i] = math.Log(1 + (float64(i)+0.5)/(1<<logBits))
	}
	return t
}()

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

// groove reports whether a class is nothing but darker than the skin: it is then
// the groove between joined fingers, or a shadow on them.
func (c class) groove(skin class) bool {
	const tinted, lighter = 0.15, 0.4
	return math.Hypot(c.mean[1]-skin.mean[1], c.mean[2]-skin.mean[2]) < tinted && c.mean[0]-skin.mean[0] < lighter
}

// against is a function of a colour: the logarithm of how much more likely it is
// in c than in other, limited so that no single sample decides.
func (c class) against(other class) func(colour) float64 {
	var spread float64
	for i := range c.spread {
		spread += math.Log(other.spread[i] / c.spread[i])
	}
	return func(x colour) float64 {
		return max(-certain, min(certain, (other.strange(x)-c.strange(x)+spread)/2))
	}
}

const certain = 6
