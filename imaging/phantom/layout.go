package phantom

import (
	"math"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
)

// placement takes hand coordinates to the plane of the picture (mm, y down).
type placement struct {
	mirror float64 // +1: the thumb on the left
	turn   plane.Angle
	shift  vector
}

func (p placement) plane(q point) point {
	v := plane.Vec(plane.Millimetre(p.mirror)*q.X, -q.Y).Turned(p.turn).Add(p.shift)
	return plane.Pt(v.X, v.Y)
}

// hand is the inverse of plane.
func (p placement) hand(q point) point {
	v := plane.Vec(q.X, q.Y).Sub(p.shift).Turned(-p.turn)
	return plane.Pt(plane.Millimetre(p.mirror)*v.X, -v.Y)
}

func (p placement) planes(line []point) []point {
	out := make([]point, len(line))
	for i, q := range line {
		out[i] = p.plane(q)
	}
	return out
}

// strip is where the reference lies: a rectangle from its corner along two unit
// vectors.
type strip struct {
	corner       point
	along, down  vector
	length, wide plane.Millimetre
}

func (s strip) at(along, down plane.Millimetre) point {
	return s.corner.Add(s.along.Scale(float64(along))).Add(s.down.Scale(float64(down)))
}

// within is the inverse of at.
func (s strip) within(p point) (along, down plane.Millimetre) {
	v := p.Sub(s.corner)
	return v.Dot(s.along), v.Dot(s.down)
}

// layout is where the hand and the reference lie on the plane, the origin being
// the middle of the picture.
type layout struct {
	hand placement
	ref  strip
	grey *strip // nil where there is none
}

// lay puts the reference beside the ulnar border of the hand, and fills
// c.Distance so that both fill the frame.
func lay(a *anatomy, c *Case) layout {
	mirror := 1.0
	if (c.Side == hand.Left) != (c.View == hand.Palmar) {
		mirror = -1
	}
	p := placement{mirror: mirror, turn: c.Turn}
	ref, wide := refSize(*c)
	gap := 0.12 * float64(c.Size)
	outline := p.planes(a.outline(0.05 * c.Size))
	// What of the wrist is seen depends on the frame, and the frame on what is
	// seen; a few rounds settle it.
	bottom := 0.95 * float64(c.Size)
	var seen box
	var frame, width float64
	for range 4 {
		seen = emptyBox()
		for _, q := range outline {
			if float64(q.Y) < bottom {
				seen.add(q)
			}
		}
		width = seen.maxX - seen.minX + gap + float64(wide)
		height := 0.95*float64(c.Size) - seen.minY
		if c.Reference == IDCard {
			height = math.Max(height, float64(ref)+2)
		}
		frame = frameOf(*c, width*1.1, height*1.09)
		bottom = seen.minY + frame*float64(c.Height)
	}
	if c.Distance == 0 {
		c.Distance = plane.Millimetre(frame * float64(c.FocalPx))
	}
	w, h := frame*float64(c.Width), frame*float64(c.Height)
	left := -w/2 + (w-width)/2
	handLeft, refLeft := left, left+width-float64(wide)
	if mirror < 0 {
		handLeft, refLeft = left+width-(seen.maxX-seen.minX), left
	}
	top := -h/2 + 0.045*h
	p.shift = plane.Vec(plane.Millimetre(handLeft-seen.minX), plane.Millimetre(top-seen.minY))
	return layout{hand: p, ref: refPlace(*c, mirror, plane.Millimetre(refLeft), plane.Millimetre(h), ref, wide)}
}

// frameOf is the millimetres in a pixel at which width and height fit.
func frameOf(c Case, width, height float64) float64 {
	return math.Max(width/float64(c.Width), height/float64(c.Height))
}

// refSize is the length and the width of the reference.
func refSize(c Case) (length, wide plane.Millimetre) {
	if c.Reference == IDCard {
		return CardWidth, CardHeight
	}
	return 158, min(max(0.3*c.Size+10, 14), 26)
}

// refPlace lays the reference upright beside the hand, a little askew. A
// ruler's ticks face the hand, its zero lies inside the frame.
func refPlace(c Case, mirror float64, left, frame, length, wide plane.Millimetre) strip {
	askew := plane.Degrees(2.4 * (unit(c.Seed, 77) - 0.5))
	s := strip{length: length, wide: wide}
	if c.Reference == IDCard {
		askew *= 3
		s.along, s.down = plane.Vec[plane.Millimetre](0, 1).Turned(askew), plane.Vec[plane.Millimetre](-1, 0).Turned(askew)
		s.corner = plane.Pt(left+wide, -length/2).Add(plane.Vec(0, (frame-length)*plane.Millimetre(0.5*(unit(c.Seed, 78)-0.5))))
		return s
	}
	if mirror > 0 {
		s.along, s.down = plane.Vec[plane.Millimetre](0, -1).Turned(askew), plane.Vec[plane.Millimetre](1, 0).Turned(askew)
		s.corner = plane.Pt(left, frame*0.455)
	} else {
		s.along, s.down = plane.Vec[plane.Millimetre](0, 1).Turned(askew), plane.Vec[plane.Millimetre](-1, 0).Turned(askew)
		s.corner = plane.Pt(left+wide, -frame*0.455)
	}
	return s
}

// unit is a number from 0 to 1 drawn for that seed and that use.
func unit(seed, use uint64) float64 {
	x := seed*0x9E3779B97F4A7C15 + use*0xD1B54A32D192ED03
	x ^= x >> 31
	x *= 0xBF58476D1CE4E5B9
	x ^= x >> 27
	x *= 0x94D049BB133111EB
	x ^= x >> 31
	return float64(x>>11) / (1 << 53)
}
