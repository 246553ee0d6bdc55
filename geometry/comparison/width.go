package comparison

import (
	"math"
	"math/rand/v2"
	"slices"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/geometry/reading"
)

// A digit's width is known only where both of its borders are: on the middle and
// the ring finger between two traced webs. It is taken square to the line from
// MCP to PIP, as the mean over the fractions of that line along which both
// borders are traced, distal to the springings, on both photographs: so the same
// part of the digit is measured on both. Index and little finger have a web on
// one side only, and no width.

// borderSD is by how much a tracer may put a whole border in or out, as a
// standard deviation in pixels, as in package reading.
const borderSD = 0.25

// leastRange is the part of the way from MCP to PIP along which both borders
// must be known.
const leastRange = 0.04

// places is at how many fractions of that part a width is taken.
const places = 7

// flanks are the two borders of a digit, each from the web distally, by the
// fraction of the way from MCP to PIP at which it is known.
type flanks struct {
	mcp, pip plane.Position
	lines    [2][]plane.Position
	from, to float64
}

// at is the fraction of the way from MCP to PIP of a position, and how far it
// lies beside that line.
func (f flanks) at(q plane.Position) (fraction float64, beside plane.Millimetre) {
	axis := f.pip.Sub(f.mcp)
	u := axis.Direction()
	v := q.Sub(f.mcp)
	return float64(v.Dot(u) / axis.Norm()), u.Cross(v)
}

// flanks is where the borders of d are known, on the plane of the best map.
func (p Photograph) flanks(d hand.Digit) (flanks, bool) {
	joints, ok := p.chain(d, hand.MCP, hand.PIP)
	if !ok || d <= hand.IndexFinger || d >= hand.Little {
		return flanks{}, false
	}
	f := flanks{mcp: p.Scale.Best.Position(joints[0]), pip: p.Scale.Best.Position(joints[1]), from: math.Inf(-1), to: math.Inf(1)}
	if f.mcp == f.pip {
		return f, false
	}
	for i, w := range []hand.Web{hand.Web(d) - 1, hand.Web(d)} {
		n := slices.IndexFunc(p.Reading.Webs, func(r reading.Web) bool { return r.Web == w && r.Shape != 0 && len(r.Edge) > 2 })
		if n < 0 {
			return f, false
		}
		f.take(i, p, p.Reading.Webs[n])
	}
	return f, f.to-f.from >= leastRange
}

// take keeps the half of the web's border that runs along the digit.
func (f *flanks) take(i int, p Photograph, w reading.Web) {
	edge, crown := p.Scale.Best.Positions(w.Edge), p.Scale.Best.Position(w.Crown)
	middle := 0
	for n, q := range edge {
		if q.Distance(crown) < edge[middle].Distance(crown) {
			middle = n
		}
	}
	halves := [2][]plane.Position{slices.Clone(edge[:middle+1]), edge[middle:]}
	slices.Reverse(halves[0])
	half := halves[0]
	if f.nearer(halves[1][len(halves[1])-1], half[len(half)-1]) {
		half = halves[1]
	}
	springing := p.Scale.Best.Position(w.Springing[0])
	if other := p.Scale.Best.Position(w.Springing[1]); f.nearer(other, springing) {
		springing = other
	}
	from, _ := f.at(springing)
	to, _ := f.at(half[len(half)-1])
	f.lines[i], f.from, f.to = half, max(f.from, from), min(f.to, to)
}

// nearer reports whether a lies nearer to the digit's axis than b.
func (f flanks) nearer(a, b plane.Position) bool {
	_, besideA := f.at(a)
	_, besideB := f.at(b)
	return math.Abs(float64(besideA)) < math.Abs(float64(besideB))
}

// crossing is where a border crosses the fraction, sought from its distal end.
func (f flanks) crossing(line []plane.Position, fraction float64) (plane.Position, bool) {
	for n := len(line) - 1; n > 0; n-- {
		a, _ := f.at(line[n-1])
		b, _ := f.at(line[n])
		if a <= fraction && fraction <= b && a < b {
			return line[n-1].Towards(line[n], (fraction-a)/(b-a)), true
		}
	}
	return plane.Position{}, false
}

// width is how the mean width of the digit between two fractions of the way from
// MCP to PIP is taken.
func (p Photograph) width(d hand.Digit, f flanks, from, to float64) (sizing, bool) {
	back := p.Scale.Best.Back()
	marked := []plane.PixelPoint{back.Pixel(f.mcp), back.Pixel(f.pip)}
	for n := range places {
		fraction := from + (to-from)*float64(n)/(places-1)
		for _, line := range f.lines {
			q, ok := f.crossing(line, fraction)
			if !ok {
				return sizing{}, false
			}
			marked = append(marked, back.Pixel(q))
		}
	}
	missed := func(rng *rand.Rand) []plane.PixelPoint { return p.edgesMissed(marked, rng) }
	return sizing{digit: d, of: Width, from: from, to: to, marked: marked, missed: missed, length: meanWidth}, true
}

// edgesMissed is the joints, each missed as a click is, and the crossings of the
// two borders, each border off as a whole.
func (p Photograph) edgesMissed(marked []plane.PixelPoint, rng *rand.Rand) []plane.PixelPoint {
	out := slices.Clone(marked)
	for i := range out[:2] {
		out[i] = out[i].Add(missedBy(p.Marks.ClickSD, rng))
	}
	across := marked[1].Sub(marked[0]).Direction().Left()
	off := [2]float64{borderSD * rng.NormFloat64(), borderSD * rng.NormFloat64()}
	for i := range out[2:] {
		out[2+i] = out[2+i].Add(across.Scale(off[i%2]))
	}
	return out
}

// meanWidth is the mean distance, square to the line between the first two
// points, of the pairs that follow.
func meanWidth(at []plane.Position) plane.Millimetre {
	u := at[1].Sub(at[0]).Direction()
	sum, pairs := plane.Millimetre(0), at[2:]
	for n := 0; n+1 < len(pairs); n += 2 {
		sum += u.Cross(pairs[n+1].Sub(pairs[n]))
	}
	return plane.Millimetre(math.Abs(float64(sum))) / plane.Millimetre(len(pairs)/2)
}
