package photo

import (
	"bytes"
	"encoding/binary"
	"hash/crc32"
	"runtime"
	"strings"
	"testing"
)

// pngSaying is a PNG file whose header promises w x h pixels of 8-bit colour.
func pngSaying(w, h uint32) []byte {
	data := pngOf(flag())
	binary.BigEndian.PutUint32(data[16:], w)
	binary.BigEndian.PutUint32(data[20:], h)
	binary.BigEndian.PutUint32(data[29:], crc32.ChecksumIEEE(data[12:29]))
	return data
}

// jpegSaying is a JPEG file whose header promises w x h pixels.
func jpegSaying(w, h uint16) []byte {
	data := jpegWith(flag(), exifBlock(binary.LittleEndian, 1, nil))
	at := bytes.Index(data, []byte{0xff, 0xc0})
	binary.BigEndian.PutUint16(data[at+5:], h)
	binary.BigEndian.PutUint16(data[at+7:], w)
	return data
}

// heicSaying is a HEIC file whose properties promise w x h pixels.
func heicSaying(t testing.TB, w, h uint32) []byte {
	data := seed(t, "flag.heic")
	at := bytes.Index(data, []byte("ispe"))
	binary.BigEndian.PutUint32(data[at+8:], w)
	binary.BigEndian.PutUint32(data[at+12:], h)
	return data
}

func TestDecompressionBombIsRefusedBeforeMemoryIsSpent(t *testing.T) {
	for name, data := range map[string][]byte{
		"PNG side":    pngSaying(70_000, 10),
		"PNG area":    pngSaying(60_000, 60_000),
		"PNG squeeze": pngSaying(14_000, 14_000),
		"JPEG":        jpegSaying(60_000, 60_000),
		"JPEG cut":    jpegSaying(14_000, 14_000),
		"HEIC":        heicSaying(t, 30_000, 30_000),
		"TIFF":        tiffOf(60_000, 60_000, nil),
		"TIFF cut":    tiffOf(14_000, 14_000, nil),
	} {
		var before, after runtime.MemStats
		runtime.ReadMemStats(&before)
		_, err := Decode(data)
		runtime.ReadMemStats(&after)
		if err == nil || !strings.Contains(err.Error(), "pixels, ") {
			t.Errorf("%s: %v", name, err)
		}
		if spent := after.TotalAlloc - before.TotalAlloc; spent > 1<<20 {
			t.Errorf("%s: %d kB were spent", name, spent>>10)
		}
	}
}

func TestProgressiveFileOfManyScansIsRefused(t *testing.T) {
	data := jpegWith(flag(), exifBlock(binary.LittleEndian, 1, nil))
	data = append(data, bytes.Repeat([]byte{0xff, 0xda, 0, 8, 1, 1, 0, 0, 63, 0}, MaxScans+1)...)
	if _, err := Decode(data); err == nil || !strings.Contains(err.Error(), "times") {
		t.Error(err)
	}
}

// tiffOf is an uncompressed 8-bit RGB TIFF file in one strip, little end first.
func tiffOf(w, h uint32, pixels []byte) []byte {
	le := binary.LittleEndian
	b := le.AppendUint32([]byte("II*\x00"), 8)
	entries := [][3]uint32{
		{256, 4, w}, {257, 4, h}, {258, 3, 8 + 2 + 9*12 + 4}, {259, 3, 1}, {262, 3, 2},
		{273, 4, 8 + 2 + 9*12 + 4 + 6}, {277, 3, 3}, {278, 4, h}, {279, 4, uint32(len(pixels))},
	}
	b = le.AppendUint16(b, uint16(len(entries)))
	for _, e := range entries {
		count := uint32(1)
		if e[0] == 258 {
			count = 3
		}
		b = le.AppendUint32(le.AppendUint32(le.AppendUint16(le.AppendUint16(b, uint16(e[0])), uint16(e[1])), count), e[2])
	}
	b = le.AppendUint32(b, 0)
	b = append(b, 8, 0, 8, 0, 8, 0)
	return append(b, pixels...)
}
