package comparison

import (
	"math/rand/v2"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/geometry/reading"
	"ogive/geometry/scale"
)

// Photograph is one photograph of a hand as it was read.
type Photograph struct {
	Marks hand.Marks
	// Scale is the fit that the photograph was read by. Where it is zero the size
	// of a pixel stands in, which sees no tilt.
	Scale   scale.Fit
	Reading reading.Reading
}

// scaled is the photograph with a scale, that of its pixel size if it has none.
// The size of a pixel is the root of an area, which a tilt shortens by half as
// much as the length that lies along it; so its uncertainty counts twice.
func (p Photograph) scaled() Photograph {
	if p.Scale.Best != (scale.Map{}) {
		return p
	}
	square := func(k float64) scale.Map { return scale.Map{H: [9]float64{k, 0, 0, 0, k, 0, 0, 0, 1}} }
	per := p.Reading.PerPixel
	p.Scale = scale.Fit{Method: p.Reading.Method, Best: square(float64(per.Value))}
	rng := rand.New(rand.NewPCG(0xf1a7, 0))
	for range trials {
		p.Scale.Likely = append(p.Scale.Likely, square(float64(per.Value)+2*float64(per.U95)/1.96*rng.NormFloat64()))
	}
	return p
}

// phalanx is the mean length from MCP to PIP of the two digits of a web.
func (p Photograph) phalanx(w hand.Web) (plane.Millimetre, bool) {
	radial, ulnar := w.Digits()
	r, okR := p.chain(radial, hand.MCP, hand.PIP)
	u, okU := p.chain(ulnar, hand.MCP, hand.PIP)
	if !okR || !okU {
		return 0, false
	}
	mean := (along(p.Scale.Best.Positions(r)) + along(p.Scale.Best.Positions(u))) / 2
	return mean, mean > 0
}

// chain is those joints of a digit, if all of them are marked.
func (p Photograph) chain(d hand.Digit, joints ...hand.Joint) ([]plane.PixelPoint, bool) {
	var out []plane.PixelPoint
	for _, j := range joints {
		at, ok := p.Marks.Joint(d, j)
		if !ok {
			return nil, false
		}
		out = append(out, at)
	}
	return out, true
}

// along is the length of a line from point to point.
func along(line []plane.Position) plane.Millimetre {
	sum := plane.Millimetre(0)
	for i := 1; i < len(line); i++ {
		sum += line[i].Distance(line[i-1])
	}
	return sum
}
