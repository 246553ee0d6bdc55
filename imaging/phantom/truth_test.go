package phantom

import (
	"math"
	"math/rand/v2"
	"testing"

	"ogive/geometry/arch"
	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/geometry/scale"
)

func truthOf(t *testing.T, c Case) Truth {
	t.Helper()
	truth, err := c.Truth()
	if err != nil {
		t.Fatalf("seed %d: %v", c.Seed, err)
	}
	return truth
}

func within(t *testing.T, seed uint64, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("seed %d: %s is %.9g, want %.9g within %.3g", seed, what, got, want, tolerance)
	}
}

func TestTheIndexFollowsFromTheMarkedPlacesThroughTheTrueMap(t *testing.T) {
	for seed := range uint64(40) {
		c := Random(seed)
		truth := truthOf(t, c)
		at := func(d hand.Digit, j hand.Joint) plane.Position { return truth.Plane.Position(truth.Joints[d][j]) }
		for _, w := range truth.Webs {
			a, b := w.Web.Digits()
			crown := truth.Plane.Position(w.Crown)
			index := 0.0
			for _, d := range []hand.Digit{a, b} {
				bone := at(d, hand.PIP).Sub(at(d, hand.MCP))
				index += float64(crown.Sub(at(d, hand.MCP)).Dot(bone)/bone.Dot(bone)) / 2
			}
			within(t, seed, "index of the "+w.Web.String(), index, float64(c.Webs[w.Web].Index), 1e-6)
			within(t, seed, "its stated index", float64(w.Index), index, 1e-6)
			axis := at(a, hand.PIP).Sub(at(a, hand.MCP)).Direction().Add(at(b, hand.PIP).Sub(at(b, hand.MCP)).Direction()).Direction()
			depth := at(a, hand.PIP).Mid(at(b, hand.PIP)).Sub(crown).Dot(axis)
			within(t, seed, "depth", float64(depth), float64(w.Depth), 1e-6)
		}
	}
}

func TestTheFiguresOfAnArchAreThoseOfItsBorder(t *testing.T) {
	shapes := map[arch.Shape]int{}
	for seed := range uint64(60) {
		c := Random(seed)
		truth := truthOf(t, c)
		for _, w := range truth.Webs {
			shapes[w.Shape]++
			border := truth.Plane.Positions(w.Border)
			from, to := truth.Plane.Position(w.Springing[0]), truth.Plane.Position(w.Springing[1])
			crown := truth.Plane.Position(w.Crown)
			within(t, seed, "span", float64(from.Distance(to)), float64(w.Span), 1e-6)
			within(t, seed, "rise", float64(from.Mid(to).Distance(crown)), float64(w.Rise), 1e-6)
			first, last := straightRun(border, from, w.Straight[0], false), straightRun(border, to, w.Straight[1], true)
			within(t, seed, "twice the flare", first.AngleTo(last).Degrees(), 2*w.Flare.Degrees(), 1e-5)
			axis := first.Direction().Add(last.Direction()).Direction()
			for _, width := range w.Widths {
				within(t, seed, "width", widthAcross(border, crown, axis, float64(width.Distal)), float64(width.Width), 0.01)
			}
			within(t, seed, "area", areaBelow(border, from, to), float64(w.Area), 0.01*float64(w.Area)+1e-6)
			if crownAngle := departure(border, crown); w.Shape == arch.V || w.Shape == arch.Gothic {
				within(t, seed, "crown angle", crownAngle, w.CrownAngle.Degrees(), 6)
			}
		}
	}
	for _, s := range arch.Shapes {
		if shapes[s] < 20 {
			t.Errorf("only %d of 180 random webs are %v", shapes[s], s)
		}
	}
}

// nearest is which point of the border lies nearest to p.
func nearest[U plane.Unit](border []plane.Point[U], p plane.Point[U]) int {
	best := 0
	for i, q := range border {
		if q.Distance(p) < border[best].Distance(p) {
			best = i
		}
	}
	return best
}

// straightRun is the direction from the springing to the far end of the
// straight border, all points between lying on that line.
func straightRun(border []plane.Position, from plane.Position, reach plane.Millimetre, ulnarSide bool) plane.Vector[plane.Millimetre] {
	start := nearest(border, from)
	side := border[:start]
	if ulnarSide {
		side = border[start+1:]
	}
	var run plane.Vector[plane.Millimetre]
	for _, p := range side {
		if d := p.Distance(from); d <= reach && d > run.Norm() {
			run = p.Sub(from)
		}
	}
	return run
}

