package annotate

import (
	"image"
	"image/color"
	"math"

	"ogive/geometry/arch"
	"ogive/geometry/hand"
	"ogive/geometry/norms"
	"ogive/geometry/plane"
	"ogive/geometry/reading"
	"ogive/geometry/scale"
)

// handmade is a right hand seen from the back, drawn with plain shapes, with
// marks and plausible figures made by hand. Its fingers point along up.
type handmade struct {
	picture *image.RGBA
	marks   hand.Marks
	ref     scale.Reference
	reading reading.Reading
}

var (
	fair  = color.RGBA{0xe8, 0xc4, 0xa8, 0xff}
	dark  = color.RGBA{0x4f, 0x33, 0x26, 0xff}
	drape = color.RGBA{0x5d, 0x8f, 0x86, 0xff}
)

// newHandmade fits the hand into a picture of w by h pixels.
func newHandmade(w, h int, skin, ground color.RGBA) handmade {
	m := handmade{picture: image.NewRGBA(image.Rect(0, 0, w, h))}
	for i := 0; i < len(m.picture.Pix); i += 4 {
		m.picture.Pix[i], m.picture.Pix[i+1], m.picture.Pix[i+2], m.picture.Pix[i+3] = ground.R, ground.G, ground.B, 255
	}
	k := math.Min(float64(w), float64(h)) / 1000
	at := func(x, y float64) plane.PixelPoint {
		return plane.Pt(plane.Pixel(float64(w)/2+k*x), plane.Pixel(float64(h)/2+k*y))
	}
	m.marks = hand.Marks{Side: hand.Right, View: hand.Dorsal, ClickSD: 2, Joints: map[hand.Digit]map[hand.Joint]plane.PixelPoint{}}
	m.reading = reading.Reading{
		Side: hand.Right, View: hand.Dorsal, Method: scale.ByRuler,
		PerPixel: plane.Estimate[plane.Millimetre]{Value: plane.Millimetre(0.2 / k), U95: plane.Millimetre(0.002 / k)},
		Warnings: []string{"two points on a ruler see no tilt: up to 10 degrees either way are allowed for in every length"},
	}
	m.ref = scale.Ruler{From: at(-300, 430), To: at(-50, 432), Length: 50}
	lean := map[hand.Digit]float64{hand.IndexFinger: -0.2, hand.Middle: -0.05, hand.Ring: 0.08, hand.Little: 0.24}
	for i, d := range []hand.Digit{hand.IndexFinger, hand.Middle, hand.Ring, hand.Little} {
		x := -165 + 110*float64(i)
		y := []float64{20, 0, 15, 50}[i]
		l := []float64{190, 205, 190, 150}[i]
		s, c := math.Sincos(lean[d])
		along := func(t float64) plane.PixelPoint { return at(x+s*l*t, y-c*l*t) }
		m.marks.Joints[d] = map[hand.Joint]plane.PixelPoint{hand.MCP: along(0), hand.PIP: along(1), hand.DIP: along(1.6), hand.Tip: along(2.05)}
		paintCapsule(m.picture, along(-1.6), along(2.0), 46*k, skin)
	}
	for _, web := range []hand.Web{hand.SecondWeb, hand.ThirdWeb, hand.FourthWeb} {
		m.addWeb(web, k)
	}
	return m
}

