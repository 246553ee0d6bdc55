package markshapes

import (
	"image"
	"image/color"
	"image/draw"
	"math"
	"sync"

	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goitalic"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/opentype"
	"golang.org/x/image/math/fixed"

	"ogive/imaging/palette"
)

// Face is a font of a size in pixels. Faces are not safe to share between
// drawings that run at the same time.
type Face struct {
	font.Face
	Size float64
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
		panic("markshapes: an embedded font is damaged: " + err.Error())
	}
	return f
}

// Regular, Bold and Italic are the faces in letters of size pixels.
func Regular(size float64) Face { return face(parsed().regular, size) }

// Bold is for names beside marks.
func Bold(size float64) Face { return face(parsed().bold, size) }

// Italic is for doubt.
func Italic(size float64) Face { return face(parsed().italic, size) }

func face(f *opentype.Font, size float64) Face {
	made, err := opentype.NewFace(f, &opentype.FaceOptions{Size: size, DPI: 72, Hinting: font.HintingNone})
	if err != nil {
		panic("markshapes: an embedded font can't be set: " + err.Error())
	}
	return Face{made, size}
}

// WidthOf is the width of a text in pixels.
func (f Face) WidthOf(text string) float64 {
	return float64(font.MeasureString(f.Face, text)) / 64
}

// Write writes at the left end of a baseline.
func Write(dst draw.Image, f Face, c color.Color, baseline Spot, words string) {
	d := font.Drawer{
		Dst: dst, Src: image.NewUniform(c), Face: f.Face,
		Dot: fixed.Point26_6{X: fix(baseline.X), Y: fix(baseline.Y)},
	}
	d.DrawString(words)
}

// WriteCased writes letters in a dark casing, legible on any ground.
func WriteCased(dst draw.Image, f Face, c color.Color, baseline Spot, words string) {
	const around = 16
	r := f.Casing()
	for _, share := range []float64{1, 0.5} {
		for i := range around {
			sin, cos := math.Sincos(2 * math.Pi * float64(i) / around)
			Write(dst, f, palette.Ink, baseline.Add(Spot{share * r * cos, share * r * sin}), words)
		}
	}
	Write(dst, f, c, baseline, words)
}

// Casing is how far the casing of letters reaches around them.
func (f Face) Casing() float64 { return math.Max(0.12*f.Size, 1.25) }

func fix(x float64) fixed.Int26_6 { return fixed.Int26_6(math.Round(x * 64)) }
