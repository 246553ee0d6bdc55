package phantom

import (
	"math"
	"math/rand/v2"

	"ogive/geometry/arch"
	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/geometry/scale"
)

// Truth is the exact geometry behind a picture: places on the photograph in
// pixels, figures in the true plane of the web.
type Truth struct {
	Side hand.Side
	View hand.View
	// Plane takes pixels to millimetres on the plane of hand and reference.
	Plane scale.Map

	Joints    map[hand.Digit]map[hand.Joint]plane.PixelPoint
	Webs      []WebTruth
	Junctions []JunctionTruth

	Skin SkinTruth
	Grey *GreyTruth // nil where there is no neutral patch

	Ruler *RulerTruth // nil where there is a card
	Card  *CardTruth  // nil where there is a ruler
}

// WebTruth is the truth of one web.
type WebTruth struct {
	Web   hand.Web
	Shape arch.Shape

	Index      plane.Ratio
	Depth      plane.Millimetre
	Span       plane.Millimetre // 0 for a V
	Rise       plane.Millimetre // 0 for a V
	RiseToSpan plane.Ratio      // 0 for a V
	Flare      plane.Angle
	CrownAngle plane.Angle
	Radius     plane.Millimetre // of the arcs; 0 for a V
	Flat       plane.Millimetre // 0 but for a U
	Area       plane.SquareMillimetre
	// Widths at 2, 5 and 10 mm from the crown, as far as the borders are straight.
	Widths []Width

	Crown plane.PixelPoint
	// Springing of the radial and of the ulnar digit.
	Springing [2]plane.PixelPoint
	// Border runs from the radial digit over the crown to the ulnar one, points
	// less than a pixel apart.
	Border []plane.PixelPoint
	// Straight is how far the two borders stay straight beyond the springings.
	Straight [2]plane.Millimetre
}

// Width is the true distance between the two borders at the distance Distal
// from the crown.
type Width struct{ Distal, Width plane.Millimetre }

// JunctionTruth is the junction of glabrous and pigmented skin of one web.
type JunctionTruth struct {
	Web   hand.Web
	Slope plane.Angle
	Line  []plane.PixelPoint
	Axis  [2]plane.PixelPoint
}

// RulerTruth is two ticks of the ruler, Length apart, and every tick between
// them, Step apart, all on the line half way along the short ticks.
type RulerTruth struct {
	From, To     plane.PixelPoint
	Length, Step plane.Millimetre
	Ticks        []plane.PixelPoint
}

// CardTruth is where the sides of the card meet (its corners are rounded), in
// order around, the first to the second being Width apart.
type CardTruth struct {
	Corners       [4]plane.PixelPoint
	Width, Height plane.Millimetre
}

// truth gathers what is known of the hand in its place.
func (a *anatomy) truth(p placement, cam camera, c Case) Truth {
	t := Truth{Side: c.Side, View: c.View, Plane: cam.toPlane, Joints: map[hand.Digit]map[hand.Joint]plane.PixelPoint{}}
	pixel := func(q point) plane.PixelPoint { return cam.pixel(p.plane(q)) }
	for _, d := range hand.Digits[1:] {
		f := a.digits[d]
		t.Joints[d] = map[hand.Joint]plane.PixelPoint{
			hand.MCP: pixel(f.at(a.zero(*f))), hand.PIP: pixel(f.pip()),
			hand.DIP: pixel(f.dip()), hand.Tip: pixel(f.tip()),
		}
	}
	perPixel := plane.Millimetre(float64(c.Distance) / float64(c.FocalPx))
	for _, w := range measured {
		t.Webs = append(t.Webs, a.webTruth(w, pixel, perPixel))
	}
	return t
}

