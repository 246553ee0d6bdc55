package annotate

import (
	"image"
	"image/color"
	"math"
	"slices"

	"github.com/fogleman/gg"

	"ogive/geometry/plane"
	"ogive/geometry/reading"
)

// sheet is the picture under the pen, with the sizes that suit it.
type sheet struct {
	img   *image.RGBA
	gg    *gg.Context
	k     int             // enlargement of the photograph
	field image.Rectangle // where the photograph lies
	whole image.Rectangle // the picture with its margins
	em    float64         // size of the lettering
	pen   float64         // size of the marks: the em, less where webs are small
	fonts fonts
}

// spot is a place on the picture.
type spot struct{ x, y float64 }

func (a spot) add(v spot) spot           { return spot{a.x + v.x, a.y + v.y} }
func (a spot) sub(b spot) spot           { return spot{a.x - b.x, a.y - b.y} }
func (a spot) times(f float64) spot      { return spot{a.x * f, a.y * f} }
func (a spot) dot(b spot) float64        { return a.x*b.x + a.y*b.y }
func (a spot) length() float64           { return math.Hypot(a.x, a.y) }
func (a spot) to(b spot, t float64) spot { return a.add(b.sub(a).times(t)) }
func (a spot) square() spot              { return spot{-a.y, a.x} }

// unit is a one long; zero stays zero.
func (a spot) unit() spot {
	if n := a.length(); n > 0 {
		return a.times(1 / n)
	}
	return a
}

// The lettering is emShare of the side of a square as large as the photograph.
const emShare = 0.0155

// leastEms is the width of the narrowest picture, so that words can be set.
const leastEms = 30

// newSheet plans a sheet for a photograph of that size; span is the typical
// span of its webs in pixels, zero when not known.
func newSheet(size image.Point, span float64) *sheet {
	k := enlargement(size)
	s := &sheet{k: k, field: image.Rect(0, 0, size.X*k, size.Y*k)}
	s.em = emShare * math.Sqrt(float64(s.field.Dx())*float64(s.field.Dy()))
	s.pen = s.em
	if span > 0 {
		s.pen = math.Min(s.em, math.Max(0.55*s.em, 0.4*span*float64(k)))
	}
	s.whole = s.field
	s.fonts = newFonts(s.em)
	return s
}

// typicalSpan is the median distance between the springings in pixels.
func typicalSpan(r reading.Reading) float64 {
	var spans []float64
	for _, w := range r.Webs {
		if d := float64(w.Springing[0].Distance(w.Springing[1])); w.Shape != 0 && d > 0 && !math.IsInf(d, 0) {
			spans = append(spans, d)
		}
	}
	if len(spans) == 0 {
		return 0
	}
	slices.Sort(spans)
	return spans[len(spans)/2]
}

func (s *sheet) begin() {
	s.gg = gg.NewContextForRGBA(s.img)
	s.gg.SetLineCapRound()
	s.gg.SetLineJoinRound()
}

// at is where a place on the photograph lies on the picture.
func (s *sheet) at(p plane.PixelPoint) spot {
	k := float64(s.k)
	return spot{float64(s.field.Min.X) + float64(p.X)*k, float64(s.field.Min.Y) + float64(p.Y)*k}
}

// frame makes room around the photograph, and below it all for the strip.
func (s *sheet) frame(m margins) {
	w := float64(s.field.Dx()) + m.left + m.right
	lack := math.Max(0, leastEms*s.em-w)
	s.field = s.field.Add(image.Pt(int(math.Round(m.left+lack/2)), int(math.Round(m.top))))
	s.whole = image.Rect(0, 0, int(math.Ceil(w+lack)), int(math.Ceil(m.top+m.bottom))+s.field.Dy())
}

// fieldBox is where the photograph lies.
func (s *sheet) fieldBox() box {
	return box{float64(s.field.Min.X), float64(s.field.Min.Y), float64(s.field.Max.X), float64(s.field.Max.Y)}
}

// near reports whether p lies on the photograph or close enough to it to be
// drawn; what does not would make the pen run through emptiness for ever.
func (s *sheet) near(p plane.PixelPoint) bool {
	if !p.Finite() {
		return false
	}
	x, y := float64(p.X)*float64(s.k), float64(p.Y)*float64(s.k)
	w, h := float64(s.field.Dx()), float64(s.field.Dy())
	return x > -w && x < 2*w && y > -h && y < 2*h
}

// spots are the places on the picture of those ps that can be drawn.
func (s *sheet) spots(ps []plane.PixelPoint) []spot {
	out := make([]spot, 0, len(ps))
	for _, p := range ps {
		if s.near(p) {
			out = append(out, s.at(p))
		}
	}
	return out
}

// stroke is how a line is drawn: the width of its core, and dashes if any.
type stroke struct {
	core  color.RGBA
	width float64
	dash  []float64
	// thin halves the casing, for a line that lies on another.
	thin bool
}

// casing is how far the dark casing shows on either side of a core.
func (s *sheet) casing() float64 { return math.Max(0.1*s.pen, 1) }

// lines draws each of the paths with a light core in a dark casing, all casings
// below all cores, so that crossings stay clean.
func (s *sheet) lines(st stroke, paths ...[]spot) {
	casing := s.casing()
	if st.thin {
		casing /= 2
	}
	s.gg.SetDash(st.dash...)
	s.strokes(ink, st.width+2*casing, paths)
	s.strokes(st.core, st.width, paths)
	s.gg.SetDash()
}

// plainLine draws a line without casing.
func (s *sheet) plainLine(c color.RGBA, width float64, path ...spot) {
	s.strokes(c, width, [][]spot{path})
}

func (s *sheet) strokes(c color.RGBA, width float64, paths [][]spot) {
	s.gg.SetColor(c)
	s.gg.SetLineWidth(width)
	for _, path := range paths {
		if len(path) < 2 {
			continue
		}
		s.trace(path)
	}
	s.gg.Stroke()
}

func (s *sheet) trace(path []spot) {
	s.gg.NewSubPath()
	for i, q := range path {
		if i == 0 {
			s.gg.MoveTo(q.x, q.y)
			continue
		}
		s.gg.LineTo(q.x, q.y)
	}
}

// solid fills a closed outline with a light core in a dark casing.
func (s *sheet) solid(c color.RGBA, outline []spot) {
	s.trace(outline)
	s.gg.ClosePath()
	s.gg.SetColor(ink)
	s.gg.SetLineWidth(2 * s.casing())
	s.gg.StrokePreserve()
	s.gg.SetColor(c)
	s.gg.Fill()
}

// disc is the outline of a circle.
func disc(c spot, r float64) []spot {
	const n = 40
	out := make([]spot, n)
	for i := range out {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / n)
		out[i] = c.add(spot{r * cos, r * sin})
	}
	return out
}

// arc is the part of a circle from angle a to angle b, in radians.
func arc(c spot, r, a, b float64) []spot {
	const n = 24
	out := make([]spot, n+1)
	for i := range out {
		sin, cos := math.Sincos(a + (b-a)*float64(i)/n)
		out[i] = c.add(spot{r * cos, r * sin})
	}
	return out
}