// addWeb puts an arch between two digits and reads it.
func (m *handmade) addWeb(web hand.Web, k float64) {
	a, b := web.Digits()
	level := map[hand.Web]float64{hand.SecondWeb: 0.47, hand.ThirdWeb: 0.56, hand.FourthWeb: 0.39}[web]
	foot := func(d hand.Digit) plane.PixelPoint {
		return m.marks.Joints[d][hand.MCP].Towards(m.marks.Joints[d][hand.PIP], level)
	}
	crown := foot(a).Mid(foot(b))
	axis := m.marks.Joints[a][hand.PIP].Mid(m.marks.Joints[b][hand.PIP]).Sub(crown).Direction()
	shape := arch.Arch{
		Shape: arch.Gothic, Crown: plane.Position{X: plane.Millimetre(crown.X), Y: plane.Millimetre(crown.Y)},
		Axis:  plane.Vec(plane.Millimetre(axis.X), plane.Millimetre(axis.Y)),
		Flare: plane.Degrees(6), Turn: plane.Degrees(62), Radius: plane.Millimetre(42 * k),
	}
	if web == hand.SecondWeb {
		shape.Shape, shape.Turn, shape.Radius, shape.Flat = arch.U, plane.RightAngle, plane.Millimetre(14*k), plane.Millimetre(16*k)
	}
	pixel := func(p plane.Position) plane.PixelPoint { return plane.Pt(plane.Pixel(p.X), plane.Pixel(p.Y)) }
	w := reading.Web{Web: web, Shape: shape.Shape, ShapeSure: web != hand.FourthWeb, Crown: crown}
	for i, p := range shape.Polyline(plane.Millimetre(60*k), plane.Millimetre(2*k)) {
		w.Curve = append(w.Curve, pixel(p))
		wobble := plane.Pixel(2 * k * math.Sin(float64(i)))
		w.Edge = append(w.Edge, pixel(p).Add(plane.Vec(wobble, 0)))
	}
	for i, p := range shape.Springings() {
		w.Springing[i] = pixel(p)
	}
	mm := func(px plane.Millimetre) *plane.Estimate[plane.Millimetre] {
		return &plane.Estimate[plane.Millimetre]{Value: px * plane.Millimetre(0.2/k), U95: 0.3}
	}
	angle := func(v, u plane.Angle) *plane.Estimate[plane.Angle] {
		return &plane.Estimate[plane.Angle]{Value: v, U95: u}
	}
	w.Index = &plane.Estimate[plane.Ratio]{Value: plane.Ratio(level), U95: 0.021}
	w.Span, w.Rise = mm(shape.Span()), mm(shape.Rise())
	w.Flare, w.CrownAngle = angle(shape.Flare, plane.Degrees(2)), angle(shape.CrownAngle(), plane.Degrees(5))
	w.Verdicts = map[hand.Web][]norms.Verdict{
		hand.SecondWeb: {{Figure: "index", Finding: "within limits", Limit: 0.45, Against: "published values"},
			{Figure: "span", Finding: "too wide", Limit: 8.1, Against: "other webs of the same hand"}},
		hand.ThirdWeb:  {{Figure: "index", Finding: "within limits", Certain: true, Limit: 0.67, Against: "published values"}},
		hand.FourthWeb: {{Figure: "index", Finding: "too deep", Certain: true, Limit: 0.45, Against: "published values"}},
	}[web]
	if web == hand.FourthWeb {
		w.Warnings = []string{"gothic and round explain the border almost equally well"}
	}
	m.reading.Webs = append(m.reading.Webs, w)
}

// webView is a look into one web: the junction of the skins against a digit's
// axis.
func webView(w, h int) handmade {
	m := newHandmade(w, h, fair, drape)
	k := math.Min(float64(w), float64(h)) / 1000
	at := func(x, y float64) plane.PixelPoint {
		return plane.Pt(plane.Pixel(float64(w)/2+k*x), plane.Pixel(float64(h)/2+k*y))
	}
	j := hand.JunctionMarks{Web: hand.ThirdWeb, Axis: [2]plane.PixelPoint{at(-300, -120), at(300, -100)}}
	for i := range 9 {
		t := float64(i) / 8
		j.Line = append(j.Line, at(-120+200*t, 150-190*t+6*math.Sin(9*t)))
	}
	m.marks = hand.Marks{Side: hand.Left, View: hand.WebView, Junctions: []hand.JunctionMarks{j}}
	m.reading.Side, m.reading.View, m.reading.Warnings = hand.Left, hand.WebView, nil
	m.reading.Webs = []reading.Web{{
		Web:      hand.ThirdWeb,
		Slope:    &plane.Estimate[plane.Angle]{Value: plane.Degrees(45), U95: plane.Degrees(3)},
		Verdicts: []norms.Verdict{{Figure: "slope", Finding: "within limits", Certain: true, Limit: 50, Against: "published values"}},
	}}
	return m
}

// paintCapsule paints a band with round ends.
func paintCapsule(img *image.RGBA, a, b plane.PixelPoint, r float64, c color.RGBA) {
	p, q := xy(float64(a.X), float64(a.Y)), xy(float64(b.X), float64(b.Y))
	area := image.Rect(int(math.Min(p.X, q.X)-r), int(math.Min(p.Y, q.Y)-r), int(math.Max(p.X, q.X)+r)+1, int(math.Max(p.Y, q.Y)+r)+1).Intersect(img.Bounds())
	for y := area.Min.Y; y < area.Max.Y; y++ {
		for x := area.Min.X; x < area.Max.X; x++ {
			if distanceToLine(xy(float64(x)+0.5, float64(y)+0.5), p, q) < r {
				img.SetRGBA(x, y, c)
			}
		}
	}
}
