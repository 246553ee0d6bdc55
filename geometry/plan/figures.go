package plan

import (
	"fmt"
	"math"
	"math/rand/v2"

	"ogive/geometry/arch"
	"ogive/geometry/drawn"
	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/geometry/scale"
)

// Read is what a, which lies on the plane of g.Fit.Best, would measure as the
// web w. Uncertainty is found by propagating distributions (JCGM 101:2008): the
// figures are computed again for joints as the observer may have missed them
// and for maps as likely as the best one. An arch that is drawn has no error of
// tracing.
func Read(a arch.Arch, w hand.Web, g Ground, b Beside) Figures {
	out := Figures{Web: w}
	t := trial{ground: g, joints: g.jointsOf(w), at: seenAt(a, g.Fit.Best.Back()), arch: a}
	t.fill(&out)
	if out.Index == nil {
		out.Remarks = append(out.Remarks, g.lacking(w))
	}
	out.judge(a, g, b)
	return out
}

// lacking says why there is neither index nor depth.
func (g Ground) lacking(w hand.Web) string {
	v := g.Marks.View
	return fmt.Sprintf("No index and no depth: they need the %s and %s of both digits.", hand.MCP.Label(v), hand.PIP.Label(v))
}

// seen is an arch by places on the photograph, which any map can take back to
// millimetres.
type seen struct {
	crown, left, right   plane.PixelPoint
	borderL, borderR     plane.PixelPoint // a little beyond the springings
	departedL, departedR plane.PixelPoint // a little beyond the crown
}

func seenAt(a arch.Arch, back scale.Back) seen {
	s, borders, departures := a.Springings(), a.Borders(), a.Departures()
	f := frame{a}
	corner := [2]plane.Position{f.at(-a.Flat/2, 0), f.at(a.Flat/2, 0)}
	return seen{
		crown: back.Pixel(a.Crown), left: back.Pixel(s[0]), right: back.Pixel(s[1]),
		borderL: back.Pixel(s[0].Add(borders[0])), borderR: back.Pixel(s[1].Add(borders[1])),
		departedL: back.Pixel(corner[0].Add(departures[0])), departedR: back.Pixel(corner[1].Add(departures[1])),
	}
}

// trials is how often each figure is computed: twice as often as in package
// reading, where each trial costs more.
const trials = 600

// trial computes the figures of one arch many times.
type trial struct {
	ground Ground
	joints joints
	at     seen
	arch   arch.Arch
}

// figure numbers the figures of a trial.
const (
	index = iota
	depth
	span
	rise
	riseToSpan
	flare
	crownAngle
	figureCount
)

type figures [figureCount]float64

func (t trial) fill(out *Figures) {
	best := t.figures(t.ground.Fit.Best, t.joints)
	off := t.offsets(best)
	u95 := func(i int) float64 { return drawn.Upper95(off[i]) }
	if t.joints.all {
		out.Index = &plane.Estimate[plane.Ratio]{Value: plane.Ratio(best[index]), U95: plane.Ratio(u95(index))}
		out.Depth = &plane.Estimate[plane.Millimetre]{Value: plane.Millimetre(best[depth]), U95: plane.Millimetre(u95(depth))}
	}
	if t.arch.Shape != arch.V {
		out.Span = &plane.Estimate[plane.Millimetre]{Value: t.arch.Span(), U95: plane.Millimetre(u95(span))}
		out.Rise = &plane.Estimate[plane.Millimetre]{Value: t.arch.Rise(), U95: plane.Millimetre(u95(rise))}
		out.RiseToSpan = &plane.Estimate[plane.Ratio]{Value: plane.Ratio(t.arch.Rise() / t.arch.Span()), U95: plane.Ratio(u95(riseToSpan))}
	}
	out.Flare = &plane.Estimate[plane.Angle]{Value: t.arch.Flare, U95: plane.Angle(u95(flare))}
	out.CrownAngle = &plane.Estimate[plane.Angle]{Value: t.arch.CrownAngle(), U95: plane.Angle(u95(crownAngle))}
}

// offsets are the distances of every figure from the best one. The numbers
// drawn are the same at every call, so that the same plan has the same figures
// and a dragged handle moves them smoothly.
func (t trial) offsets(best figures) [figureCount][]float64 {
	var off [figureCount][]float64
	for i := range off {
		off[i] = make([]float64, 0, trials)
	}
	rng := rand.New(rand.NewPCG(0x91a9, 600))
	likely := t.ground.Fit.Likely
	for i := range trials {
		m := t.ground.Fit.Best
		if len(likely) > 0 {
			m = likely[i*len(likely)/trials%len(likely)]
		}
		got := t.figures(m, t.joints.missed(t.ground.Marks.ClickSD, rng))
		for k := range got {
			if d := math.Abs(got[k] - best[k]); !math.IsNaN(d) {
				off[k] = append(off[k], d)
			}
		}
	}
	return off
}

// figures are those of the arch as it would lie if m were the true map.
func (t trial) figures(m scale.Map, j joints) figures {
	var f figures
	crown, left, right := m.Position(t.at.crown), m.Position(t.at.left), m.Position(t.at.right)
	f[index], f[depth] = j.place(crown, m)
	chord := right.Sub(left)
	f[span] = float64(chord.Norm())
	f[rise] = math.Abs(float64(crown.Sub(left).Cross(chord.Direction())))
	f[riseToSpan] = f[rise] / f[span]
	between := m.Position(t.at.borderL).Sub(left).AngleTo(m.Position(t.at.borderR).Sub(right))
	f[flare] = math.Copysign(float64(between)/2, float64(t.arch.Flare))
	f[crownAngle] = float64(t.crownAngle(m, crown))
	return f
}

// crownAngle is the angle between the two sides where they leave the crown, or
// the ends of its flat.
func (t trial) crownAngle(m scale.Map, crown plane.Position) plane.Angle {
	if t.arch.Flat == 0 {
		return m.Position(t.at.departedL).Sub(crown).AngleTo(m.Position(t.at.departedR).Sub(crown))
	}
	return 2 * plane.RightAngle // a straight flat stays straight under any map
}
