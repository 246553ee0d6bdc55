package annotate

import (
	"bytes"
	"image"
	"image/color"
	"math"
	"slices"
	"strings"
	"testing"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/geometry/reading"
	"ogive/geometry/scale"
	"ogive/imaging/photo"
)

// pictures are photographs of every build.
var pictures = map[string]image.Point{
	"thumbnail": {300, 200}, "portrait": {900, 1400}, "landscape": {1600, 1200},
	"panorama": {2400, 500}, "narrow": {90, 900}, "24 megapixels": {6000, 4000},
}

func TestCardsStayInsideThePictureApartAndOffThePhotograph(t *testing.T) {
	for name, size := range pictures {
		m := newHandmade(size.X, size.Y, fair, drape)
		sc := newScene(newSheet(size, typicalSpan(m.reading)), m.marks, m.ref, m.reading)
		picture := boxOf(0, 0, float64(sc.whole.Dx()), sc.strip.top)
		for i, c := range sc.cards {
			if !c.box.Within(picture) {
				t.Errorf("%s: card of the %v leaves the picture: %v", name, c.web.Web, c.box)
			}
			if c.box.Meets(sc.fieldBox()) {
				t.Errorf("%s: card of the %v covers the photograph", name, c.web.Web)
			}
			for _, other := range sc.cards[:i] {
				if c.box.Meets(other.box) {
					t.Errorf("%s: cards of the %v and the %v overlap", name, c.web.Web, other.web.Web)
				}
			}
		}
		if len(sc.cards) != len(m.reading.Webs) || len(sc.leaders) != len(sc.cards) {
			t.Errorf("%s: %d cards and %d leaders for %d webs", name, len(sc.cards), len(sc.leaders), len(m.reading.Webs))
		}
		for i, l := range sc.leaders {
			for _, other := range sc.leaders[:i] {
				if cross(l[0], l[1], other[0], other[1]) {
					t.Errorf("%s: two leaders cross", name)
				}
			}
		}
	}
}

func TestThePhotographIsNotTouched(t *testing.T) {
	m := newHandmade(400, 300, dark, drape)
	before := slices.Clone(m.picture.Pix)
	Draw(photo.From(m.picture), m.marks, m.ref, m.reading)
	if !bytes.Equal(before, m.picture.Pix) {
		t.Error("drawing changed the photograph")
	}
}

func TestSameMarksSamePicture(t *testing.T) {
	m := newHandmade(800, 600, dark, drape)
	first := drawOn(m.picture, m.marks, m.ref, m.reading)
	second := drawOn(m.picture, m.marks, m.ref, m.reading)
	if !bytes.Equal(first.Pix, second.Pix) {
		t.Error("two drawings of the same marks differ")
	}
}

// drawnHand is a handmade hand drawn, with the place of each pixel on the
// picture.
func drawnHand(m handmade) (*image.RGBA, func(plane.PixelPoint) image.Point) {
	sc := newScene(newSheet(m.picture.Rect.Size(), typicalSpan(m.reading)), m.marks, m.ref, m.reading)
	sc.place(m.picture)
	sc.draw()
	return sc.img, func(p plane.PixelPoint) image.Point {
		q := sc.at(p)
		return image.Pt(int(q.X), int(q.Y))
	}
}

func TestWhatIsNotMarkedIsLeftAsItWas(t *testing.T) {
	m := newHandmade(1600, 1200, fair, drape)
	got, at := drawnHand(m)
	for _, p := range []image.Point{{5, 5}, {5, 1190}, {1590, 1190}, {750, 950}} {
		q := at(plane.Pt(plane.Pixel(p.X), plane.Pixel(p.Y)))
		if got.RGBAAt(q.X, q.Y) != m.picture.RGBAAt(p.X, p.Y) {
			t.Errorf("pixel %v was %v and is %v", p, m.picture.RGBAAt(p.X, p.Y), got.RGBAAt(q.X, q.Y))
		}
	}
}

func TestMarksLieWhereTheyWerePlaced(t *testing.T) {
	m := newHandmade(1600, 1200, fair, drape)
	got, at := drawnHand(m)
	mcp := m.marks.Joints[hand.Middle][hand.MCP]
	tip := m.marks.Joints[hand.Ring][hand.Tip]
	for name, c := range map[string]struct {
		at   plane.PixelPoint
		want color.RGBA
	}{
		"the point of a joint":    {mcp, ink},
		"the body of its diamond": {mcp.Add(plane.Vec[plane.Pixel](5, 0)), cores[kindJoint]},
		"the point of a tip":      {tip, ink},
		"the middle of the ruler": {m.ref.Points()[0].Mid(m.ref.Points()[1]), cores[kindReference]},
	} {
		p := at(c.at)
		if q := got.RGBAAt(p.X, p.Y); difference(q, c.want) > 60 {
			t.Errorf("%s is %v, want %v", name, q, c.want)
		}
	}
}

func TestTheArchIsSeenAtItsCrown(t *testing.T) {
	m := newHandmade(1600, 1200, fair, drape)
	got, at := drawnHand(m)
	for _, w := range m.reading.Webs {
		saffron := 0
		p := at(w.Crown)
		for y := -6; y <= 6; y++ {
			for x := -6; x <= 6; x++ {
				if difference(got.RGBAAt(p.X+x, p.Y+y), cores[kindArch]) < 40 {
					saffron++
				}
			}
		}
		if saffron < 12 {
			t.Errorf("only %d pixels of the arch of the %v are seen about its crown", saffron, w.Web)
		}
	}
}

