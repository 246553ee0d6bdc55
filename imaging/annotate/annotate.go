// Package annotate draws marks, traced borders, fitted arches and their figures
// onto a copy of a photograph.
//
//	picture := annotate.Draw(photograph, marks, reference, reading)
//	sketch := annotate.ArchSketch(reading.Webs[0], 240)
//
// Nothing is hidden: the cards with the figures stand in a margin added on the
// side to which the fingers point, in the order of their webs, each with a line
// to its web; what concerns the whole photograph stands in a strip added below.
//
// A mark is known by its shape as well as by its colour, and every mark has a
// light core in a dark casing, so that it is seen on fair skin, on dark skin
// and on any drape. Doubt is shown by words and by the drawing of the flag,
// never by colour.
package annotate

import (
	"image"

	"golang.org/x/image/draw"

	"ogive/geometry/hand"
	"ogive/geometry/reading"
	"ogive/geometry/scale"
	"ogive/imaging/photo"
)

// Draw is a copy of the photograph with everything drawn on it, and margins with
// cards and words around it. A photograph too small for lettering is enlarged
// by a whole number.
//
// The photograph itself is not touched. The reference may be nil. Marks that
// lie far outside the photograph are left out.
func Draw(p *photo.Photograph, marks hand.Marks, ref scale.Reference, r reading.Reading) *image.RGBA {
	return drawOn(p.Picture(), marks, ref, r)
}

func drawOn(picture image.Image, marks hand.Marks, ref scale.Reference, r reading.Reading) *image.RGBA {
	size := picture.Bounds().Size()
	if size.X <= 0 || size.Y <= 0 {
		return image.NewRGBA(image.Rectangle{})
	}
	scene := newScene(newSheet(size, typicalSpan(r)), marks, ref, r)
	scene.place(picture)
	scene.draw()
	return scene.img
}

// legible is the side in pixels of a square photograph that is large enough for
// lettering to be read.
const legible = 800

// enlargement is how many times larger a photograph of that size is drawn.
func enlargement(size image.Point) int {
	k := 1
	for k*k*size.X*size.Y < legible*legible && k < legible {
		k++
	}
	return k
}

// place makes the picture and puts the photograph into it.
func (s *sheet) place(picture image.Image) {
	s.img = image.NewRGBA(s.whole)
	draw.Draw(s.img, s.img.Bounds(), image.NewUniform(paper), image.Point{}, draw.Src)
	if s.k == 1 {
		draw.Draw(s.img, s.field, picture, picture.Bounds().Min, draw.Src)
	} else {
		draw.CatmullRom.Scale(s.img, s.field, picture, picture.Bounds(), draw.Src, nil)
	}
	s.begin()
}
