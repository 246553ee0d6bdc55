package reading

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/google/go-cmp/cmp"

	"ogive/assets"
	"ogive/geometry/arch"
	"ogive/geometry/hand"
	"ogive/geometry/norms"
	"ogive/geometry/plane"
	"ogive/geometry/scale"
)

// perPixel is the scale of the hands drawn by these tests, in mm.
const perPixel = 0.05

func TestIndexAndDepthFollowTheirDefinitions(t *testing.T) {
	// Two parallel digits 40 mm long from MCP to PIP, 20 mm apart; the crown lies
	// half way and level with both: index 0.5, depth 20 mm, whatever the arch.
	a := arch.Arch{Shape: arch.Round, Crown: plane.Pt[plane.Millimetre](60, 50), Axis: plane.Vec[plane.Millimetre](0, -1),
		Flare: plane.Degrees(8), Turn: plane.RightAngle, Radius: 4}
	m := handAround(a, 20, 20)
	w := read(t, m).Webs[0]
	close := func(what string, got, want, tolerance float64) {
		t.Helper()
		if math.Abs(got-want) > tolerance {
			t.Errorf("%s is %.4f, want %.4f", what, got, want)
		}
	}
	close("index", float64(w.Index.Value), 0.5, 0.002)
	close("depth", float64(w.Depth.Value), 20, 0.05)
	close("span", float64(w.Span.Value), float64(a.Span()), 0.03)
	close("rise", float64(w.Rise.Value), float64(a.Rise()), 0.06)
	close("rise/span", float64(w.RiseToSpan.Value), float64(a.Rise()/a.Span()), 0.01)
	close("flare", w.Flare.Value.Degrees(), 8, 0.3)
	close("crown angle", w.CrownAngle.Value.Degrees(), 180, 0.01)
	close("crown radius", float64(w.CrownRadius.Value), 4, 0.1)
	for i, at := range []float64{2, 5} {
		close("width", float64(w.Widths[i].Width.Value), widthOf(a, at), 0.06)
	}
	// Area between border and chord: a circular segment of half angle 90-8.
	half := (90 - 8.0) * math.Pi / 180
	close("area", float64(w.Area.Value), 16*(half-math.Sin(half)*math.Cos(half)), 0.4)
	if w.Shape != arch.Round {
		t.Errorf("shape %v, want round", w.Shape)
	}
}

// widthOf is the opening of a round arch at a height above its crown.
func widthOf(a arch.Arch, h float64) float64 {
	r, rise := float64(a.Radius), float64(a.Rise())
	if h < rise {
		return 2 * math.Sqrt(r*r-(r-h)*(r-h))
	}
	return float64(a.Span()) + 2*(h-rise)*a.Flare.Tan()
}

// The stated intervals must hold the truth: over many hands clicked with 2 px
// noise, on borders that err as a traced border does. The camera is square to
// these hands, so intervals that allow for tilt hold the truth more often than
// 95 times in 100; package proof has tilted ones.
func TestTheTruthLiesInsideTheStatedIntervals(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 5))
	inside, all := map[string]int{}, 0
	for range 150 {
		a := arch.Arch{Shape: arch.Gothic, Crown: plane.Pt[plane.Millimetre](60, 50), Axis: plane.Vec[plane.Millimetre](0, -1),
			Flare: plane.Degrees(5 + 9*rng.Float64()), Turn: plane.Degrees(45 + 30*rng.Float64()), Radius: plane.Millimetre(5 + 4*rng.Float64())}
		m := clicked(handAround(a, 20, 20), rng)
		w := read(t, m).Webs[0]
		all++
		count := func(name string, ok bool) {
			if ok {
				inside[name]++
			}
		}
		count("index", w.Index.Holds(0.5))
		count("depth", w.Depth.Holds(20))
		count("span", w.Span.Holds(a.Span()))
		count("rise", w.Rise.Holds(a.Rise()))
		count("flare", w.Flare.Holds(a.Flare))
		count("crown angle", w.CrownAngle.Holds(a.CrownAngle()))
	}
	for _, name := range []string{"index", "depth", "span", "rise", "flare", "crown angle"} {
		share := float64(inside[name]) / float64(all)
		t.Logf("%s: the truth lies inside its interval in %.3f of %d hands", name, share, all)
		if share < 0.9 {
			t.Errorf("the true %s lies inside its interval in only %.3f of hands", name, share)
		}
	}
}