func (a *anatomy) webTruth(w hand.Web, pixel func(point) plane.PixelPoint, perPixel plane.Millimetre) WebTruth {
	web := a.webs[w]
	dr, du := w.Digits()
	f, g := *a.digits[dr], *a.digits[du]
	t := WebTruth{
		Web: w, Shape: web.shape,
		Index: a.index(web.crown, f, g),
		Depth: f.pip().Mid(g.pip()).Sub(web.crown).Dot(f.axis.Add(g.axis).Direction()),
		Span:  2 * web.halfSpan(), Rise: web.rise(),
		Flare: web.flare, CrownAngle: 2 * web.turn, Radius: web.radius, Flat: web.flat, Area: web.area(),
		Crown:     pixel(web.crown),
		Springing: [2]plane.PixelPoint{pixel(web.springing(radial)), pixel(web.springing(ulnar))},
	}
	if t.Span > 0 {
		t.RiseToSpan = plane.Ratio(t.Rise / t.Span)
	}
	t.Straight = [2]plane.Millimetre{
		straightBeyond(f, web, radial), straightBeyond(g, web, ulnar),
	}
	reach := web.rise() + min(t.Straight[0], t.Straight[1])*plane.Millimetre(web.flare.Cos())
	for _, at := range []plane.Millimetre{2, 5, 10} {
		if at <= reach {
			t.Widths = append(t.Widths, Width{at, web.width(at)})
		}
	}
	for _, q := range a.border(w, 0.7*perPixel) {
		t.Border = append(t.Border, pixel(q))
	}
	return t
}

// straightBeyond is how far the border of f, the digit on side s of the web,
// runs straight beyond the springing.
func straightBeyond(f digit, web webArch, s flank) plane.Millimetre {
	along := f.straight[-s] - f.along(web.springing(s))
	return max(0, along/plane.Millimetre(f.taper.Cos()))
}

// Marks is what an observer would place on the picture who misses each point by
// a normal error of clickSD pixels each way: joints, three seeds a web, the
// junction, and the ends of the ruler or the corners of the card.
func (t Truth) Marks(clickSD plane.Pixel, rng *rand.Rand) (hand.Marks, scale.Reference) {
	click := func(p plane.PixelPoint) plane.PixelPoint {
		return p.Add(plane.Vec(clickSD*plane.Pixel(rng.NormFloat64()), clickSD*plane.Pixel(rng.NormFloat64())))
	}
	m := hand.Marks{Side: t.Side, View: t.View, ClickSD: clickSD, Joints: map[hand.Digit]map[hand.Joint]plane.PixelPoint{}}
	for _, d := range hand.Digits {
		for _, j := range hand.Joints {
			p, ok := t.Joints[d][j]
			if !ok {
				continue
			}
			if m.Joints[d] == nil {
				m.Joints[d] = map[hand.Joint]plane.PixelPoint{}
			}
			m.Joints[d][j] = click(p)
		}
	}
	for _, w := range t.Webs {
		m.Webs = append(m.Webs, hand.WebMarks{Web: w.Web, Seeds: []plane.PixelPoint{
			click(w.beyond(0, t.Plane, 0.55+0.4*rng.Float64())), click(w.Crown),
			click(w.beyond(1, t.Plane, 0.55+0.4*rng.Float64())),
		}})
	}
	for _, j := range t.Junctions {
		marked := hand.JunctionMarks{Web: j.Web, Axis: [2]plane.PixelPoint{click(j.Axis[0]), click(j.Axis[1])}}
		for _, p := range j.Line {
			marked.Line = append(marked.Line, click(p))
		}
		m.Junctions = append(m.Junctions, marked)
	}
	return m, t.reference(click)
}

func (t Truth) reference(click func(plane.PixelPoint) plane.PixelPoint) scale.Reference {
	if t.Card == nil {
		return scale.Ruler{From: click(t.Ruler.From), To: click(t.Ruler.To), Length: t.Ruler.Length}
	}
	card := scale.Card{Width: t.Card.Width, Height: t.Card.Height}
	for i, p := range t.Card.Corners {
		card.Corners[i] = click(p)
	}
	return card
}

// beyond is the point of the border the part of its straight run beyond the
// springing of that side (0 radial, 1 ulnar).
func (w WebTruth) beyond(side int, m scale.Map, part float64) plane.PixelPoint {
	from := m.Position(w.Springing[side])
	want := plane.Millimetre(part) * w.Straight[side]
	n := len(w.Border)
	best, miss := w.Springing[side], math.Inf(1)
	for i := range (n + 1) / 2 {
		p := w.Border[i]
		if side == 1 {
			p = w.Border[n-1-i]
		}
		q := m.Position(p)
		if q.Sub(m.Position(w.Crown)).Norm() < from.Sub(m.Position(w.Crown)).Norm() {
			break
		}
		if d := math.Abs(float64(q.Distance(from) - want)); d < miss {
			best, miss = p, d
		}
	}
	return best
}
