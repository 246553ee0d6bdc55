package annotate

import (
	"image"
	"image/color"
	"math"
	"strings"
	"sync"

	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goitalic"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/opentype"
	"golang.org/x/image/math/fixed"
)

// fonts are the faces of one picture; faces are not safe to share between
// drawings that run at the same time.
type fonts struct{ regular, bold, italic, title, small lettering }

// lettering is a face and its size in pixels.
type lettering struct {
	font.Face
	size float64
}

// parsed are the fonts the program carries; that they can be read is proven by
// every test of this package.
var parsed = sync.OnceValue(func() (f struct{ regular, bold, italic *opentype.Font }) {
	f.regular = mustParse(goregular.TTF)
	f.bold = mustParse(gobold.TTF)
	f.italic = mustParse(goitalic.TTF)
	return f
})

func mustParse(ttf []byte) *opentype.Font {
	f, err := opentype.Parse(ttf)
	if err != nil {
		panic("annotate: an embedded font is damaged: " + err.Error())
	}
	return f
}

func newFonts(em float64) fonts {
	p := parsed()
	return fonts{
		regular: face(p.regular, em),
		bold:    face(p.bold, em),
		italic:  face(p.italic, em),
		title:   face(p.bold, 1.25*em),
		small:   face(p.bold, 0.82*em),
	}
}

func face(f *opentype.Font, size float64) lettering {
	made, err := opentype.NewFace(f, &opentype.FaceOptions{Size: size, DPI: 72, Hinting: font.HintingNone})
	if err != nil {
		panic("annotate: an embedded font can't be set: " + err.Error())
	}
	return lettering{made, size}
}

// widthOf is the width of a text in pixels.
func (f lettering) widthOf(text string) float64 {
	return float64(font.MeasureString(f.Face, text)) / 64
}

// lineHeight is the distance between two lines of text.
func (f lettering) lineHeight() float64 { return 1.32 * f.size }

// baseline is how far the baseline lies below the top of a line of text.
func (f lettering) baseline() float64 { return 0.98 * f.size }

// text writes at the left end of a baseline.
func (s *sheet) text(f lettering, c color.RGBA, baseline spot, words string) {
	d := font.Drawer{
		Dst: s.img, Src: image.NewUniform(c), Face: f.Face,
		Dot: fixed.Point26_6{X: fix(baseline.x), Y: fix(baseline.y)},
	}
	d.DrawString(words)
}

// haloed writes light letters in a dark casing, legible on any ground.
func (s *sheet) haloed(f lettering, c color.RGBA, baseline spot, words string) {
	const around = 16
	r := math.Max(0.11*f.size, 1.2)
	for _, share := range []float64{1, 0.5} {
		for i := range around {
			sin, cos := math.Sincos(2 * math.Pi * float64(i) / around)
			s.text(f, ink, baseline.add(spot{share * r * cos, share * r * sin}), words)
		}
	}
	s.text(f, c, baseline, words)
}

func fix(x float64) fixed.Int26_6 { return fixed.Int26_6(math.Round(x * 64)) }

// wrapped breaks a text into lines no wider than width; a word wider than that
// is broken too.
func wrapped(f lettering, text string, width float64) []string {
	var lines []string
	line := ""
	for _, word := range strings.Fields(text) {
		for _, part := range broken(f, word, width) {
			switch joined := strings.TrimSpace(line + " " + part); {
			case line == "" || f.widthOf(joined) <= width:
				line = joined
			default:
				lines = append(lines, line)
				line = part
			}
		}
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
}

// broken is a word in parts no wider than width.
func broken(f lettering, word string, width float64) []string {
	if f.widthOf(word) <= width {
		return []string{word}
	}
	var parts []string
	part := ""
	for _, r := range word {
		if part != "" && f.widthOf(part+string(r)) > width {
			parts = append(parts, part)
			part = ""
		}
		part += string(r)
	}
	return append(parts, part)
}