func TestWithoutJointsTheArchIsReadAndTheIndexIsNot(t *testing.T) {
	a := arch.Arch{Shape: arch.Round, Crown: plane.Pt[plane.Millimetre](60, 50), Axis: plane.Vec[plane.Millimetre](0, -1),
		Flare: plane.Degrees(8), Turn: plane.RightAngle, Radius: 4}
	m := handAround(a, 20, 20)
	m.Joints = nil
	w := read(t, m).Webs[0]
	if w.Index != nil || w.Depth != nil || w.Span == nil || len(w.Warnings) == 0 {
		t.Errorf("without joints: index %v, depth %v, span %v, warnings %q", w.Index, w.Depth, w.Span, w.Warnings)
	}
}

func TestSlopeIsTheAngleToTheDigitsAxis(t *testing.T) {
	for _, want := range []float64{0, 25, 40, 90} {
		m := hand.Marks{Side: hand.Right, View: hand.WebView, ClickSD: 2}
		j := hand.JunctionMarks{Web: hand.ThirdWeb, Axis: [2]plane.PixelPoint{{X: 300, Y: 900}, {X: 1500, Y: 900}}}
		for i := range 6 {
			along := plane.Vec[plane.Pixel](1, 0).Turned(plane.Degrees(-want)).Scale(float64(100 * i))
			j.Line = append(j.Line, plane.Pt[plane.Pixel](500, 1000).Add(along))
		}
		m.Junctions = []hand.JunctionMarks{j}
		w := read(t, m).Webs[0]
		if got := w.Slope.Value.Degrees(); math.Abs(got-want) > 1e-6 {
			t.Errorf("slope %.6f, want %g", got, want)
		}
		if u := w.Slope.U95.Degrees(); u < 0.2 || u > 5 {
			t.Errorf("slope %g has the uncertainty %.2f degrees", want, u)
		}
	}
}

func TestTheSameMarksGiveTheSameFigures(t *testing.T) {
	a := arch.Arch{Shape: arch.Gothic, Crown: plane.Pt[plane.Millimetre](60, 50), Axis: plane.Vec[plane.Millimetre](0, -1),
		Flare: plane.Degrees(9), Turn: plane.Degrees(60), Radius: 6}
	m := clicked(handAround(a, 20, 20), rand.New(rand.NewPCG(1, 1)))
	one, two := read(t, m).Webs[0], read(t, m).Webs[0]
	if *one.Index != *two.Index || *one.Span != *two.Span || *one.CrownAngle != *two.CrownAngle {
		t.Errorf("two readings of the same marks differ: %v and %v", one, two)
	}
}

func BenchmarkReadOneWeb(b *testing.B) {
	a := arch.Arch{Shape: arch.Gothic, Crown: plane.Pt[plane.Millimetre](60, 50), Axis: plane.Vec[plane.Millimetre](0, -1),
		Flare: plane.Degrees(9), Turn: plane.Degrees(60), Radius: 6}
	m := clicked(handAround(a, 20, 20), rand.New(rand.NewPCG(1, 1)))
	fit, err := ruler.Fit(camera, 2)
	if err != nil {
		b.Fatal(err)
	}
	table, err := norms.Parse(assets.NormalValues)
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		Read(m, fit, table)
	}
}

var (
	camera = scale.Camera{Width: 2400, Height: 2000}
	ruler  = scale.Ruler{From: plane.Pt[plane.Pixel](200, 1900), To: plane.Pt[plane.Pixel](1200, 1900), Length: 50}
)

// What is true of every ruler must not stand beside what is amiss, or nobody
// reads either.
func TestOnlyATiltThatMattersIsAnUnusualWarning(t *testing.T) {
	m := handAround(arch.Arch{Shape: arch.Round, Crown: plane.Pt[plane.Millimetre](60, 50), Axis: plane.Vec[plane.Millimetre](0, -1),
		Flare: plane.Degrees(8), Turn: plane.RightAngle, Radius: 4}, 20, 20)
	for _, c := range []struct {
		tilt    float64
		unusual int
	}{{10, 0}, {30, 1}} {
		tilted := camera
		tilted.Tilt = plane.Degrees(c.tilt)
		fit, err := ruler.Fit(tilted, m.ClickSD)
		if err != nil {
			t.Fatal(err)
		}
		r := Read(m, fit, norms.Table{})
		if len(r.Usual) != 1 || len(r.Unusual()) != c.unusual || len(r.Warnings) != 1+c.unusual {
			t.Errorf("allowing for %v degrees leaves %.3f of a length unknown; usual %q, unusual %q", c.tilt, float64(r.PerPixel.U95/r.PerPixel.Value), r.Usual, r.Unusual())
		}
	}
}