// widthAcross cuts the border square to the axis.
func widthAcross(border []plane.Position, crown plane.Position, axis plane.Vector[plane.Millimetre], distal float64) float64 {
	var cuts []float64
	across := axis.Left()
	for i := 1; i < len(border); i++ {
		v, w := border[i-1].Sub(crown), border[i].Sub(crown)
		y0, y1 := float64(v.Dot(axis)), float64(w.Dot(axis))
		if (y0 < distal) != (y1 < distal) {
			s := (distal - y0) / (y1 - y0)
			cuts = append(cuts, float64(v.Dot(across))+s*float64(w.Sub(v).Dot(across)))
		}
	}
	if len(cuts) != 2 {
		return math.NaN()
	}
	return math.Abs(cuts[0] - cuts[1])
}

// areaBelow is the shoelace area of the border between the springings.
func areaBelow(border []plane.Position, from, to plane.Position) float64 {
	i, j := nearest(border, from), nearest(border, to)
	sum := 0.0
	for k := i; k <= j; k++ {
		p, q := border[k], border[i]
		if k < j {
			q = border[k+1]
		}
		sum += float64(p.Sub(from).Cross(q.Sub(from))) / 2
	}
	return math.Abs(sum)
}

// departure is the angle between the two sides close to the crown.
func departure(border []plane.Position, crown plane.Position) float64 {
	best := nearest(border, crown)
	return border[best-1].Sub(crown).AngleTo(border[best+1].Sub(crown)).Degrees()
}

func TestTheBorderIsDenseAndRunsWellBeyondTheSpringings(t *testing.T) {
	for seed := range uint64(40) {
		c := Random(seed)
		truth := truthOf(t, c)
		for _, w := range truth.Webs {
			for i := 1; i < len(w.Border); i++ {
				if gap := w.Border[i].Distance(w.Border[i-1]); gap > 1 {
					t.Fatalf("seed %d, %v: two border points %.2f px apart", seed, w.Web, gap)
				}
			}
			for side, straight := range w.Straight {
				if straight < min(w.Span, 0.1*c.Size) {
					t.Errorf("seed %d, %v, side %d: straight for %.2f mm only, span %.2f", seed, w.Web, side, straight, w.Span)
				}
			}
			for _, p := range w.Border {
				if p.X < 0 || p.Y < 0 || p.X > plane.Pixel(c.Width) || p.Y > plane.Pixel(c.Height) {
					t.Fatalf("seed %d, %v: the border leaves the picture at %v", seed, w.Web, p)
				}
			}
		}
	}
}

func TestRandomHandsAreHands(t *testing.T) {
	for seed := range uint64(200) {
		c := Random(seed).filled()
		truth := truthOf(t, Random(seed))
		for _, d := range hand.Digits {
			for j, p := range truth.Joints[d] {
				if p.X < 5 || p.Y < 5 || p.X > plane.Pixel(c.Width)-5 || p.Y > plane.Pixel(c.Height)-5 {
					t.Errorf("seed %d: %v %v lies outside the picture, at %v", seed, d, j, p)
				}
			}
		}
		a, err := newAnatomy(c)
		if err != nil {
			t.Errorf("seed %d: %v", seed, err)
			continue
		}
		for _, w := range measured {
			web := a.webs[w]
			if flare := web.flare.Degrees(); flare < 2.9 || flare > 20.1 {
				t.Errorf("seed %d, %v: flare %.1f degrees", seed, w, flare)
			}
		}
		for d := hand.IndexFinger; d < hand.Little; d++ {
			// Fingers must not overlap beyond the web.
			f, g := a.digits[d], a.digits[d+1]
			for t0 := f.along(a.webs[hand.Web(d)].springing(radial)); t0 < f.tipStart(); t0 += 0.05 * c.Size {
				p := f.flankPoint(t0, ulnar)
				along := g.along(p)
				if along < g.length() && -g.across(p) < g.half(min(along, g.tipStart()), radial)-1e-6 && along > 0 {
					t.Errorf("seed %d: %v overlaps its neighbour", seed, d)
					break
				}
			}
		}
	}
}

