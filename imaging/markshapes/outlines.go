package markshapes

import (
	"math"

	"ogive/geometry/hand"
)

// Diamond stands on a corner. Of it and of every other closed outline about q, r
// is about half the size.
func Diamond(q Spot, r float64) []Spot {
	return []Spot{q.Add(Spot{0, -1.3 * r}), q.Add(Spot{1.3 * r, 0}), q.Add(Spot{0, 1.3 * r}), q.Add(Spot{-1.3 * r, 0})}
}

// Quadrate is a square standing on its side.
func Quadrate(q Spot, r float64) []Spot {
	return []Spot{q.Add(Spot{-r, -r}), q.Add(Spot{r, -r}), q.Add(Spot{r, r}), q.Add(Spot{-r, r})}
}

// Triangle points upwards.
func Triangle(q Spot, r float64) []Spot {
	return []Spot{q.Add(Spot{0, -1.3 * r}), q.Add(Spot{1.2 * r, 0.9 * r}), q.Add(Spot{-1.2 * r, 0.9 * r})}
}

// Disc is a circle of radius r.
func Disc(q Spot, r float64) []Spot {
	n := int(min(max(2.5*math.Sqrt(math.Max(r, 0))*4, 16), 64))
	out := make([]Spot, n)
	for i := range out {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(n))
		out[i] = q.Add(Spot{r * cos, r * sin})
	}
	return out
}

// Arc is the part of a circle from angle a to angle b, in radians, as a path.
func Arc(c Spot, r, a, b float64) []Spot {
	const n = 24
	out := make([]Spot, n+1)
	for i := range out {
		sin, cos := math.Sincos(a + (b-a)*float64(i)/n)
		out[i] = c.Add(Spot{r * cos, r * sin})
	}
	return out
}

// JointOutline is the outline of a joint's mark: a diamond for MCP, a disc for
// PIP, a square for DIP, a triangle for the tip.
func JointOutline(j hand.Joint, q Spot, r float64) []Spot {
	switch j {
	case hand.MCP:
		return Diamond(q, r)
	case hand.DIP:
		return Quadrate(q, r)
	case hand.Tip:
		return Triangle(q, r)
	}
	return Disc(q, r)
}

// Saltire is the slanting cross of a click on a border, as two paths.
func Saltire(q Spot, r float64) [][]Spot {
	return [][]Spot{{q.Add(Spot{-r, -r}), q.Add(Spot{r, r})}, {q.Add(Spot{-r, r}), q.Add(Spot{r, -r})}}
}

// OpenCross is an upright cross whose legs run from near to far and leave the
// place itself to be seen, as four paths.
func OpenCross(q Spot, near, far float64) [][]Spot {
	var out [][]Spot
	for _, v := range []Spot{{1, 0}, {0, 1}, {-1, 0}, {0, -1}} {
		out = append(out, []Spot{q.Add(v.Times(near)), q.Add(v.Times(far))})
	}
	return out
}

// Bar is a stroke across the way v at q, half of it on either side.
func Bar(q, v Spot, half float64) []Spot {
	across := v.Unit().Square().Times(half)
	return []Spot{q.Sub(across), q.Add(across)}
}

// Bars are strokes across the line from the first to the last of the points, at
// each of them.
func Bars(points []Spot, half float64) [][]Spot {
	var out [][]Spot
	for _, q := range points {
		out = append(out, Bar(q, points[len(points)-1].Sub(points[0]), half))
	}
	return out
}

// Corners are the angles of a closed outline, each leg no longer than reach.
func Corners(outline []Spot, reach float64) [][]Spot {
	var out [][]Spot
	n := len(outline)
	for i, q := range outline {
		leg := func(to Spot) Spot {
			d := to.Sub(q)
			return q.Add(d.Unit().Times(math.Min(reach, d.Length()/3)))
		}
		out = append(out, []Spot{leg(outline[(i+n-1)%n]), q, leg(outline[(i+1)%n])})
	}
	return out
}

// Axis is a digit's axis from MCP to PIP with a bar at each quarter, half of it
// on either side, the middle one longer, so that the index can be checked by eye.
func Axis(mcp, pip Spot, half, middle float64) [][]Spot {
	along := pip.Sub(mcp)
	return [][]Spot{
		{mcp, pip},
		Bar(mcp.To(pip, 0.25), along, half), Bar(mcp.To(pip, 0.5), along, middle), Bar(mcp.To(pip, 0.75), along, half),
	}
}