func read(t *testing.T, m hand.Marks) Reading {
	t.Helper()
	fit, err := ruler.Fit(camera, m.ClickSD)
	if err != nil {
		t.Fatal(err)
	}
	table, err := norms.Parse(assets.NormalValues)
	if err != nil {
		t.Fatal(err)
	}
	return Read(m, fit, table)
}

// handAround marks a third web of arch a (its place given in mm from the
// photograph's corner) with joints so far proximal and distal of its crown.
func handAround(a arch.Arch, proximal, distal plane.Millimetre) hand.Marks {
	pixel := func(p plane.Position) plane.PixelPoint {
		return plane.Pt(plane.Pixel(p.X/perPixel), plane.Pixel(p.Y/perPixel))
	}
	m := hand.Marks{Side: hand.Right, View: hand.Dorsal, ClickSD: 2, Joints: map[hand.Digit]map[hand.Joint]plane.PixelPoint{}}
	for i, d := range []hand.Digit{hand.Middle, hand.Ring} {
		beside := a.Crown.Add(a.Axis.Left().Scale(float64(10 - 20*i)))
		m.Joints[d] = map[hand.Joint]plane.PixelPoint{
			hand.MCP: pixel(beside.Add(a.Axis.Scale(-float64(proximal)))),
			hand.PIP: pixel(beside.Add(a.Axis.Scale(float64(distal)))),
		}
	}
	line := a.Polyline(7, perPixel)
	w := hand.WebMarks{Web: hand.ThirdWeb}
	for i := 1; i < len(line); i++ {
		n := int(math.Ceil(float64(line[i].Distance(line[i-1]) / perPixel)))
		for j := range n {
			w.Edge = append(w.Edge, pixel(line[i-1].Towards(line[i], float64(j)/float64(n))))
		}
	}
	m.Webs = []hand.WebMarks{w}
	return m
}

// clicked is m as an observer with 2 px noise and a tracer would place it: the
// border errs by 0.4 px over stretches of about eight points, and by 0.2 px as a
// whole.
func clicked(m hand.Marks, rng *rand.Rand) hand.Marks {
	for _, joints := range m.Joints {
		for _, j := range []hand.Joint{hand.MCP, hand.PIP} {
			joints[j] = joints[j].Add(plane.Vec(plane.Pixel(2*rng.NormFloat64()), plane.Pixel(2*rng.NormFloat64())))
		}
	}
	edge := m.Webs[0].Edge
	moved := make([]plane.PixelPoint, len(edge))
	whole, state := 0.2*rng.NormFloat64(), rng.NormFloat64()
	for i, p := range edge {
		state = 0.88*state + math.Sqrt(1-0.88*0.88)*rng.NormFloat64()
		j := min(max(i, 3), len(edge)-4)
		across := edge[j+3].Sub(edge[j-3]).Direction().Left()
		moved[i] = p.Add(across.Scale(whole + 0.4*state))
	}
	m.Webs[0].Edge = moved
	return m
}

func TestAReaderThatRemembersReadsTheSameFigures(t *testing.T) {
	a := arch.Arch{Shape: arch.Gothic, Crown: plane.Pt[plane.Millimetre](60, 50), Axis: plane.Vec[plane.Millimetre](0, -1),
		Flare: plane.Degrees(9), Turn: plane.Degrees(60), Radius: 6}
	m := clicked(handAround(a, 20, 20), rand.New(rand.NewPCG(1, 1)))
	table, err := norms.Parse(assets.NormalValues)
	if err != nil {
		t.Fatal(err)
	}
	var reader Reader
	for step := range 6 {
		switch step {
		case 2: // a joint moves
			m.Joints[hand.Ring][hand.PIP] = m.Joints[hand.Ring][hand.PIP].Add(plane.Vec[plane.Pixel](3, 5))
		case 3: // the border moves
			m.Webs[0].Edge = plane.Pulled(m.Webs[0].Edge, m.Webs[0].Edge[100], m.Webs[0].Edge[100].Add(plane.Vec[plane.Pixel](4, 0)))
		case 4: // the observer is said to be less exact
			m.ClickSD = 3
		}
		fit, err := ruler.Fit(camera, m.ClickSD)
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(Read(m, fit, table), reader.Read(m, fit, table)); diff != "" {
			t.Fatalf("step %d: a reader that remembers reads otherwise:\n%s", step, diff)
		}
	}
}
