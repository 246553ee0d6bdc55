package comparison

import (
	"fmt"
	"math"
	"slices"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/geometry/scale"
)

// flat is the photograph with a plane, that of its pixel size if it has none.
func (p Photograph) flat() Photograph {
	if p.Plane == (scale.Map{}) {
		k := float64(p.Reading.PerPixel.Value)
		p.Plane = scale.Map{H: [9]float64{k, 0, 0, 0, k, 0, 0, 0, 1}}
	}
	return p
}

// phalanx is the mean length from MCP to PIP of the two digits of a web.
func (p Photograph) phalanx(w hand.Web) (plane.Millimetre, bool) {
	radial, ulnar := w.Digits()
	r, okR := p.length(radial, hand.MCP, hand.PIP)
	u, okU := p.length(ulnar, hand.MCP, hand.PIP)
	mean := (r.Value + u.Value) / 2
	return mean, okR && okU && mean > 0
}

// length is the distance between two joints of a digit. Its uncertainty is that
// of placing both and of the scale. The size of a pixel is the root of an area,
// which a tilt shortens by half as much as the length that lies along it; so
// the scale counts twice.
func (p Photograph) length(d hand.Digit, from, to hand.Joint) (plane.Estimate[plane.Millimetre], bool) {
	a, okA := p.Marks.Joint(d, from)
	b, okB := p.Marks.Joint(d, to)
	if !okA || !okB {
		return plane.Estimate[plane.Millimetre]{}, false
	}
	l := p.Plane.Position(a).Distance(p.Plane.Position(b))
	perPixel := p.Reading.PerPixel
	placing := 1.96 * math.Sqrt2 * float64(p.Marks.ClickSD) * float64(perPixel.Value)
	scaling := 2 * float64(perPixel.U95/perPixel.Value) * float64(l)
	return plane.Estimate[plane.Millimetre]{Value: l, U95: plane.Millimetre(math.Hypot(placing, scaling))}, true
}

// sizes warns of every digit beside the webs that is longer than its fellow
// beyond uncertainty: a slight overgrowth, or growth between two sittings.
func (p *pair) sizes(webs []Web) []string {
	var out []string
	for _, d := range digitsOf(webs) {
		for _, s := range [][2]hand.Joint{{hand.MCP, hand.PIP}, {hand.PIP, hand.Tip}} {
			a, okA := p.operated.length(d, s[0], s[1])
			b, okB := p.other.length(d, s[0], s[1])
			if okA && okB {
				out = append(out, p.size(d, s, *difference(&a, &b))...)
			}
		}
	}
	if !p.mirrored && len(out) > 0 {
		out = append(out, "The hand has changed in size between the sittings: compare its index, not its millimetres.")
	}
	return out
}

func (p *pair) size(d hand.Digit, s [2]hand.Joint, longer plane.Estimate[plane.Millimetre]) []string {
	if math.Abs(float64(longer.Value)) <= float64(longer.U95) {
		return nil
	}
	on, than := "operated hand", "other hand"
	if !p.mirrored {
		on, than = "first photograph", "second"
	}
	if longer.Value < 0 {
		on, than = than, on
	}
	view := p.operated.Marks.View
	text := fmt.Sprintf("The %s digit is longer from %s to %s on the %s than on the %s, by %.1f ± %.1f mm",
		d, s[0].Label(view), s[1].Label(view), on, than, math.Abs(float64(longer.Value)), float64(longer.U95))
	if p.mirrored {
		text += ": it may be a slight overgrowth; look again before any separation"
	}
	return []string{text + "."}
}

func digitsOf(webs []Web) []hand.Digit {
	var out []hand.Digit
	for _, w := range webs {
		radial, ulnar := w.Web.Digits()
		out = append(out, radial, ulnar)
	}
	slices.Sort(out)
	return slices.Compact(out)
}
