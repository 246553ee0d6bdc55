// Package deviation tells how far a digit bends sideways at its PIP joint.
//
//	for _, d := range deviation.Of(marks, fit) {
//		d.Digit, d.Angle // positive towards the ulnar side, with its uncertainty
//		d.Towards()      // ulnar, radial, or none that can be told
//	}
package deviation

import (
	"math"
	"math/rand/v2"
	"slices"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/geometry/scale"
)

// Deviation is the angle at the PIP joint of a digit between the line from MCP
// to PIP and the line from PIP to the tip: 0 where the digit is straight,
// positive where it bends towards the ulnar side.
type Deviation struct {
	Digit hand.Digit
	Angle plane.Estimate[plane.Angle]
}

// Direction is the side a digit bends to.
type Direction int

// The directions. NoneTold: a straight digit lies within the interval.
const (
	NoneTold Direction = iota
	Ulnar
	Radial
)

// Towards is the side the digit bends to beyond its uncertainty.
func (d Deviation) Towards() Direction {
	switch {
	case d.Angle.Low() > 0:
		return Ulnar
	case d.Angle.High() < 0:
		return Radial
	}
	return NoneTold
}

// trials is how often each angle is computed anew.
const trials = 300

// Of is the deviation of every digit with MCP, PIP and tip marked in the dorsal
// or the palmar view, from radial to ulnar. In the web view there is none. A
// finger that is flexed or turned shows an angle that is no deviation; a
// photograph can't tell the two apart.
//
// The uncertainty is that of three clicks and of the scale's map, by propagating
// distributions (JCGM 101:2008).
func Of(m hand.Marks, fit scale.Fit) []Deviation {
	if m.View != hand.Dorsal && m.View != hand.Palmar {
		return nil
	}
	var out []Deviation
	for _, d := range hand.Digits {
		at, ok := joints(m, d)
		if !ok {
			continue
		}
		if a, ok := angle(at, fit.Best); ok {
			value := clockwise(m) * a
			u := spread(at, a, m.ClickSD, fit, d)
			out = append(out, Deviation{d, plane.Estimate[plane.Angle]{Value: value, U95: u}})
		}
	}
	return out
}

// clockwise is 1 where a turn clockwise on the photograph leads to the ulnar
// side, as on the back of a right hand, and -1 where it leads to the radial one.
func clockwise(m hand.Marks) plane.Angle {
	if (m.Side == hand.Right) == (m.View == hand.Dorsal) {
		return 1
	}
	return -1
}

func joints(m hand.Marks, d hand.Digit) (at [3]plane.PixelPoint, ok bool) {
	for i, j := range []hand.Joint{hand.MCP, hand.PIP, hand.Tip} {
		if at[i], ok = m.Joint(d, j); !ok {
			return at, false
		}
	}
	return at, true
}

// angle is the turn from the proximal to the distal part, positive clockwise.
func angle(at [3]plane.PixelPoint, m scale.Map) (plane.Angle, bool) {
	mcp, pip, tip := m.Position(at[0]), m.Position(at[1]), m.Position(at[2])
	proximal, distal := pip.Sub(mcp), tip.Sub(pip)
	if !(proximal.Norm() > 0) || !(distal.Norm() > 0) {
		return 0, false
	}
	return plane.Radians(math.Atan2(float64(proximal.Cross(distal)), float64(proximal.Dot(distal)))), true
}

// spread is the distance from the angle that 95 per cent of trials keep to.
func spread(at [3]plane.PixelPoint, centre plane.Angle, sd plane.Pixel, fit scale.Fit, d hand.Digit) plane.Angle {
	rng := rand.New(rand.NewPCG(0xde71, uint64(d)))
	var sizes []float64
	for i := range trials {
		missed := at
		for j := range missed {
			missed[j] = missed[j].Add(plane.Vec(sd*plane.Pixel(rng.NormFloat64()), sd*plane.Pixel(rng.NormFloat64())))
		}
		m := fit.Best
		if n := len(fit.Likely); n > 0 {
			m = fit.Likely[i*n/trials%n]
		}
		if a, ok := angle(missed, m); ok {
			turned := math.Remainder(float64(a-centre), 2*math.Pi)
			sizes = append(sizes, math.Abs(turned))
		}
	}
	if len(sizes) == 0 {
		return plane.Radians(math.Pi)
	}
	slices.Sort(sizes)
	return plane.Radians(sizes[min(int(math.Ceil(0.95*float64(len(sizes)))), len(sizes)-1)])
}
