package strip

import (
	"bytes"
	"encoding/binary"
	"image"
	"os"
	"path/filepath"
	"testing"

	"ogive/imaging/photo"
)

func seed(t testing.TB, name string) []byte {
	t.Helper()
	data, err := os.ReadFile(filepath.Join("..", "..", "..", "testdata", "photographs", name))
	if err != nil {
		t.Fatal(err)
	}
	return data
}

var secrets = []string{"SECRETOWNER", "SECRETSERIAL", "SECRETPLACE"}

// tellingEXIF is an EXIF block with orientation 6, a date, owner, serial number
// and a location directory.
func tellingEXIF() []byte {
	order := binary.LittleEndian
	value := func(s string) []byte { return append([]byte(s), 0) }
	exif := []entry{
		{0x9003, 2, 20, value("2024:03:05 10:11:12")},
		{0xa405, 3, 1, order.AppendUint16(nil, 28)},
		{0xa430, 2, 12, value("SECRETOWNER")},
		{0xa431, 2, 13, value("SECRETSERIAL")},
		{0x927c, 7, 12, value("SECRETOWNER")},
	}
	first := []entry{{0x0110, 2, 7, value("Camera")}, {0x0112, 3, 1, order.AppendUint16(nil, 6)}, {0x8825, 2, 12, value("SECRETPLACE")}}
	return writeBlock(order, "II*\x00", first, exif)
}

func tellingJPEG(t testing.TB) []byte {
	data := seed(t, "full-colour.jpg")
	segment := func(marker byte, body string) []byte {
		return append(binary.BigEndian.AppendUint16([]byte{0xff, marker}, uint16(len(body)+2)), body...)
	}
	out := bytes.Clone(data[:2])
	out = append(out, segment(0xe1, "Exif\x00\x00"+string(tellingEXIF()))...)
	out = append(out, segment(0xe1, "http://ns.adobe.com/xap/1.0/\x00SECRETPLACE")...)
	out = append(out, segment(0xed, "Photoshop 3.0\x00SECRETOWNER")...)
	out = append(out, segment(0xfe, "SECRETOWNER")...)
	return append(append(out, data[2:]...), "SECRETPLACE behind the end"...)
}

func none(t *testing.T, data []byte) {
	t.Helper()
	for _, s := range secrets {
		if bytes.Contains(data, []byte(s)) {
			t.Errorf("%s is still in the copy", s)
		}
	}
}

func TestAJPEGLosesOwnerSerialAndPlaceAndNoPixel(t *testing.T) {
	data := tellingJPEG(t)
	clean, err := Photograph(data)
	if err != nil {
		t.Fatal(err)
	}
	none(t, clean.Data)
	facts := clean.Picture.Facts()
	if facts.Camera != "Camera" || facts.Focal35 != 28 || facts.Taken.Format("2006-01-02 15:04:05") != "2024-03-05 10:11:12" {
		t.Errorf("the facts became %+v", facts)
	}
	samePixels(t, data, clean.Data)
	sos := func(b []byte) []byte { return b[bytes.Index(b, []byte{0xff, 0xda}):] }
	if !bytes.HasPrefix(sos(data), sos(clean.Data)) {
		t.Error("the coded pixels differ")
	}
}

func samePixels(t *testing.T, before, after []byte) {
	t.Helper()
	a, err := photo.Decode(before)
	if err != nil {
		t.Fatal(err)
	}
	b, err := photo.Decode(after)
	if err != nil {
		t.Fatal(err)
	}
	if a.Size() != b.Size() {
		t.Fatalf("size %v became %v", a.Size(), b.Size())
	}
	whole := image.Rectangle{Max: a.Size()}
	p, q := a.Patch(whole, 1), b.Patch(whole, 1)
	for i := range p.R {
		if p.R[i] != q.R[i] || p.G[i] != q.G[i] || p.B[i] != q.B[i] {
			t.Fatalf("sample %d differs", i)
		}
	}
}

func TestEveryKindKeepsItsPixelsAndOrientationAndCleaningTwiceChangesNothing(t *testing.T) {
	for name, ext := range map[string]string{
		"turned.jpg": "jpg", "restarts.jpg": "jpg", "turned.png": "png", "turned.tif": "png", "turned.webp": "webp", "flag.heic": "heic",
	} {
		t.Run(name, func(t *testing.T) {
			data := seed(t, name)
			clean, err := Photograph(data)
			if err != nil {
				t.Fatal(err)
			}
			if clean.Extension != ext {
				t.Errorf("it became %s", clean.Extension)
			}
			samePixels(t, data, clean.Data)
			again, err := Photograph(clean.Data)
			if err != nil || !bytes.Equal(again.Data, clean.Data) {
				t.Errorf("cleaning twice differs: %v", err)
			}
		})
	}
}

func TestAPNGLosesItsTexts(t *testing.T) {
	data := seed(t, "turned.png")
	telling := bytes.Clone(data[:33])
	telling = append(telling, pngChunk("tEXt", []byte("Author\x00SECRETOWNER"))...)
	telling = append(telling, pngChunk("eXIf", tellingEXIF())...)
	telling = append(append(telling, data[33:]...), "SECRETPLACE"...)
	clean, err := Photograph(telling)
	if err != nil {
		t.Fatal(err)
	}
	none(t, clean.Data)
}

func TestAHEICLosesWhatLiesBesideItsPicture(t *testing.T) {
	box := func(kind, body string) []byte {
		return append(append(binary.BigEndian.AppendUint32(nil, uint32(8+len(body))), kind...), body...)
	}
	data := append(seed(t, "flag.heic"), box("mdat", "SECRETPLACE")...)
	data = append(data, box("uuid", "SECRETOWNER")...)
	clean, err := Photograph(data)
	if err != nil {
		t.Fatal(err)
	}
	none(t, clean.Data)
	samePixels(t, data, clean.Data)
}
