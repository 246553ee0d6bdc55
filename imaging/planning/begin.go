package planning

import (
	"math"

	"ogive/geometry/arch"
	"ogive/geometry/flap"
	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/geometry/skinbudget"
	"ogive/geometry/zigzag"
	"ogive/imaging/planfile"
	"ogive/imaging/wording"
)

// BeginFlap is a flap to begin with for the planned arch a: dorsal by the thirds
// rule on the back of the hand where the rule can be used, else palmar from the
// arch, with the reason. Girths,
// where known, tell how thick the web is that a palmar flap must line.
func (h Hand) BeginFlap(w hand.Web, a arch.Arch, hourglass bool, girths *planfile.Girths) (*planfile.Flap, string) {
	withdrawn := flap.ThirdsRule(h.Ground.Marks, h.Ground.Absent, w)
	frame, ok := h.Ground.Frame(w)
	if h.Ground.Marks.View == hand.Dorsal && withdrawn == nil && ok && a.Span() > 0 {
		return h.kept(flap.Dorsal(frame, flap.WidthsFor(a.Span(), hourglass))), ""
	}
	reason := "The arch has no span to take a dorsal flap's widths from; the flap is taken from the arch instead."
	switch {
	case h.Ground.Marks.View == hand.Palmar:
		reason = "The photograph shows the palm, so the flap is a palmar one, taken from the arch."
	case withdrawn != nil:
		reason = wording.Sentence(withdrawn.Error()) + "."
	}
	return h.BeginPalmarFlap(a, girths), reason
}

// BeginPalmarFlap is a palmar flap to begin with: as long as it takes to line a
// web as thick as the digits, or as the span is wide where their girths are not
// known, at the middle of the usual slopes. On a photograph of the back it is
// drawn only as far as the present web, where that was read: beyond it there is
// no skin between the digits to take it from.
func (h Hand) BeginPalmarFlap(a arch.Arch, girths *planfile.Girths) *planfile.Flap {
	thickness := max(a.Span(), usualWidth/2)
	if girths != nil {
		if g, _ := girthsOf(*girths); g.Radial.Value > 0 && g.Ulnar.Value > 0 {
			thickness = (g.Radial.Value + g.Ulnar.Value) / (2 * math.Pi)
		}
	}
	length := flap.FloorLength(thickness, h.usualSlope())
	if present, ok := h.presentCrown(h.webAt(a)); ok && h.Ground.Marks.View == hand.Dorsal {
		length = min(length, max(present.Sub(a.Crown).Dot(a.Axis), leastJoin))
	}
	return h.kept(flap.Palmar(a, length, usualWidth))
}

// usualWidth is the width of a palmar flap for a V, which has no span.
const usualWidth plane.Millimetre = 8

func (h Hand) usualSlope() plane.Angle {
	if band, ok := h.Table.Band("slope", hand.WebView); ok {
		return plane.Degrees((band.Low + band.High) / 2)
	}
	return plane.RightAngle / 2
}

func (h Hand) kept(f flap.Flap) *planfile.Flap {
	return &planfile.Flap{Kind: f.Kind, Outline: h.pixels(f.Outline)}
}

func (h Hand) pixels(ps []plane.Position) []plane.PixelPoint {
	back := h.Ground.Fit.Best.Back()
	out := make([]plane.PixelPoint, len(ps))
	for i, p := range ps {
		out[i] = back.Pixel(p)
	}
	return out
}

// BeginZigzag is a zigzag to begin with: it reaches to the middle of each digit,
// with as many flaps as make their tips nearest to 60 degrees (common practice,
// no source). Where the joints don't tell the digits' middles it reaches as far
// as half the join.
func (h Hand) BeginZigzag(w hand.Web, join [2]plane.PixelPoint) *planfile.Zigzag {
	j := h.join(join)
	reach := j.Length() / 2
	if frame, ok := h.Ground.Frame(w); ok {
		reach = (frame.Apart() + frame.PIP[1].Sub(frame.PIP[0]).Dot(frame.Across())) / 2
	}
	reach = max(reach, leastReach)
	period := reach * plane.Millimetre((plane.RightAngle / 3).Tan())
	flaps := math.Round(float64(j.Length()/period)) - 1
	return h.Zigzag(join, int(min(max(flaps, 1), zigzag.MostFlaps)), reach, false)
}

// Beyond is the part of the join that lies distal to the flap, where the zigzags
// begin. It is the whole join where there is no dorsal flap, or where the flap
// does not end on it.
func (h Hand) Beyond(join [2]plane.PixelPoint, f *planfile.Flap) [2]plane.PixelPoint {
	if f == nil || f.Kind != flap.DorsalFlap {
		return join
	}
	j := h.join(join)
	axis, tip := j.To.Sub(j.From).Direction(), plane.Millimetre(0)
	for _, p := range h.Ground.Fit.Best.Positions(f.Outline) {
		tip = max(tip, p.Sub(j.From).Dot(axis))
	}
	if tip >= j.Length() {
		return join
	}
	return [2]plane.PixelPoint{h.pixels([]plane.Position{j.From.Add(axis.Scale(float64(tip)))})[0], join[1]}
}

// leastReach is a reach below which a zigzag is a straight line.
const leastReach plane.Millimetre = 1

// Zigzag is the regular zigzag with that number of flaps and that reach on both
// faces, interdigitating.
func (h Hand) Zigzag(join [2]plane.PixelPoint, flaps int, reach plane.Millimetre, right bool) *planfile.Zigzag {
	z := zigzag.Regular(h.join(join), flaps, reach, right)
	return &planfile.Zigzag{Dorsal: h.pixels(z.Points), Palmar: h.pixels(z.Opposite().Points)}
}

func (h Hand) join(ends [2]plane.PixelPoint) zigzag.Join {
	m := h.Ground.Fit.Best
	return zigzag.Join{From: m.Position(ends[0]), To: m.Position(ends[1])}
}

// widthU95 is the U95 of a finger's width by callipers or on the screen (common
// practice, no source).
const widthU95 plane.Millimetre = 1

// girthsOf is the girths, and whether one of them was told from a width.
func girthsOf(g planfile.Girths) (out skinbudget.Girths, fromWidth bool) {
	one := func(g planfile.Girth) plane.Estimate[plane.Millimetre] {
		switch {
		case g.Taped > 0:
			return skinbudget.Taped(g.Taped)
		case g.Width > 0:
			fromWidth = true
			return skinbudget.FromWidth(plane.Estimate[plane.Millimetre]{Value: g.Width, U95: widthU95})
		}
		return plane.Estimate[plane.Millimetre]{}
	}
	out.Radial, out.Ulnar = one(g.Radial), one(g.Ulnar)
	return out, fromWidth
}
