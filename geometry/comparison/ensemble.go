package comparison

import (
	"math"
	"math/rand/v2"
	"slices"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
)

// trials is how often the sizes are taken anew to learn their uncertainty.
const trials = 300

// sizing is how one size is taken from a photograph.
type sizing struct {
	digit    hand.Digit
	of       Measure
	from, to float64
	marked   []plane.PixelPoint
	// missed is marked, moved as the observer or the tracer may have missed it.
	missed func(*rand.Rand) []plane.PixelPoint
	length func([]plane.Position) plane.Millimetre
}

// ensemble is all sizes on one photograph: the best ones, and trials in each of
// which all are taken through one likely map with their points moved (JCGM
// 101:2008). So what a tilt does to all digits alike is seen as such.
type ensemble struct {
	best   []plane.Millimetre
	likely [trials][]plane.Millimetre
}

// take takes all sizes; the numbers drawn are the same at every call.
func (p Photograph) take(list []sizing) *ensemble {
	e := &ensemble{}
	for _, s := range list {
		e.best = append(e.best, s.length(p.Scale.Best.Positions(s.marked)))
	}
	rng := rand.New(rand.NewPCG(0x517e, uint64(p.Marks.Side)))
	for i := range e.likely {
		m := p.Scale.Best
		if n := len(p.Scale.Likely); n > 0 {
			m = p.Scale.Likely[i*n/trials%n]
		}
		for _, s := range list {
			e.likely[i] = append(e.likely[i], s.length(m.Positions(s.missed(rng))))
		}
	}
	return e
}

// size is the size number n.
func (e *ensemble) size(n int) plane.Estimate[plane.Millimetre] {
	of := func(sizes []plane.Millimetre) float64 { return float64(sizes[n]) }
	return plane.Estimate[plane.Millimetre]{Value: e.best[n], U95: plane.Millimetre(e.spread(of))}
}

// proportion is the logarithm of the size number n over the geometric mean of
// others: how large the digit is in its own hand. Scale and tilt, which act on
// all digits nearly alike, drop out of it.
func (e *ensemble) proportion(n int, others []int) (value, u95 float64) {
	of := func(sizes []plane.Millimetre) float64 {
		sum := math.Log(float64(sizes[n]))
		for _, o := range others {
			sum -= math.Log(float64(sizes[o])) / float64(len(others))
		}
		return sum
	}
	return of(e.best), e.spread(of)
}

// spread is the distance from the best value within which 95 per cent of the
// trials lie.
func (e *ensemble) spread(of func([]plane.Millimetre) float64) float64 {
	best := of(e.best)
	off := make([]float64, trials)
	for i, sizes := range e.likely {
		off[i] = math.Abs(of(sizes) - best)
	}
	slices.Sort(off)
	return off[trials*95/100-1]
}

func missedBy(sd plane.Pixel, rng *rand.Rand) plane.Vector[plane.Pixel] {
	return plane.Vec(sd*plane.Pixel(rng.NormFloat64()), sd*plane.Pixel(rng.NormFloat64()))
}

// length is how the length of a digit is taken from joint to joint.
func (p Photograph) length(d hand.Digit, of Measure) (sizing, bool) {
	joints := []hand.Joint{hand.MCP, hand.PIP}
	if of == ToTip {
		joints = append(joints, hand.Tip)
	}
	marked, ok := p.chain(d, joints...)
	missed := func(rng *rand.Rand) []plane.PixelPoint {
		out := slices.Clone(marked)
		for i := range out {
			out[i] = out[i].Add(missedBy(p.Marks.ClickSD, rng))
		}
		return out
	}
	return sizing{digit: d, of: of, marked: marked, missed: missed, length: along}, ok
}
