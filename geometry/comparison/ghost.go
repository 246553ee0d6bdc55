package comparison

import (
	"math"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/geometry/reading"
	"ogive/geometry/registration"
)

// Ghost is the other web as it comes to lie on the operated hand, on its plane
// and on its photograph.
type Ghost struct {
	Registration registration.Similarity
	Crown        plane.Position
	CrownPixel   plane.PixelPoint
	// Curve is the fitted arch with its borders, empty where none was fitted.
	Curve      []plane.Position
	CurvePixel []plane.PixelPoint
}

// leastContrary is the residual below which nothing is said against the hands
// named: fingers spread a little otherwise leave as much (this project's own).
const leastContrary plane.Millimetre = 5

// register brings the other web onto the operated hand, by MCP and PIP of the
// two digits, and their tips where both photographs have them.
func (p *pair) register(out *Web, w, o reading.Web) error {
	var from, to []plane.Position
	for _, l := range p.shared(out.Web) {
		from, to = append(from, p.other.Scale.Best.Position(l.other)), append(to, p.operated.Scale.Best.Position(l.operated))
	}
	fit, contrary := registration.Fit, registration.FitMirrored
	if p.mirrored {
		fit, contrary = contrary, fit
	}
	s, err := fit(from, to)
	if err != nil {
		return err
	}
	if c, err := contrary(from, to); err == nil && c.RMS < s.RMS/3 && s.RMS > leastContrary {
		out.warn("The landmarks agree far better the other way round: check which hand is named on each photograph, and in which view.")
	}
	p.squares += float64(s.RMS*s.RMS) * float64(len(from))
	p.landmarks += len(from)
	back := p.operated.Scale.Best.Back()
	g := &Ghost{Registration: s, Crown: s.Position(p.other.Scale.Best.Position(o.Crown))}
	g.CrownPixel = back.Pixel(g.Crown)
	g.Curve = s.Positions(p.other.Scale.Best.Positions(o.Curve))
	for _, q := range g.Curve {
		g.CurvePixel = append(g.CurvePixel, back.Pixel(q))
	}
	out.Ghost, out.Overlay = g, p.overlay(w, g)
	return nil
}

func (p *pair) rms() plane.Millimetre {
	if p.landmarks == 0 {
		return plane.Millimetre(math.NaN())
	}
	return plane.Millimetre(math.Sqrt(p.squares / float64(p.landmarks)))
}

// landmark is one joint as it lies on both photographs.
type landmark struct{ operated, other plane.PixelPoint }

func (p *pair) shared(w hand.Web) []landmark {
	var out []landmark
	radial, ulnar := w.Digits()
	for _, d := range []hand.Digit{radial, ulnar} {
		for _, j := range []hand.Joint{hand.MCP, hand.PIP, hand.Tip} {
			a, okA := p.operated.Marks.Joint(d, j)
			b, okB := p.other.Marks.Joint(d, j)
			if okA && okB {
				out = append(out, landmark{a, b})
			}
		}
	}
	return out
}
