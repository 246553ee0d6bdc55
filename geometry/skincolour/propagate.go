package skincolour

import (
	"math"
	"math/rand/v2"
	"slices"
	"sync"
)

// trials is how often chance is drawn (JCGM 101:2008, with fewer trials than
// it advises: the figure has to follow a dragged patch, and two digits of an
// uncertainty are enough).
const trials = 2000

// role says which of two samples a draw is for.
type role int

const (
	first role = iota
	second
)

// draw is one set of errors, in units of their standard uncertainty.
type draw struct {
	skin    [2][3]float64
	uneven  [2]float64
	balance [2][4]float64 // three channels and the level
}

// draws are the same on every machine and for every figure.
var draws = sync.OnceValue(func() []draw {
	rng := rand.New(rand.NewPCG(7, 2005))
	out := make([]draw, trials)
	for i := range out {
		d := &out[i]
		for r := range 2 {
			for k := range d.skin[r] {
				d.skin[r][k] = rng.NormFloat64()
			}
			d.uneven[r] = rng.NormFloat64()
			for k := range d.balance[r] {
				d.balance[r][k] = rng.NormFloat64()
			}
		}
	}
	return out
})

// of is the colour that a sample of that light may have had in truth, under the
// given errors of its balance.
func (d *draw) of(s Sample, c Light, r role, balance [4]float64) Lab {
	level := Unevenness*d.uneven[r] + s.Balance.Level*balance[3]
	gain := func(channel int) float64 { return math.Exp(level + s.Balance.Channels*balance[channel]) }
	out := Light{c.R * gain(0), c.G * gain(1), c.B * gain(2)}.Lab()
	out.L += s.Spread.L * d.skin[r][0]
	out.A += s.Spread.A * d.skin[r][1]
	out.B += s.Spread.B * d.skin[r][2]
	return out
}

// ninetyFifth is the figure that 95 per cent of the misses do not exceed.
func ninetyFifth(misses []float64) float64 {
	if slices.ContainsFunc(misses, math.IsNaN) {
		return math.NaN()
	}
	slices.Sort(misses)
	return misses[int(math.Ceil(0.95*float64(len(misses))))-1]
}
