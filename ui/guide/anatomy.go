package guide

import (
	"math"

	"ogive/geometry/hand"
	"ogive/geometry/scale"
	"ogive/ui/marking"
)

// spot is a place on the drawing: the back of a right hand, fingers up, about
// 200 units wide; y points down.
type spot struct{ x, y float64 }

func (p spot) add(q spot) spot           { return spot{p.x + q.x, p.y + q.y} }
func (p spot) sub(q spot) spot           { return spot{p.x - q.x, p.y - q.y} }
func (p spot) times(k float64) spot      { return spot{p.x * k, p.y * k} }
func (p spot) to(q spot, t float64) spot { return p.add(q.sub(p).times(t)) }

// finger is one digit of the drawing.
type finger struct {
	mcp    spot
	tilt   float64 // degrees from upright, positive to the little finger's side
	length float64 // MCP to tip
	half   float64 // half its width at the root
}

var fingers = map[hand.Digit]finger{
	hand.Thumb:       {spot{40, 164}, -33, 66, 11.5},
	hand.IndexFinger: {spot{63, 122}, -13, 92, 9.6},
	hand.Middle:      {spot{88, 113}, -3, 103, 9.9},
	hand.Ring:        {spot{113, 117}, 7, 95, 9.5},
	hand.Little:      {spot{136, 130}, 19, 74, 8.2},
}

// Places along a finger as parts of its length.
const (
	pipAt = 0.46
	dipAt = 0.73
	// crownAt and springAt are parts of MCP to PIP.
	crownAt     = 0.52
	springAt    = 0.86
	borderAt    = 1.0
	basalCrease = 0.5
)

// at is the place on the finger's middle line, t of its length from the MCP
// joint, and side of its width beside it.
func (f finger) at(t, side float64) spot {
	sin, cos := math.Sincos(f.tilt * math.Pi / 180)
	along, across := spot{sin, -cos}, spot{cos, sin}
	return f.mcp.add(along.times(t * f.length)).add(across.times(side * f.width(t)))
}

// width is half the width of the finger: fuller at its joints.
func (f finger) width(t float64) float64 {
	taper := 1 - 0.22*t
	joint := 0.06*math.Exp(-math.Pow((t-pipAt)/0.07, 2)) + 0.04*math.Exp(-math.Pow((t-dipAt)/0.06, 2))
	return f.half * (taper + joint)
}

func (f finger) joint(j hand.Joint, v hand.View) spot {
	switch j {
	case hand.MCP:
		if v == hand.Palmar {
			return f.at(pipAt*basalCrease, 0)
		}
		return f.at(0, 0)
	case hand.PIP:
		return f.at(pipAt, 0)
	case hand.DIP:
		return f.at(dipAt, 0)
	}
	return f.at(1, 0)
}

// outline is the finger's silhouette, closed at the root.
func (f finger) outline() []spot {
	var line []spot
	const end = 0.92
	for i := range 21 {
		line = append(line, f.at(-0.1+(end+0.1)*float64(i)/20, -1))
	}
	for i := 1; i < 12; i++ {
		sin, cos := math.Sincos(math.Pi * float64(i) / 12)
		line = append(line, f.at(end+(1-end)*1.15*sin, 0).add(f.at(end, -cos).sub(f.at(end, 0))))
	}
	for i := range 21 {
		line = append(line, f.at(end-(end+0.1)*float64(i)/20, 1))
	}
	return line
}

// webPlaces are where a web is marked: border, crown, border.
func webPlaces(w hand.Web) [3]spot {
	radial, ulnar := w.Digits()
	a, b := fingers[radial], fingers[ulnar]
	if w == hand.FirstWeb {
		return [3]spot{a.at(0.62, 1), {49, 133}, b.at(0.3, -1)}
	}
	crown := a.at(pipAt*crownAt, 1).to(b.at(pipAt*crownAt, -1), 0.5)
	return [3]spot{a.at(pipAt*borderAt, 1), crown, b.at(pipAt*borderAt, -1)}
}

// webEdge is the edge of the web from springing to springing.
func webEdge(w hand.Web) []spot {
	radial, ulnar := w.Digits()
	a, b := fingers[radial].at(pipAt*springAt, 1), fingers[ulnar].at(pipAt*springAt, -1)
	if w == hand.FirstWeb {
		a, b = fingers[radial].at(0.45, 1), fingers[ulnar].at(0.1, -1)
	}
	crown := webPlaces(w)[1]
	control := crown.times(2).sub(a.to(b, 0.5))
	var line []spot
	const n = 16
	for i := range n + 1 {
		t := float64(i) / n
		line = append(line, a.to(control, t).to(control.to(b, t), t))
	}
	return line
}

// palm is the hand without its fingers.
var palm = smooth([]spot{
	{74, 250}, {72, 226}, {62, 206}, {49, 184}, {44, 160}, {48, 134}, {54, 118},
	{64, 112}, {88, 104}, {113, 107}, {136, 120}, {144, 132}, {147, 152}, {143, 184}, {134, 208}, {130, 226}, {130, 250},
}, false)

// smooth is a line that runs through the knots (Catmull and Rom).
func smooth(knots []spot, closed bool) []spot {
	n := len(knots)
	knot := func(i int) spot {
		if closed {
			return knots[(i%n+n)%n]
		}
		return knots[min(max(i, 0), n-1)]
	}
	var line []spot
	last := n - 1
	if closed {
		last = n
	}
	const steps = 8
	for i := range last {
		p, q, r, s := knot(i-1), knot(i), knot(i+1), knot(i+2)
		for k := range steps {
			t := float64(k) / steps
			point := func(p, q, r, s float64) float64 {
				return 0.5 * (2*q + (r-p)*t + (2*p-5*q+4*r-s)*t*t + (3*q-p-3*r+s)*t*t*t)
			}
			line = append(line, spot{point(p.x, q.x, r.x, s.x), point(p.y, q.y, r.y, s.y)})
		}
	}
	return append(line, knot(last))
}

// rulerTicks are where the two points of a ruler are marked.
var rulerTicks = [2]spot{{176, 44}, {176, 214}}

// cardCorners are where the sides of the card meet, in order around, a long side
// first.
var cardCorners = [4]spot{{168, 116}, {168, 226}, {237, 226}, {237, 116}}

// place is where the spot lies on the drawing of the view.
func place(s marking.State, p marking.Spot) spot {
	switch p.Kind {
	case marking.ScalePoint:
		if s.Method == scale.ByCard {
			return cardCorners[min(p.N, 3)]
		}
		return rulerTicks[min(p.N, 1)]
	case marking.JointPoint:
		return fingers[p.Digit].joint(p.Joint, s.View)
	case marking.SeedPoint:
		return webPlaces(p.Web)[min(p.N, 2)]
	case marking.AxisPoint:
		return axisPlaces[min(p.N, 1)]
	}
	return junctionPlace(p.N)
}
