package reading

import (
	"math"

	"ogive/geometry/arch"
	"ogive/geometry/plane"
)

// widthsAt are the distances distal to the crown at which the width between the
// two borders is taken from the trace.
var widthsAt = [3]plane.Millimetre{2, 5, 10}

// trace is what the border tells without any model of its arch.
type trace struct {
	axis        plane.Vector[plane.Millimetre]
	reach       plane.Millimetre // how far distal of the crown both sides go
	left, right [3]side
	area        float64 // between the border and the chord of its springings, mm²
	perimeter   float64 // of the border between its springings, mm
	noise       float64 // standard deviation of a point across the border, mm
	circle      arch.Circle
	circled     bool
}

// side is where the border stands at one distance from the crown.
type side struct {
	at    plane.Position
	slope float64 // how far out it moves for a millimetre distal
	ok    bool
}

// nudge is how one trial moves the trace: in millimetres outward as a whole
// (shift), and independent standard normal numbers for single points.
type nudge struct {
	shift, noise  float64
	lean          float64 // of the straight borders, degrees
	left, right   [3]float64
	crown, radius float64
}

// newTrace reads the figures that need no model off the border. Of the fitted
// arch it takes only from where and in which direction to measure: the crown
// (blur rounds the corner of a V, so the lowest point of the trace lies up to a
// millimetre distal of it), the axis and the springings.
func newTrace(border []plane.Position, fitted arch.Fitted) trace {
	best := fitted.Best()
	t := trace{axis: best.Arch.Axis, noise: float64(best.RMS)}
	heights := make([]float64, len(border))
	for i, p := range border {
		heights[i] = float64(p.Sub(best.Arch.Crown).Dot(t.axis))
	}
	low := lowest(heights)
	t.reach = plane.Millimetre(math.Min(heights[0], heights[len(heights)-1]))
	for i, h := range widthsAt {
		t.left[i] = t.cross(border[:low+1], heights[:low+1], float64(h))
		t.right[i] = t.cross(border[low:], heights[low:], float64(h))
	}
	opening := between(border, best.Arch.Springings())
	t.area, t.perimeter = area(opening), perimeter(opening)
	t.circle, t.circled = crownCircle(border, low, float64(best.Arch.Span()))
	return t
}

// lowest is the index of the most proximal point, heights averaged over three
// neighbours so that a single stray point is not taken for it.
func lowest(heights []float64) int {
	low, least := 0, math.Inf(1)
	for i := 1; i+1 < len(heights); i++ {
		if h := heights[i-1] + heights[i] + heights[i+1]; h < least {
			low, least = i, h
		}
	}
	return low
}

// cross is where the border first passes height h, going away from the crown.
func (t trace) cross(border []plane.Position, heights []float64, h float64) side {
	n := len(border)
	order := func(i int) int { return i }
	if n > 1 && heights[0] > heights[n-1] {
		order = func(i int) int { return n - 1 - i }
	}
	for i := 1; i < n; i++ {
		a, b := order(i-1), order(i)
		if heights[a] > h || heights[b] <= h {
			continue
		}
		s := side{at: border[a].Towards(border[b], (h-heights[a])/(heights[b]-heights[a])), ok: true}
		far := order(min(i+4, n-1))
		near := order(max(i-5, 0))
		run := border[far].Sub(border[near])
		out := math.Abs(float64(run.Cross(t.axis)))
		s.slope = out / math.Max(float64(run.Dot(t.axis)), 0.2*out)
		return s
	}
	return side{}
}

// between is the part of the border from the point nearest to the first
// springing to the one nearest to the second.
func between(border []plane.Position, springings [2]plane.Position) []plane.Position {
	nearest := func(p plane.Position) int {
		at, least := 0, math.Inf(1)
		for i, q := range border {
			if d := float64(q.Distance(p)); d < least {
				at, least = i, d
			}
		}
		return at
	}
	a, b := nearest(springings[0]), nearest(springings[1])
	if a > b {
		a, b = b, a
	}
	return border[a : b+1]
}

// crownCircle is the circle through the border at the crown: as far to either
// side as a fifth of the span, or half a millimetre.
func crownCircle(border []plane.Position, low int, span float64) (arch.Circle, bool) {
	window := plane.Millimetre(math.Max(0.2*span, 0.5))
	from, to := low, low
	for from > 0 && border[from-1].Distance(border[low]) < window {
		from--
	}
	for to+1 < len(border) && border[to+1].Distance(border[low]) < window {
		to++
	}
	c, err := arch.FitCircle(border[from : to+1])
	flat := float64(c.Radius) > 5*math.Max(span, 2)
	return c, err == nil && !flat && 4*c.RadiusSD < float64(c.Radius)
}

// figures adds the model-free figures of one trial. A shift s outward moves
// either border by s across itself and the crown by s proximally.
func (t trace) figures(f *figures, onto func(plane.Position) plane.Position, n nudge) {
	across := t.axis.Turned(plane.RightAngle)
	for i := range widthsAt {
		l, r := t.left[i], t.right[i]
		f.wide[i] = l.ok && r.ok
		if !f.wide[i] {
			continue
		}
		sign := math.Copysign(1, float64(r.at.Sub(l.at).Dot(across)))
		out := func(s side, z float64) float64 {
			return (n.shift+n.noise*z)*math.Hypot(1, s.slope) - (n.shift+n.noise*n.crown)*s.slope
		}
		left := l.at.Add(across.Scale(-sign * out(l, n.left[i])))
		right := r.at.Add(across.Scale(sign * out(r, n.right[i])))
		f.widths[i] = float64(onto(left).Distance(onto(right)))
	}
	if t.circled {
		f.crownRadius, f.radiused = math.Abs(float64(t.circle.Radius)+n.shift+t.circle.RadiusSD*n.radius), true
	}
}

// area is the area between the line and its chord, in square millimetres, by the
// shoelace formula.
func area(line []plane.Position) float64 {
	sum := 0.0
	for i := 1; i < len(line); i++ {
		sum += float64(line[i-1].Sub(line[0]).Cross(line[i].Sub(line[0])))
	}
	return math.Abs(sum) / 2
}

func perimeter(line []plane.Position) float64 {
	sum := 0.0
	for i := 1; i < len(line); i++ {
		sum += float64(line[i].Distance(line[i-1]))
	}
	return sum
}
