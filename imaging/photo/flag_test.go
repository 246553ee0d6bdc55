package photo

import (
	"bytes"
	"encoding/binary"
	"image"
	"image/color"
	"image/draw"
	"image/jpeg"
	"image/png"
	"os"
	"path/filepath"
	"testing"
)

// The flag is a grey picture of 192 x 128 pixels as stored, with a red square in
// its first corner (row 0, column 0), a green one at the end of row 0 and a blue
// one at the end of column 0.
const (
	flagW, flagH = 192, 128
	square       = 64
)

var (
	grey  = color.RGBA{128, 128, 128, 255}
	red   = color.RGBA{220, 30, 30, 255}
	green = color.RGBA{30, 200, 30, 255}
	blue  = color.RGBA{30, 30, 220, 255}
)

func flag() *image.RGBA {
	m := image.NewRGBA(image.Rect(0, 0, flagW, flagH))
	draw.Draw(m, m.Rect, image.NewUniform(grey), image.Point{}, draw.Src)
	draw.Draw(m, image.Rect(0, 0, square, square), image.NewUniform(red), image.Point{}, draw.Src)
	draw.Draw(m, image.Rect(flagW-square, 0, flagW, square), image.NewUniform(green), image.Point{}, draw.Src)
	draw.Draw(m, image.Rect(0, flagH-square, square, flagH), image.NewUniform(blue), image.Point{}, draw.Src)
	return m
}

// corners is the colours of the corners of the upright photograph: top left,
// top right, bottom right, bottom left.
func corners(p *Photograph) (found [4]color.RGBA) {
	s := p.Size()
	for i, at := range []image.Point{{20, 20}, {s.X - 28, 20}, {s.X - 28, s.Y - 28}, {20, s.Y - 28}} {
		part := p.Patch(image.Rectangle{at, at.Add(image.Pt(8, 8))}, 8)
		found[i] = nearest(part.R[0], part.G[0], part.B[0])
	}
	return found
}

func nearest(r, g, b float32) (best color.RGBA) {
	least := 3.0
	for _, c := range []color.RGBA{grey, red, green, blue} {
		var d float64
		for i, v := range []uint8{c.R, c.G, c.B} {
			e := linearOf(float64(v)/255) - float64([]float32{r, g, b}[i])
			d += e * e
		}
		if d < least {
			least, best = d, c
		}
	}
	return best
}

// exifBlock is an EXIF block with an orientation, a camera, a time, and a
// preview if there is one.
func exifBlock(order binary.AppendByteOrder, turn uint16, preview []byte) []byte {
	entry := func(to []byte, tag, kind uint16, count, value uint32) []byte {
		to = order.AppendUint32(order.AppendUint16(order.AppendUint16(to, tag), kind), count)
		if kind == 3 { // a short stands at the start of the field
			return append(order.AppendUint16(to, uint16(value)), 0, 0)
		}
		return order.AppendUint32(to, value)
	}
	const first, second, exif, text = 8, 8 + 2 + 3*12 + 4, 50 + 2 + 2*12 + 4, 80 + 2 + 2*12 + 4
	b := []byte("II*\x00")
	if order.String() == binary.BigEndian.String() {
		b = []byte("MM\x00*")
	}
	b = order.AppendUint32(b, first)
	b = order.AppendUint16(b, 3)
	b = entry(b, tagModel, 2, 6, text)
	b = entry(b, tagOrientation, 3, 1, uint32(turn))
	b = entry(b, tagEXIF, 4, 1, exif)
	b = order.AppendUint32(b, second)
	b = order.AppendUint16(b, 2)
	b = entry(b, tagThumbnail, 4, 1, text+6+20)
	b = entry(b, tagThumbnailLen, 4, 1, uint32(len(preview)))
	b = order.AppendUint32(b, 0)
	b = order.AppendUint16(b, 2)
	b = entry(b, tagTaken, 2, 20, text+6)
	b = entry(b, tagFocal35, 3, 1, 60)
	b = order.AppendUint32(b, 0)
	b = append(b, "Cam 1\x00"+"2024:05:17 09:30:12\x00"...)
	return append(b, preview...)
}

// jpegWith is a JPEG file of the picture with an EXIF block.
func jpegWith(img image.Image, block []byte) []byte {
	var b bytes.Buffer
	if err := jpeg.Encode(&b, img, &jpeg.Options{Quality: 90}); err != nil {
		panic(err)
	}
	segment := append([]byte("\xff\xd8\xff\xe1"), binary.BigEndian.AppendUint16(nil, uint16(len(block)+8))...)
	segment = append(append(segment, "Exif\x00\x00"...), block...)
	return append(segment, b.Bytes()[2:]...)
}

func pngOf(img image.Image) []byte {
	var b bytes.Buffer
	if err := png.Encode(&b, img); err != nil {
		panic(err)
	}
	return b.Bytes()
}

// seed is a file of testdata/photographs. libvips 8.14.1 wrote the ones named
// turned and flag from the flag, its EXIF data by way of libexif.
func seed(t testing.TB, name string) []byte {
	t.Helper()
	data, err := os.ReadFile(filepath.Join("..", "..", "testdata", "photographs", name))
	if err != nil {
		t.Fatal(err)
	}
	return data
}

// turnedHEIC is the HEIC seed as telephones write it: the rotation in steps of
// 90 degrees anticlockwise as a property of the picture, and an EXIF orientation
// that says the same again.
func turnedHEIC(t testing.TB, steps byte, exif uint16) []byte {
	t.Helper()
	data := seed(t, "flag.heic")
	grow := func(kind string, by int) {
		at := bytes.Index(data, []byte(kind)) - 4
		binary.BigEndian.PutUint32(data[at:], binary.BigEndian.Uint32(data[at:])+uint32(by))
	}
	const irot = "\x00\x00\x00\x09irot"
	h, err := readHEIF(data)
	if err != nil {
		t.Fatal(err)
	}
	block := exifInHEIC(data)
	entry := bytes.Index(block, []byte{0x01, 0x12, 0, 3, 0, 0, 0, 1})
	if entry < 0 {
		t.Fatal("the seed's EXIF block has no orientation to overwrite")
	}
	binary.BigEndian.PutUint16(block[entry+8:], exif)
	for kind, by := range map[string]int{"meta": 10, "iprp": 10, "ipco": 9, "ipma": 1} {
		grow(kind, by)
	}
	// iloc of libheif: two items, each one extent, 4-byte offsets.
	iloc := bytes.Index(data, []byte("iloc")) + 4 + 8
	for i := range 2 {
		at := data[iloc+18*i+10:]
		binary.BigEndian.PutUint32(at, binary.BigEndian.Uint32(at)+10)
	}
	ipma := bytes.Index(data, []byte("ipma"))
	count := ipma + 4 + 4 + 4 + 2
	uses := count + 1 + int(data[count])
	data[count]++
	out := append([]byte{}, data[:ipma-4]...)
	out = append(append(out, irot...), steps)
	out = append(append(out, data[ipma-4:uses]...), 0x80|byte(len(h.properties)+1))
	return append(out, data[uses:]...)
}
