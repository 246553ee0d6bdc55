package phantom

import (
	"math"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
)

// nail is one nail in hand coordinates.
type nail struct {
	f      digit
	from   float64 // where it leaves the fold, distance along the digit
	length float64
	half   float64
	aside  float64 // how far its middle lies to the ulnar side of the axis
}

func nails(a *anatomy) []nail {
	l := float64(a.size)
	var out []nail
	for _, d := range hand.Digits {
		f := *a.digits[d]
		tip := float64(f.length())
		h := float64(f.fullness(f.length() - plane.Millimetre(0.25*l)))
		n := nail{f: f, from: tip - 0.275*l, length: 0.235 * l, half: 0.6 * h}
		if d == hand.Thumb {
			n = nail{f: f, from: tip - 0.33*l, length: 0.285 * l, half: 0.54 * h, aside: -0.2 * h}
		}
		if d == hand.Little {
			n.from, n.length = tip-0.225*l, 0.19*l
		}
		out = append(out, n)
	}
	return out
}

// outline is the nail between the parts p0 and p1 of its length, as a closed
// line; its proximal end is rounded.
func (n nail) outline(p0, p1 float64) []point {
	const steps = 40
	var line []point
	for i := 0; i <= 2*steps; i++ {
		// Down one side, round the fold, up the other.
		u := 1 - float64(i)/steps
		side := 1.0
		if u < 0 {
			u, side = -u, -1
		}
		line = append(line, n.at(p0+(p1-p0)*u, side))
	}
	// The free edge.
	for i := 1; i < steps; i++ {
		v := -1 + 2*float64(i)/steps
		t, h := n.along(p1), n.width(p1)
		line = append(line, n.place(t+0.28*n.half*(1-v*v), v*h))
	}
	return line
}

func (n nail) along(part float64) float64 { return n.from + n.length*part }

// width is half the nail's width at that part of its length: round at the fold.
func (n nail) width(part float64) float64 {
	x := math.Min(1, part/0.3)
	return n.half * math.Sqrt(math.Max(0, x*(2-x))) * (1 - 0.1*part*part)
}

func (n nail) at(part, side float64) point { return n.place(n.along(part), side*n.width(part)) }

func (n nail) place(t, across float64) point {
	return n.f.at(plane.Millimetre(t)).Add(towards(n.f.axis, ulnar).Scale(across + n.aside))
}

// lunula is the pale half moon at the fold.
func (n nail) lunula() []point {
	const steps = 40
	var line []point
	for i := 0; i <= 2*steps; i++ {
		u := 1 - float64(i)/steps
		side := 1.0
		if u < 0 {
			u, side = -u, -1
		}
		line = append(line, n.at(0.1*u*u, side))
	}
	h := n.width(0.1)
	for i := 1; i < steps; i++ {
		v := -1 + 2*float64(i)/steps
		line = append(line, n.place(n.along(0.1)+0.22*n.half*(1-v*v), v*h))
	}
	return line
}

// fold is the line where skin meets the nail.
func (n nail) fold() []point {
	line := n.outline(0, 0.93)
	return line[:81]
}

// plates is the nails on the picture: each part as a coverage.
type plates struct{ bed, lunula, edge coverage }

func newPlates(a *anatomy, pixel func(point) plane.PixelPoint, w, h int) plates {
	var bed, lunula, edge [][]plane.PixelPoint
	on := func(line []point) []plane.PixelPoint {
		out := make([]plane.PixelPoint, len(line))
		for i, p := range line {
			out[i] = pixel(p)
		}
		return out
	}
	for _, n := range nails(a) {
		bed = append(bed, on(n.outline(0, 1)))
		lunula = append(lunula, on(n.lunula()))
		edge = append(edge, on(n.freeEdge()))
	}
	return plates{cover(w, h, bed...), cover(w, h, lunula...), cover(w, h, edge...)}
}

// freeEdge is the white rim.
func (n nail) freeEdge() []point {
	const steps = 40
	var line []point
	for i := 0; i <= steps; i++ {
		v := -1 + 2*float64(i)/steps
		line = append(line, n.place(n.along(1)+0.28*n.half*(1-v*v), v*n.width(1)))
	}
	for i := steps; i >= 0; i-- {
		v := -1 + 2*float64(i)/steps
		line = append(line, n.place(n.along(0.93)+0.24*n.half*(1-v*v), v*n.width(0.93)))
	}
	return line
}