func TestTheReferenceHasItsSizeOnTheTruePlane(t *testing.T) {
	for seed := range uint64(24) {
		for _, c := range []Case{Random(seed), RandomWebView(seed)} {
			truth := truthOf(t, c)
			if r := truth.Ruler; r != nil {
				within(t, seed, "ruler", float64(truth.Plane.Position(r.From).Distance(truth.Plane.Position(r.To))), float64(r.Length), 1e-6)
				for i := 1; i < len(r.Ticks); i++ {
					within(t, seed, "tick", float64(truth.Plane.Position(r.Ticks[i]).Distance(truth.Plane.Position(r.Ticks[i-1]))), 1, 1e-6)
				}
				continue
			}
			k := truth.Card
			for i := range 4 {
				if p := k.Corners[i]; p.X < 0 || p.Y < 0 || p.X > plane.Pixel(c.Width) || p.Y > plane.Pixel(c.Height) {
					t.Errorf("seed %d: corner %d of the card lies outside the picture, at %v", seed, i, p)
				}
				side := truth.Plane.Position(k.Corners[i]).Distance(truth.Plane.Position(k.Corners[(i+1)%4]))
				want := [2]plane.Millimetre{85.60, 53.98}[i%2] // ISO/IEC 7810, ID-1
				within(t, seed, "card side", float64(side), float64(want), 1e-6)
			}
		}
	}
}

func TestTheJunctionLiesAtItsSlopeToTheDigitsAxis(t *testing.T) {
	for seed := range uint64(30) {
		c := RandomWebView(seed)
		truth := truthOf(t, c)
		j := truth.Junctions[0]
		line := truth.Plane.Positions(j.Line)
		run := line[len(line)-1].Sub(line[0])
		axis := truth.Plane.Position(j.Axis[1]).Sub(truth.Plane.Position(j.Axis[0]))
		within(t, seed, "slope", run.AngleTo(axis).Degrees(), c.JunctionSlope.Degrees(), 1e-6)
		within(t, seed, "stated slope", j.Slope.Degrees(), c.JunctionSlope.Degrees(), 0)
		for _, p := range line {
			within(t, seed, "distance from the line", float64(p.Sub(line[0]).Cross(run.Direction())), 0, 1e-6)
		}
	}
}

func TestAnObserverWithoutErrorMarksTheTruth(t *testing.T) {
	truth := truthOf(t, Random(3))
	marks, ref := truth.Marks(0, rand.New(rand.NewPCG(1, 2)))
	for d, joints := range truth.Joints {
		for j, p := range joints {
			if got, ok := marks.Joint(d, j); !ok || got != p {
				t.Errorf("%v %v marked at %v, truth %v", d, j, got, p)
			}
		}
	}
	for i, w := range marks.Webs {
		if w.Seeds[1] != truth.Webs[i].Crown {
			t.Errorf("crown of the %v marked at %v, truth %v", w.Web, w.Seeds[1], truth.Webs[i].Crown)
		}
		for side := range 2 {
			beyond := truth.Plane.Position(w.Seeds[2*side]).Distance(truth.Plane.Position(truth.Webs[i].Springing[side]))
			if straight := truth.Webs[i].Straight[side]; beyond < 0.4*straight || beyond > straight {
				t.Errorf("%v: border marked %.2f mm beyond the springing, straight for %.2f", w.Web, beyond, straight)
			}
		}
	}
	if r, ok := ref.(scale.Ruler); !ok || r.From != truth.Ruler.From || r.To != truth.Ruler.To || r.Length != truth.Ruler.Length {
		t.Errorf("the ruler is marked as %v", ref)
	}
}

func TestClicksMissByTheStatedSpread(t *testing.T) {
	truth := truthOf(t, Random(4))
	rng := rand.New(rand.NewPCG(5, 6))
	sum, n := 0.0, 0
	for range 60 {
		marks, _ := truth.Marks(2, rng)
		for _, d := range hand.Digits[1:] {
			for _, j := range hand.Joints {
				miss := marks.Joints[d][j].Sub(truth.Joints[d][j])
				sum += float64(miss.Dot(miss))
				n += 2
			}
		}
	}
	within(t, 4, "spread of the clicks", math.Sqrt(sum/float64(n)), 2, 0.1)
}

func TestWhatNoHandCanBeIsRefused(t *testing.T) {
	web := func(s WebShape) Case { return Case{Webs: map[hand.Web]WebShape{hand.ThirdWeb: s}} }
	for name, c := range map[string]Case{
		"size":    {Size: 500},
		"index":   web(WebShape{Index: 3, Span: 8}),
		"span":    web(WebShape{Index: 0.5}),
		"NaN":     web(WebShape{Index: plane.Ratio(math.NaN()), Span: 8}),
		"picture": {Width: 1 << 20, Height: 10},
		"skin":    {Skin: 99},
		"quality": {JPEGQuality: 101},
		"near":    {Distance: 1},
	} {
		if _, err := c.Render(); err == nil {
			t.Errorf("%s: no error", name)
		}
	}
}
