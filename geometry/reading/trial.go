package reading

import (
	"fmt"
	"math"
	"math/rand/v2"

	"ogive/geometry/arch"
	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/geometry/scale"
)

// trial computes the figures of one web many times, each time with an arch,
// joints and a map that are as likely as the best ones.
type trial struct {
	marks  hand.Marks
	joints joints
	web    hand.Web
	fit    scale.Fit
	back   scale.Back // of the best map
	fitted arch.Fitted
	trace  trace
	pixel  plane.Millimetre // the size of a pixel at the crown
}

// What a tracer may put in or out by along a whole border, as a standard
// deviation in pixels: blur and the shading of the skin towards its border
// shift every point alike, which no fit can see. On phantoms the mean offset of
// a border disperses by 0.17 px (go run ./cmd/dev accuracy); half as much again
// is allowed for skins and lenses that are not among them.
const borderSD = 0.25

// leanSD is the same for one end of a straight border against its other end.
const leanSD = 0.15

// Trials is the number of times each figure is computed.
const trials = 300

// figures are those of one trial; ok marks the ones that could be computed.
type figures struct {
	index, depth               float64
	span, rise, riseToSpan     float64
	flare, crownAngle          float64
	crownRadius, area          float64
	widths                     [len(widthsAt)]float64
	jointed, spanned, radiused bool
	wide                       [len(widthsAt)]bool
}

func (f figures) hasJoints() bool { return f.jointed }

// fill computes the best figures and their uncertainties into out.
func (t trial) fill(out *Web) {
	best := t.fitted.Best()
	out.Shape, out.ShapeSure, out.FitRMS = best.Arch.Shape, t.fitted.Sure, best.RMS
	out.ShapeAlso = t.alternatives()
	out.Crown = t.back.Pixel(best.Arch.Crown)
	for i, s := range best.Arch.Springings() {
		out.Springing[i] = t.back.Pixel(s)
	}
	out.Curve = t.curve(best.Arch)
	centre := t.figures(best.Arch, t.fit.Best, t.joints, nudge{})
	t.state(out, centre, t.draws(centre))
	if best.Arch.Shape == arch.Round || best.Arch.Shape == arch.U {
		out.CrownAngle.U95 = plane.Angle(math.Hypot(float64(out.CrownAngle.U95), float64(t.unseenPoint(best.Arch))))
	}
	t.explain(out, centre)
}

// unseenPoint is by how much less than 180 degrees the two sides of a crown that
// looks flat could meet, if the point lies in the few pixels that a lens does
// not resolve.
func (t trial) unseenPoint(a arch.Arch) plane.Angle {
	half := float64(a.Span()) / 2
	return 2 * plane.Radians(math.Atan2(arch.Unresolved/2*float64(t.pixel), half))
}

// alternatives are the shapes that explain the border about as well.
func (t trial) alternatives() []arch.Shape {
	if t.fitted.Sure {
		return nil
	}
	var also []arch.Shape
	for _, c := range t.fitted.Candidates[1:] {
		if c.Weight*math.E >= t.fitted.Best().Weight {
			also = append(also, c.Arch.Shape)
		}
	}
	return also
}

// curve is the arch as it appears on the photograph, its borders as long as the
// trace.
func (t trial) curve(a arch.Arch) []plane.PixelPoint {
	line := a.Polyline(max(t.trace.reach-a.Rise(), 0.5), max(t.pixel, 0.02))
	out := make([]plane.PixelPoint, len(line))
	for i, p := range line {
		out[i] = t.back.Pixel(p)
	}
	return out
}

// draws computes the figures of every trial. The numbers drawn are the same at
// every call, so that the same marks give the same figures.
func (t trial) draws(centre figures) []figures {
	rng := rand.New(rand.NewPCG(0x09e1, uint64(t.web)))
	out := make([]figures, trials)
	z := make([]float64, 6)
	for i := range out {
		for j := range z {
			z[j] = rng.NormFloat64()
		}
		shift := plane.Millimetre(borderSD*rng.NormFloat64()) * t.pixel
		a := t.fitted.Drawn((float64(i)+0.5)/trials, z).Widened(shift)
		joints := t.joints.missed(t.marks.ClickSD, rng)
		n := nudge{shift: float64(shift), noise: t.trace.noise, lean: t.lean() * rng.NormFloat64()}
		for j := range n.left {
			n.left[j], n.right[j] = rng.NormFloat64(), rng.NormFloat64()
		}
		n.crown, n.radius = rng.NormFloat64(), rng.NormFloat64()
		out[i] = t.figures(a, t.likelyMap(i), joints, n)
	}
	return out
}

