package strip

import (
	"bytes"
	"encoding/binary"
	"errors"
)

var exifHead = []byte("Exif\x00\x00")

// cleanJPEG copies what the picture needs to be decoded (ITU-T T.81, annex B),
// the colour profile and a new EXIF segment, and nothing behind the end of the
// picture, where telephones keep a second picture or a film.
func cleanJPEG(data []byte) ([]byte, error) {
	out := make([]byte, 0, len(data))
	out = append(out, 0xff, 0xd8)
	rest := data[2:]
	var exif []byte
	head := 2 // where the EXIF segment belongs
	for {
		for len(rest) >= 2 && rest[0] == 0xff && rest[1] == 0xff {
			rest = rest[1:]
		}
		if len(rest) < 2 {
			return nil, errCutOff
		}
		if rest[0] != 0xff {
			return nil, errors.New("is a damaged JPEG file; copy it from the camera again")
		}
		marker := rest[1]
		if marker == 0xd9 {
			out = append(out, 0xff, 0xd9)
			return insertEXIF(out, head, exif)
		}
		if len(rest) < 4 {
			return nil, errCutOff
		}
		n := 2 + int(binary.BigEndian.Uint16(rest[2:]))
		if n < 4 || n > len(rest) {
			return nil, errCutOff
		}
		segment := rest[:n]
		rest = rest[n:]
		body := segment[4:]
		switch {
		case marker == 0xe0 && bytes.HasPrefix(body, []byte("JFIF\x00")) && len(body) >= 14:
			out = append(out, 0xff, 0xe0, 0, 16)
			out = append(out, body[:12]...)
			out = append(out, 0, 0) // no preview
			head = len(out)
		case marker == 0xe1 && bytes.HasPrefix(body, exifHead) && exif == nil:
			exif = cleanEXIF(body[len(exifHead):])
		case marker == 0xe2 && bytes.HasPrefix(body, []byte("ICC_PROFILE\x00")),
			marker == 0xee && bytes.HasPrefix(body, []byte("Adobe")),
			marker < 0xe0:
			out = append(out, segment...)
		}
		if marker == 0xda {
			scan := scanLength(rest)
			out = append(out, rest[:scan]...)
			rest = rest[scan:]
		}
	}
}

// scanLength is the bytes up to the next marker that is no part of the scan.
func scanLength(data []byte) int {
	for i := 0; i+1 < len(data); i++ {
		if next := data[i+1]; data[i] == 0xff && next != 0 && next != 0xff && (next < 0xd0 || next > 0xd7) {
			return i
		}
	}
	return len(data)
}

func insertEXIF(out []byte, at int, exif []byte) ([]byte, error) {
	if exif == nil {
		return out, nil
	}
	segment := binary.BigEndian.AppendUint16([]byte{0xff, 0xe1}, uint16(2+len(exifHead)+len(exif)))
	segment = append(append(segment, exifHead...), exif...)
	return append(out[:at:at], append(segment, out[at:]...)...), nil
}