func difference(a, b color.RGBA) float64 {
	d := func(x, y uint8) float64 { return math.Abs(float64(x) - float64(y)) }
	return d(a.R, b.R) + d(a.G, b.G) + d(a.B, b.B)
}

func TestSmallPhotographsAreEnlargedUntilWordsCanBeRead(t *testing.T) {
	for _, c := range []struct {
		size image.Point
		want int
	}{{image.Pt(300, 200), 4}, {image.Pt(720, 382), 2}, {image.Pt(1600, 1200), 1}, {image.Pt(6000, 4000), 1}} {
		if got := enlargement(c.size); got != c.want {
			t.Errorf("%v is enlarged %d times, want %d", c.size, got, c.want)
		}
		m := newHandmade(c.size.X, c.size.Y, fair, drape)
		s := newSheet(c.size, typicalSpan(m.reading))
		if s.em < 12 {
			t.Errorf("lettering on %v is %.1f pixels high", c.size, s.em)
		}
	}
}

func TestSenselessMarksAreLeftOut(t *testing.T) {
	m := newHandmade(500, 400, fair, drape)
	nan, far := plane.Pixel(math.NaN()), plane.Pixel(1e300)
	m.marks.Joints[hand.Middle][hand.MCP] = plane.Pt(nan, 3)
	m.marks.Joints[hand.Ring][hand.PIP] = plane.Pt(far, far)
	m.marks.Joints[hand.Little][hand.PIP] = m.marks.Joints[hand.Little][hand.MCP]
	w := &m.reading.Webs[0]
	w.Crown, w.Springing[0] = plane.Pt(far, nan), plane.Pt(nan, nan)
	w.Curve = append(w.Curve, plane.Pt(-far, far))
	w.Span.Value = plane.Millimetre(math.Inf(1))
	m.reading.Webs[1] = reading.Web{Web: hand.ThirdWeb}
	m.marks.Junctions = []hand.JunctionMarks{{Web: hand.FourthWeb, Line: []plane.PixelPoint{plane.Pt(nan, nan), {}}}}
	for _, ref := range []scale.Reference{nil, scale.Ruler{From: plane.Pt(nan, nan)}, scale.Ticks{}, scale.Card{}} {
		if got := drawOn(m.picture, m.marks, ref, m.reading); got.Bounds().Dx() < 500 {
			t.Errorf("nothing was drawn: %v", got.Bounds())
		}
	}
	if got := drawOn(image.NewRGBA(image.Rect(0, 0, 1, 1)), m.marks, m.ref, m.reading); got.Bounds().Empty() {
		t.Error("a photograph of one pixel gave no picture")
	}
}

func TestTheStripSaysWhatMustBeSaid(t *testing.T) {
	m := newHandmade(800, 600, fair, drape)
	sc := newScene(newSheet(image.Pt(800, 600), 0), m.marks, m.ref, m.reading)
	warnings := strings.Join(sc.warnings(), "\n")
	for _, w := range []string{"Two points on a ruler see no tilt", "Fourth web. Gothic and round"} {
		if !strings.Contains(warnings, w) {
			t.Errorf("the strip does not warn %q: %s", w, warnings)
		}
	}
	if got := sc.limits(); !strings.Contains(got, "fourth web index 0.45 (published values)") {
		t.Errorf("limits read %q", got)
	}
	if got := sc.scaleWords(); !strings.Contains(got, "Scale by ruler") || !strings.Contains(got, "95 per cent") {
		t.Errorf("scale reads %q", got)
	}
}

func TestEveryWordOfAWarningIsSet(t *testing.T) {
	f := newFonts(12).regular
	text := "a " + strings.Repeat("verylongword", 20) + " and the rest of it"
	lines := wrapped(f, text, 100)
	for _, l := range lines {
		if f.WidthOf(l) > 100 {
			t.Errorf("line %q is wider than it may be", l)
		}
	}
	joined := strings.ReplaceAll(strings.Join(lines, ""), " ", "")
	if joined != strings.ReplaceAll(text, " ", "") {
		t.Errorf("wrapping lost words: %q", joined)
	}
}

func TestDoubtLooksDifferentWithoutColour(t *testing.T) {
	m := newHandmade(1600, 1200, fair, drape)
	sc := newScene(newSheet(image.Pt(1600, 1200), 0), m.marks, m.ref, m.reading)
	sc.place(m.picture)
	dark := func(certain bool) float64 {
		v := m.reading.Webs[2].Verdicts[0]
		v.Certain = certain
		b := boxAt(100, 100, 300, flagHeight*sc.em)
		sc.gg.SetColor(paper)
		sc.gg.DrawRectangle(b.Left, b.Top, b.Width(), b.Height())
		sc.gg.Fill()
		sc.drawFlag(v, b)
		n := 0.0
		for y := int(b.Top); y < int(b.Bottom); y++ {
			for x := int(b.Left); x < int(b.Right); x++ {
				if luminance(sc.img.RGBAAt(x, y)) < 0.2 {
					n++
				}
			}
		}
		return n / b.Width() / b.Height()
	}
	if certain, doubtful := dark(true), dark(false); certain < 0.6 || doubtful > 0.35 {
		t.Errorf("a certain flag is inked to %.2f, a doubtful one to %.2f", certain, doubtful)
	}
}

func BenchmarkDraw(b *testing.B) {
	for name, size := range map[string]image.Point{"2 megapixels": {1800, 1200}, "24 megapixels": {6000, 4000}} {
		m := newHandmade(size.X, size.Y, fair, drape)
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				drawOn(m.picture, m.marks, m.ref, m.reading)
			}
		})
	}
}
