package annotate

import (
	"image"
	"math"
	"testing"

	"ogive/geometry/plane"
	"ogive/geometry/scale"
)

func TestTheAngleDrawnIsThatBetweenJunctionAndAxis(t *testing.T) {
	field := boxOf(0, 0, 1000, 1000)
	for degrees := -170.0; degrees <= 180; degrees += 17 {
		sin, cos := math.Sincos(degrees * math.Pi / 180)
		way := xy(cos, sin)
		s := slope{axis: [2]spot{xy(200, 500), xy(800, 500)}}
		for i := range 6 {
			s.line = append(s.line, xy(500, 520).Add(way.Times(20*float64(i)-50)))
		}
		s.layOut(15, field)
		from, to := s.angles()
		want := math.Abs(degrees)
		if want > 90 {
			want = 180 - want
		}
		if got := math.Abs(to-from) * 180 / math.Pi; math.Abs(got-want) > 1e-6 {
			t.Errorf("junction at %v degrees: the arc spans %v, want %v", degrees, got, want)
		}
		if !boxAt(s.vertex.X, s.vertex.Y, 0, 0).Within(field) {
			t.Errorf("junction at %v degrees: the angle is drawn outside the picture at %v", degrees, s.vertex)
		}
	}
}

func TestWhereTheyMeetFarAwayTheAngleIsDrawnAtTheJunction(t *testing.T) {
	s := slope{axis: [2]spot{xy(100, 100), xy(900, 110)}, line: []spot{xy(400, 600), xy(450, 602), xy(500, 601)}}
	s.layOut(10, boxOf(0, 0, 1000, 800))
	if s.onAxis || s.vertex.Sub(xy(450, 601)).Length() > 100 {
		t.Errorf("the angle is drawn at %v", s.vertex)
	}
	if e := s.extensions(10); len(e) != 1 || e[0][0] != s.vertex {
		t.Errorf("no parallel to the axis is drawn at the junction: %v", e)
	}
}

func TestTheWebViewPointsItsCardAtTheAngle(t *testing.T) {
	m := webView(1200, 900)
	sc := newScene(newSheet(image.Pt(1200, 900), 0), m.marks, m.ref, m.reading)
	if len(sc.cards) != 1 || !sc.cards[0].anchored || len(sc.leaders) != 1 {
		t.Fatalf("%d cards, %d leaders", len(sc.cards), len(sc.leaders))
	}
	if d := sc.leaders[0][1].Sub(sc.webs[0].slope.vertex).Length(); d > 2*sc.em {
		t.Errorf("the leader ends %.0f pixels from the angle", d)
	}
}

func TestEachReferenceIsDrawnAndMeasured(t *testing.T) {
	m := newHandmade(1600, 1200, dark, drape)
	pt := func(x, y plane.Pixel) plane.PixelPoint { return plane.Pt(x, y) }
	for _, c := range []struct {
		ref   scale.Reference
		words string
	}{
		{scale.Ruler{From: pt(100, 1000), To: pt(400, 1000), Length: 50}, "50 mm marked"},
		{scale.Ticks{At: []plane.PixelPoint{pt(100, 1000), pt(160, 1000), pt(220, 1000)}, Step: 10}, "3 ticks, 10 mm apart"},
		{scale.Card{Corners: [4]plane.PixelPoint{pt(100, 700), pt(300, 700), pt(300, 1000), pt(100, 1000)}, Width: 53.98, Height: 85.6}, "53.98 × 85.6 mm"},
	} {
		m.ref = c.ref
		sc := newScene(newSheet(image.Pt(1600, 1200), 0), m.marks, m.ref, m.reading)
		if _, words := sc.referenceLabel(); words != c.words {
			t.Errorf("the reference reads %q, want %q", words, c.words)
		}
		got, at := drawnHand(m)
		for _, q := range c.ref.Points() {
			p := at(q)
			if d := difference(got.RGBAAt(p.X, p.Y), cores[kindReference]); d > 60 {
				t.Errorf("%s: nothing is drawn at %v", c.words, q)
			}
		}
	}
}
