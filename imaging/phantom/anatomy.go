package phantom

import (
	"fmt"
	"math"

	"ogive/geometry/arch"
	"ogive/geometry/hand"
	"ogive/geometry/plane"
)

// basalCrease is where the most proximal basal digital crease lies between the
// MCP and the PIP joint (common practice, no source).
const basalCrease = 0.4

// anatomy is the whole hand in hand coordinates.
type anatomy struct {
	size   plane.Millimetre
	view   hand.View
	digits map[hand.Digit]*digit
	webs   map[hand.Web]webArch
}

// newAnatomy builds the hand of a filled case from the middle finger outwards:
// each web is fixed to the border already there, and fixes the border of the
// next finger.
func newAnatomy(c Case) (*anatomy, error) {
	a := &anatomy{size: c.Size, view: c.View, digits: map[hand.Digit]*digit{}, webs: map[hand.Web]webArch{}}
	middle := newDigit(hand.Middle, c.Size, c.Build)
	middle.axis = plane.Vec[plane.Millimetre](0, 1)
	a.digits[hand.Middle] = &middle
	for _, step := range []struct {
		web        hand.Web
		from, next hand.Digit
		side       flank
	}{
		{hand.ThirdWeb, hand.Middle, hand.Ring, ulnar},
		{hand.FourthWeb, hand.Ring, hand.Little, ulnar},
		{hand.SecondWeb, hand.Middle, hand.IndexFinger, radial},
	} {
		j := joining{a: a, from: *a.digits[step.from], next: newDigit(step.next, c.Size, c.Build),
			side: step.side, level: c.Size * plane.Millimetre(adult[step.next].mcp), shape: c.Webs[step.web]}
		web, next, err := j.solve()
		if err != nil {
			return nil, fmt.Errorf("phantom: %v: %w", step.web, err)
		}
		a.webs[step.web], a.digits[step.next] = web, &next
	}
	a.straighten()
	thumb := a.thumb(c.Build)
	a.digits[hand.Thumb] = &thumb
	return a, nil
}

// joining is the search for the place of a web and of the finger beyond it.
type joining struct {
	a          *anatomy
	from, next digit
	side       flank
	level      plane.Millimetre // y of the next MCP joint
	shape      WebShape
}

// solve finds the flare that puts the knuckles at a natural distance, unless
// the flare is given, and the place that gives the wanted index.
func (j joining) solve() (webArch, digit, error) {
	if j.shape.Flare > 0 {
		return j.withFlare(j.shape.Flare)
	}
	natural := float64(j.from.base+j.next.base) * 1.12
	low, high := plane.Degrees(3), plane.Degrees(20)
	for range 40 {
		flare := (low + high) / 2
		_, next, err := j.withFlare(flare)
		if err != nil {
			return webArch{}, digit{}, err
		}
		if math.Abs(float64(next.mcp.X-j.from.mcp.X)) > natural {
			low = flare
		} else {
			high = flare
		}
	}
	// A whole number of small steps: the last digits of a search may differ
	// between machines, the picture must not.
	const step = 1.0 / (1 << 24)
	return j.withFlare(plane.Radians(math.Round(float64(low)/step) * step))
}

// withFlare slides the arch along the border until the index is as wanted.
func (j joining) withFlare(flare plane.Angle) (webArch, digit, error) {
	if j.shape.Shape == arch.Gothic && flare >= j.shape.Turn {
		return webArch{}, digit{}, fmt.Errorf("the flare of %.3g degrees is no less than the turn of %.3g", flare.Degrees(), j.shape.Turn.Degrees())
	}
	web := shaped(j.shape, flare)
	low, high := -1.5*j.a.size, 2.5*j.a.size
	var next digit
	for range 60 {
		mid := (low + high) / 2
		web, next = j.place(web, mid)
		if j.a.index(web.crown, j.from, next) < j.shape.Index {
			low = mid
		} else {
			high = mid
		}
	}
	if got := j.a.index(web.crown, j.from, next); math.Abs(float64(got-j.shape.Index)) > 1e-9 {
		return webArch{}, digit{}, fmt.Errorf("no place of the web has the index %.3g; give one nearer to 0.5", float64(j.shape.Index))
	}
	return web, next, nil
}

// place puts the springing of web s along the border of the finger that is
// there, and the next finger against the web's other border.
func (j joining) place(web webArch, s plane.Millimetre) (webArch, digit) {
	near := j.from.mcp.Add(towards(j.from.axis, j.side).Scale(float64(j.from.base)))
	border := j.from.axis.Turned(plane.Angle(j.side) * j.from.taper)
	web.axis = border.Turned(-plane.Angle(j.side) * web.flare)
	beside := towards(web.axis, j.side)
	web.crown = near.Add(border.Scale(float64(s))).
		Add(beside.Scale(float64(web.halfSpan()))).Add(web.axis.Scale(-float64(web.rise())))

	next := j.next
	next.axis = web.border(j.side).Turned(plane.Angle(j.side) * next.taper)
	out := towards(next.axis, j.side)
	foot := web.springing(j.side).Add(out.Scale(float64(next.base)))
	slant := next.axis.Add(out.Scale(next.taper.Tan()))
	t := (foot.Y - j.level) / slant.Y
	next.mcp = foot.Add(slant.Scale(-float64(t)))
	return web, next
}

// index is the web index of a crown between two digits, by the landmarks of the
// view.
func (a *anatomy) index(crown point, f, g digit) plane.Ratio {
	return (a.indexOf(crown, f) + a.indexOf(crown, g)) / 2
}

func (a *anatomy) indexOf(crown point, f digit) plane.Ratio {
	zero := a.zero(f)
	return plane.Ratio((f.along(crown) - zero) / (f.bones[0] - zero))
}

// zero is the distance from the MCP joint to where the index is zero.
func (a *anatomy) zero(f digit) plane.Millimetre {
	if a.view == hand.Palmar {
		return basalCrease * f.bones[0]
	}
	return 0
}

// straighten keeps the borders straight well past the springings.
func (a *anatomy) straighten() {
	for _, w := range measured {
		web := a.webs[w]
		r, u := w.Digits()
		for _, side := range []struct {
			f *digit
			s flank
		}{{a.digits[r], radial}, {a.digits[u], ulnar}} {
			f := side.f
			past := min(1.2*2*web.halfSpan(), 0.35*f.bones[0])
			if web.shape == arch.V {
				past = 0.35 * f.bones[0]
			}
			// The radial springing of the web lies on the ulnar flank of its radial digit.
			end := f.along(web.springing(side.s)) + past
			f.straight[-side.s] = min(max(f.straight[-side.s], end), f.tipStart()-0.35*f.bones[0])
		}
	}
}

// thumb is placed by eye: the first web does not follow the family of arches.
func (a *anatomy) thumb(build plane.Ratio) digit {
	f := newDigit(hand.Thumb, a.size, build)
	index := a.digits[hand.IndexFinger]
	distal := plane.Vec[plane.Millimetre](0, 1)
	lean := index.axis.AngleTo(distal)
	f.axis = distal.Turned(max(plane.Degrees(30), 0.7*lean+plane.Degrees(24)))
	carpus := plane.Pt(-0.3*a.size, -1.36*a.size)
	f.mcp = carpus.Add(f.axis.Turned(plane.Degrees(9)).Scale(0.95 * float64(a.size)))
	return f
}
