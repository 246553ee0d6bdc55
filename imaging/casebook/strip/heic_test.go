package strip

import (
	"bytes"
	"encoding/binary"
	"testing"

	"ogive/imaging/photo"
)

// tellingHEIC is the HEIC seed with EXIF data of its own: date, camera and lens,
// and besides owner, serial number and place.
func tellingHEIC(t testing.TB) []byte {
	t.Helper()
	data := seed(t, "flag.heic")
	block := append([]byte{0, 0, 0, 6, 'E', 'x', 'i', 'f', 0, 0}, tellingEXIF()...)
	at := len(data) + 8
	data = append(binary.BigEndian.AppendUint32(data, uint32(8+len(block))), "mdat"...)
	data = append(data, block...)
	// iloc of libheif: two items of 18 bytes, the second the EXIF data; each one
	// extent, whose place is in the base at byte 4 and whose length is at the end.
	second := data[bytes.Index(data, []byte("iloc"))+4+8+18:]
	binary.BigEndian.PutUint32(second[4:], uint32(at))
	binary.BigEndian.PutUint32(second[14:], uint32(len(block)))
	return data
}

func TestAHEICLosesOwnerSerialAndPlaceFromItsOwnEXIF(t *testing.T) {
	data := tellingHEIC(t)
	before, err := photo.Decode(data)
	if err != nil {
		t.Fatal(err)
	}
	if f := before.Facts(); f.Camera != "Camera" || f.Focal35 != 28 {
		t.Fatalf("the telling file tells %+v: the test is wrong", f)
	}
	for _, s := range secrets {
		if !bytes.Contains(data, []byte(s)) {
			t.Fatalf("%s is not in the telling file: the test is wrong", s)
		}
	}
	clean, err := Photograph(data)
	if err != nil {
		t.Fatal(err)
	}
	none(t, clean.Data)
	if f := clean.Picture.Facts(); f != before.Facts() {
		t.Errorf("the facts became %+v", f)
	}
	samePixels(t, data, clean.Data)
	again, err := Photograph(clean.Data)
	if err != nil || !bytes.Equal(again.Data, clean.Data) {
		t.Errorf("cleaning twice differs: %v", err)
	}
}
