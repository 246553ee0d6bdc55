package annotate

import (
	"image"
	"image/color"
	"math"
	"slices"

	"github.com/fogleman/gg"

	"ogive/geometry/plane"
	"ogive/geometry/reading"
	"ogive/imaging/markshapes"
)

// sheet is the picture under the pen, with the sizes that suit it.
type sheet struct {
	*markshapes.Pen
	img   *image.RGBA
	gg    *gg.Context     // for plates
	k     int             // enlargement of the photograph
	field image.Rectangle // where the photograph lies
	whole image.Rectangle // the picture with its margins
	em    float64         // size of the lettering
	pen   float64         // size of the marks: the em, less where webs are small
	fonts fonts
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
	s.Pen = markshapes.NewPen(s.img, 1, math.Max(0.1*s.pen, 1))
	s.gg = gg.NewContextForRGBA(s.img)
}

// at is where a place on the photograph lies on the picture.
func (s *sheet) at(p plane.PixelPoint) spot {
	k := float64(s.k)
	return xy(float64(s.field.Min.X)+float64(p.X)*k, float64(s.field.Min.Y)+float64(p.Y)*k)
}

// frame makes room around the photograph, and below it all for the strip.
func (s *sheet) frame(m margins) {
	w := float64(s.field.Dx()) + m.left + m.right
	lack := math.Max(0, leastEms*s.em-w)
	s.field = s.field.Add(image.Pt(int(math.Round(m.left+lack/2)), int(math.Round(m.top))))
	s.whole = image.Rect(0, 0, int(math.Ceil(w+lack)), int(math.Ceil(m.top+m.bottom))+s.field.Dy())
}

// text writes at the left end of a baseline.
func (s *sheet) text(f lettering, c color.Color, baseline spot, words string) {
	markshapes.Write(s.img, f, c, baseline, words)
}

// fieldBox is where the photograph lies.
func (s *sheet) fieldBox() box {
	return boxOf(float64(s.field.Min.X), float64(s.field.Min.Y), float64(s.field.Max.X), float64(s.field.Max.Y))
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
