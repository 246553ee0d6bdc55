package photo

import (
	"image"

	"ogive/imaging/photo/sequential"
)

// Glance is a small upright picture of the photograph in the file at path, in a
// tenth of a second, for something to show while Open reads it: the one the
// camera put into the EXIF data, else the photograph at an eighth of its size.
// Size is that of the whole photograph. False if there is no such short cut.
func Glance(path string) (small image.Image, size image.Point, ok bool) {
	data, err := load(path)
	if err != nil {
		return nil, image.Point{}, false
	}
	f, err := formatOf(data)
	if err != nil {
		return nil, image.Point{}, false
	}
	h, err := f.header(data)
	if err != nil {
		return nil, image.Point{}, false
	}
	for _, pixels := range []func() (image.Image, bool){
		func() (image.Image, bool) { return thumbnailOf(f.exif(data), h.size) },
		func() (image.Image, bool) { return sequential.Eighth(data) },
	} {
		if img, ok := pixels(); ok {
			p := Photograph{pixels: img, turn: h.turn}
			return p.Picture(), h.turn.upright(h.size), true
		}
	}
	return nil, image.Point{}, false
}

// thumbnailOf is the small picture in EXIF data, as it is stored. Cameras put
// black bars beside it where the photograph has other proportions than 4 to 3;
// they are left out.
func thumbnailOf(exif []byte, size image.Point) (image.Image, bool) {
	t, ok := readIFDs(exif)
	if !ok {
		return nil, false
	}
	p, err := Decode(t.thumbnail())
	if err != nil {
		return nil, false
	}
	r := p.pixels.Bounds()
	w, h := r.Dx(), r.Dy()
	if high := (w*size.Y + size.X/2) / size.X; high < h {
		r.Min.Y += (h - high) / 2
		r.Max.Y = r.Min.Y + max(high, 1)
	} else if wide := (h*size.X + size.Y/2) / size.Y; wide < w {
		r.Min.X += (w - wide) / 2
		r.Max.X = r.Min.X + max(wide, 1)
	}
	cut, ok := p.pixels.(interface {
		SubImage(image.Rectangle) image.Image
	})
	if !ok {
		return p.pixels, true
	}
	return cut.SubImage(r), true
}
