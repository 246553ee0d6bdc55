package photo

import (
	"bytes"
	"encoding/binary"
	"image"
	"testing"
	"time"
)

// Whatever the bytes, Decode gives a photograph that can be read or an error,
// in a short time and without a panic.
func FuzzDecode(f *testing.F) {
	for turn := range orientations {
		f.Add(jpegWith(flag().SubImage(image.Rect(0, 0, 24, 16)), exifBlock(binary.BigEndian, uint16(turn), nil)))
	}
	for _, loop := range loopedBlocks() {
		f.Add(jpegWith(flag().SubImage(image.Rect(0, 0, 8, 8)), loop))
	}
	for _, name := range []string{"turned.jpg", "turned.png", "turned.webp", "turned.tif"} {
		f.Add(seed(f, name))
	}
	for _, data := range craftedTIFFs() {
		f.Add(data)
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		begin := time.Now()
		p, err := Decode(data)
		if err != nil {
			if p != nil {
				t.Error("a photograph came with an error")
			}
			return
		}
		size := p.Size()
		part := p.Patch(image.Rectangle{Max: size}.Intersect(image.Rect(0, 0, 500, 500)), 2)
		for i, v := range part.G {
			if !(v >= 0 && v <= 1.000001) {
				t.Fatalf("sample %d holds %g", i, v)
			}
		}
		if took := time.Since(begin); took > 20*time.Second {
			t.Errorf("took %v for %v pixels", took, size)
		}
	})
}

// The EXIF reader alone, as the fuzzer gets into it more quickly.
func FuzzEXIF(f *testing.F) {
	for turn := range orientations {
		f.Add(exifBlock(binary.LittleEndian, uint16(turn), []byte("preview")))
	}
	for _, loop := range loopedBlocks() {
		f.Add(loop)
	}
	f.Fuzz(func(t *testing.T, block []byte) {
		turn, facts := readEXIF(block)
		if !turn.valid() {
			t.Errorf("orientation %d", turn)
		}
		if facts.Focal35 < 0 {
			t.Errorf("focal length %g", facts.Focal35)
		}
		if parts, ok := readIFDs(block); ok && len(parts.thumbnail()) > len(block) {
			t.Error("the preview is longer than the block")
		}
	})
}

// The HEIF reader alone: the decoder behind it is too slow to fuzz through.
func FuzzHEIF(f *testing.F) {
	f.Add(seed(f, "flag.heic"))
	f.Add(turnedHEIC(f, 3, 6))
	f.Add(heicSaying(f, 1<<31, 1<<31))
	f.Fuzz(func(t *testing.T, data []byte) {
		size, err := sizeOfHEIC(data)
		if err == nil && size.X < narrowHEIC {
			t.Errorf("size %v", size)
		}
		if len(exifInHEIC(data)) > len(data) {
			t.Error("the EXIF block is longer than the file")
		}
	})
}

// loopedBlocks is EXIF blocks whose directories point back at themselves, at
// each other, and past the end.
func loopedBlocks() [][]byte {
	le := binary.LittleEndian
	var all [][]byte
	for _, links := range [][2]uint32{{8, 8}, {50, 8}, {1 << 31, 1 << 30}, {6, 0}} {
		block := exifBlock(le, 6, nil)
		le.PutUint32(block[8+2+3*12:], links[0]) // after the first directory
		le.PutUint32(block[50+2+2*12:], links[1])
		le.PutUint32(block[8+2+2*12+8:], links[1]) // the EXIF directory
		all = append(all, block)
	}
	return all
}

// craftedTIFFs is TIFF files with counts and places that don't fit the file.
func craftedTIFFs() [][]byte {
	le := binary.LittleEndian
	pixels := bytes.Repeat([]byte{200, 100, 50}, 64)
	entry := func(i int) int { return 8 + 2 + 12*i }
	var all [][]byte
	craft := func(change func(b []byte)) {
		b := tiffOf(8, 8, pixels)
		change(b)
		all = append(all, b)
	}
	craft(func([]byte) {})
	craft(func(b []byte) { le.PutUint32(b[entry(8)+8:], 1<<32-1) }) // bytes of the strip
	craft(func(b []byte) { le.PutUint32(b[entry(5)+4:], 1<<30) })   // number of strips
	craft(func(b []byte) { le.PutUint32(b[entry(5)+8:], 1<<32-1) }) // where the strip lies
	craft(func(b []byte) { le.PutUint32(b[entry(7)+8:], 0) })       // rows in a strip
	craft(func(b []byte) { le.PutUint16(b[entry(3)+8:], 32773) })   // PackBits
	craft(func(b []byte) { le.PutUint16(b[entry(3)+8:], 5) })       // LZW
	craft(func(b []byte) { le.PutUint16(b[entry(3)+8:], 8) })       // Deflate
	craft(func(b []byte) {                                          // predictor, and none of the samples per pixel
		copy(b[entry(6):entry(8)], b[entry(7):entry(9)])
		copy(b[entry(8):entry(9)], []byte{317 & 0xff, 317 >> 8, 3, 0, 1, 0, 0, 0, 2, 0, 0, 0})
	})
	craft(func(b []byte) { le.PutUint16(b[entry(4)+8:], 3) })                                            // palette, but none given
	craft(func(b []byte) { le.PutUint32(b[4:], 1<<32-1) })                                               // directory past the end
	craft(func(b []byte) { le.PutUint16(b[8:], 1<<16-1) })                                               // number of entries
	craft(func(b []byte) { le.PutUint32(b[entry(0)+8:], 100_000_000); le.PutUint32(b[entry(1)+8:], 1) }) // one endless row
	return all
}
