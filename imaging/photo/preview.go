package photo

import (
	"image"
)

// Preview is the small upright picture that most cameras put into the EXIF
// data, for something to show at once; false if there is none.
func Preview(path string) (image.Image, bool) {
	data, err := load(path)
	if err != nil {
		return nil, false
	}
	f, err := formatOf(data)
	if err != nil {
		return nil, false
	}
	h, err := f.header(data)
	if err != nil {
		return nil, false
	}
	t, ok := readIFDs(f.exif(data))
	if !ok {
		return nil, false
	}
	p, err := Decode(t.thumbnail())
	if err != nil {
		return nil, false
	}
	p.turn = h.turn
	return p.Picture(), true
}

// thumbnail is the JPEG file inside the EXIF block, empty if there is none.
func (t ifds) thumbnail() []byte {
	at, n := t.preview.number(tagThumbnail), t.preview.number(tagThumbnailLen)
	if at < 0 || n < 0 || at+n > len(t.preview.block) {
		return nil
	}
	return t.preview.block[at : at+n]
}
