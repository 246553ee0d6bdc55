package photo

import (
	"bytes"
	"encoding/binary"
)

// exifInJPEG is the EXIF block in the first APP1 segment that holds one.
func exifInJPEG(data []byte) []byte {
	for data = data[2:]; len(data) >= 4 && data[0] == 0xff; {
		marker := data[1]
		if marker == 0xff { // fill byte
			data = data[1:]
			continue
		}
		if marker == 0xda || marker == 0xd9 { // the picture itself begins, or the file ends
			return nil
		}
		n := int(binary.BigEndian.Uint16(data[2:]))
		if n < 2 || 2+n > len(data) {
			return nil
		}
		if body, found := bytes.CutPrefix(data[4:2+n], []byte("Exif\x00\x00")); marker == 0xe1 && found {
			return body
		}
		data = data[2+n:]
	}
	return nil
}

// exifInPNG is the content of the eXIf chunk (PNG Specification, Third Edition,
// 11.3.3.6).
func exifInPNG(data []byte) []byte {
	for data = data[8:]; len(data) >= 12; {
		n := uint64(binary.BigEndian.Uint32(data))
		if 12+n > uint64(len(data)) {
			return nil
		}
		if string(data[4:8]) == "eXIf" {
			return data[8 : 8+n]
		}
		data = data[12+n:]
	}
	return nil
}

// exifInTIFF is the file itself: EXIF data are TIFF data.
func exifInTIFF(data []byte) []byte { return data }

// exifInWebP is the content of the EXIF chunk (RFC 9649, 2.7.1.5).
func exifInWebP(data []byte) []byte {
	for data = data[12:]; len(data) >= 8; {
		n := uint64(binary.LittleEndian.Uint32(data[4:]))
		if 8+n > uint64(len(data)) {
			return nil
		}
		if string(data[:4]) == "EXIF" {
			return bytes.TrimPrefix(data[8:8+n], []byte("Exif\x00\x00"))
		}
		data = data[min(8+n+n%2, uint64(len(data))):]
	}
	return nil
}
