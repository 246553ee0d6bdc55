package phantom

import (
	"math"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
)

// digit is one digit in hand coordinates. Distances t along it run from its MCP
// joint distally.
type digit struct {
	mcp   point
	axis  vector
	bones [3]plane.Millimetre // MCP to PIP, PIP to DIP, DIP to tip
	// base is half the width that the straight borders have at the MCP joint;
	// they come closer by taper, each.
	base  plane.Millimetre
	taper plane.Angle
	// straight is how far the border of each flank stays a straight line.
	straight map[flank]plane.Millimetre
}

// proportions of a digit, by the length MCP to PIP of the middle finger.
type proportions struct {
	bones [3]float64
	half  float64 // half the width midway between MCP and PIP
	taper float64 // degrees
	mcp   float64 // how far the MCP joint lies distal to the middle one
}

// Lengths of the bones: Buryanov A, Kotiuk V. Int J Morphol 2010;28:755-8 (from
// memory), the last one lengthened by the pulp. Widths, tapers and the line of
// the knuckles: common practice, no source.
var adult = map[hand.Digit]proportions{
	hand.Thumb:       {[3]float64{0.71, 0.56, 0}, 0.215, 1.2, 0},
	hand.IndexFinger: {[3]float64{0.89, 0.50, 0.43}, 0.203, 1.1, -0.06},
	hand.Middle:      {[3]float64{1, 0.59, 0.46}, 0.206, 1.0, 0},
	hand.Ring:        {[3]float64{0.925, 0.575, 0.46}, 0.194, 1.0, -0.11},
	hand.Little:      {[3]float64{0.735, 0.41, 0.41}, 0.168, 1.1, -0.31},
}

// newDigit is digit d of a hand of that size and build, in no place yet.
func newDigit(d hand.Digit, size plane.Millimetre, build plane.Ratio) digit {
	p := adult[d]
	f := digit{taper: plane.Degrees(p.taper), straight: map[flank]plane.Millimetre{}}
	for i, b := range p.bones {
		f.bones[i] = size * plane.Millimetre(b)
	}
	f.base = size*plane.Millimetre(p.half*float64(build)) + f.bones[0]/2*plane.Millimetre(f.taper.Tan())
	f.straight[radial], f.straight[ulnar] = 0.9*f.bones[0], 0.9*f.bones[0]
	return f
}

// at is the position t distal to the MCP joint on the digit's axis.
func (f digit) at(t plane.Millimetre) point { return f.mcp.Add(f.axis.Scale(float64(t))) }

func (f digit) pip() point { return f.at(f.bones[0]) }
func (f digit) dip() point { return f.at(f.bones[0] + f.bones[1]) }

func (f digit) length() plane.Millimetre { return f.bones[0] + f.bones[1] + f.bones[2] }
func (f digit) tip() point               { return f.at(f.length()) }

// lineHalf is half the width at t between the straight borders.
func (f digit) lineHalf(t plane.Millimetre) plane.Millimetre {
	return f.base - t*plane.Millimetre(f.taper.Tan())
}

// half is half the width at t on that flank: the straight border, and beyond it
// the joints and the phalanges.
func (f digit) half(t plane.Millimetre, s flank) plane.Millimetre {
	end := f.straight[s]
	if t <= end {
		return f.lineHalf(t)
	}
	blend := plane.Millimetre(smoothstep(float64((t - end) / (0.3 * f.bones[0]))))
	line := f.lineHalf(min(t, end+0.3*f.bones[0]))
	return line + blend*(f.fullness(t)-line)
}

// fullness is half the width of a finger that bulges at its joints.
func (f digit) fullness(t plane.Millimetre) plane.Millimetre {
	l := f.bones[0]
	pip, dip, tip := l, l+f.bones[1], f.length()
	ref := f.lineHalf(l)
	knots := [][2]float64{
		{float64(0.8 * l), 1.0}, {float64(pip), 1.035}, {float64((pip + dip) / 2), 0.945},
		{float64(dip), 0.93}, {float64(dip + 0.35*(tip-dip)), 0.87}, {float64(tip), 0.8},
	}
	if f.bones[2] == 0 { // a thumb: its second bone is the last
		knots = [][2]float64{{float64(0.7 * l), 0.97}, {float64(pip), 1.04}, {float64(pip + 0.5*f.bones[1]), 1.0}, {float64(tip), 0.9}}
	}
	return ref * plane.Millimetre(throughKnots(knots, float64(t)))
}

// tipStart is where the rounding of the tip begins.
func (f digit) tipStart() plane.Millimetre {
	return f.length() - 1.35*f.fullness(f.length())
}

// flankPoint is where the border of flank s lies at t.
func (f digit) flankPoint(t plane.Millimetre, s flank) point {
	return f.at(t).Add(towards(f.axis, s).Scale(float64(f.half(t, s))))
}

// flankLine lists the border of flank s from t to where the tip begins.
func (f digit) flankLine(from plane.Millimetre, s flank, step plane.Millimetre) []point {
	to := f.tipStart()
	n := divisions(to-from, step)
	line := make([]point, 0, n+1)
	for i := 0; i <= n; i++ {
		line = append(line, f.flankPoint(from+(to-from)*plane.Millimetre(i)/plane.Millimetre(n), s))
	}
	return line
}

// tipLine lists the rounded tip from the radial to the ulnar flank, both ends
// left out.
func (f digit) tipLine(step plane.Millimetre) []point {
	start := f.tipStart()
	reach := f.length() - start
	hr, hu := f.half(start, radial), f.half(start, ulnar)
	n := divisions(plane.Millimetre(math.Pi)*hr, step)
	line := make([]point, 0, n)
	for i := 1; i < n; i++ {
		s, c := math.Sincos(math.Pi * float64(i) / float64(n))
		// A tip is a little squarer than half an ellipse.
		along := reach * plane.Millimetre(math.Pow(s, 0.95))
		across := plane.Millimetre(math.Copysign(math.Pow(math.Abs(c), 0.88), c))
		half := hr
		if across < 0 {
			half = hu
		}
		line = append(line, f.at(start+along).Add(towards(f.axis, radial).Scale(float64(across*half))))
	}
	return line
}

// along is how far distal of the MCP joint p lies.
func (f digit) along(p point) plane.Millimetre { return p.Sub(f.mcp).Dot(f.axis) }

// across is how far to the ulnar side of the axis p lies.
func (f digit) across(p point) plane.Millimetre { return p.Sub(f.mcp).Dot(towards(f.axis, ulnar)) }

func smoothstep(x float64) float64 {
	x = math.Max(0, math.Min(1, x))
	return x * x * x * (10 - x*(15-6*x))
}

// throughKnots interpolates (x, y) knots by a cubic Hermite curve with the
// slopes of Catmull and Rom, level beyond the ends.
func throughKnots(k [][2]float64, x float64) float64 {
	n := len(k)
	if x <= k[0][0] {
		return k[0][1]
	}
	if x >= k[n-1][0] {
		return k[n-1][1]
	}
	i := 0
	for x > k[i+1][0] {
		i++
	}
	slope := func(j int) float64 {
		if j == 0 || j == n-1 {
			return 0
		}
		return (k[j+1][1] - k[j-1][1]) / (k[j+1][0] - k[j-1][0])
	}
	h := k[i+1][0] - k[i][0]
	u := (x - k[i][0]) / h
	v := 1 - u
	return k[i][1]*v*v*(1+2*u) + slope(i)*h*u*v*v + k[i+1][1]*u*u*(1+2*v) - slope(i+1)*h*u*u*v
}