func clickError(sd plane.Pixel, rng *rand.Rand) plane.Vector[plane.Pixel] {
	return plane.Vec(sd*plane.Pixel(rng.NormFloat64()), sd*plane.Pixel(rng.NormFloat64()))
}

// likelyMap spreads the trials evenly over the ensemble of maps.
func (t trial) likelyMap(i int) scale.Map {
	if len(t.fit.Likely) == 0 {
		return t.fit.Best
	}
	return t.fit.Likely[i*len(t.fit.Likely)/trials%len(t.fit.Likely)]
}

// figures computes every figure of the arch a, which is drawn on the plane of
// the best map, as it would be if m were the true map.
func (t trial) figures(a arch.Arch, m scale.Map, joints joints, n nudge) figures {
	onto := func(p plane.Position) plane.Position { return m.Position(t.back.Pixel(p)) }
	towards := func(p plane.Position, d plane.Vector[plane.Millimetre]) plane.Vector[plane.Millimetre] {
		return onto(p.Add(d)).Sub(onto(p))
	}
	crown, s := onto(a.Crown), a.Springings()
	left, right := onto(s[0]), onto(s[1])
	chord := right.Sub(left)
	borders, departures := a.Borders(), a.Departures()
	b0, b1 := towards(s[0], borders[0]), towards(s[1], borders[1])
	var f figures
	f.span = float64(chord.Norm())
	f.rise = math.Abs(float64(crown.Sub(left).Cross(chord.Direction())))
	if a.Shape == arch.V {
		f.span, f.rise = 0, 0
	}
	if f.span > 0.05 {
		f.riseToSpan, f.spanned = f.rise/f.span, true
	}
	f.flare = math.Copysign(b0.AngleTo(b1).Degrees()/2, a.Flare.Degrees()) + n.lean
	f.crownAngle = towards(a.Crown, departures[0]).AngleTo(towards(a.Crown, departures[1])).Degrees()
	if a.Shape == arch.V {
		f.crownAngle += 2 * n.lean
	}
	f.index, f.depth, f.jointed = joints.place(crown, m)
	t.trace.figures(&f, onto, n)
	at := t.back.Pixel(a.Crown)
	enlarged := float64(m.PerPixel(at) / t.fit.Best.PerPixel(at))
	f.area = t.trace.area*enlarged*enlarged + n.shift*t.trace.perimeter
	return f
}

// lean is the standard deviation in degrees with which the flare errs because a
// straight border may be traced askew.
func (t trial) lean() float64 {
	return plane.Radians(math.Atan2(leanSD*float64(t.pixel), math.Max(float64(t.trace.reach), 1))).Degrees()
}

// explain says why figures are missing or weak.
func (t trial) explain(out *Web, centre figures) {
	if !centre.jointed {
		out.warn(needsJoints(t.marks.View))
	}
	if !centre.radiused {
		out.lack("No crown radius: the crown is too flat or too short for one.")
	}
	if !centre.spanned {
		out.lack("No rise over span: a V has no span.")
	}
	if t.trace.reach < t.fitted.Best().Arch.Rise() {
		out.warn("The border ends before the arch does: trace it further along both fingers.")
	}
	for i, ok := range centre.wide {
		if !ok {
			out.lack(fmt.Sprintf("No width at %g mm: the border does not reach that far from the crown on both sides.", float64(widthsAt[i])))
		}
	}
}

func needsJoints(v hand.View) string {
	return fmt.Sprintf("No index and no depth: they need the %s and %s of both digits.", hand.MCP.Label(v), hand.PIP.Label(v))
}
