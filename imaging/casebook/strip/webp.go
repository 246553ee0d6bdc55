package strip

import (
	"bytes"
	"encoding/binary"
)

const (
	webpEXIF = 1 << 3 // flags of VP8X (RFC 9649, 2.7)
	webpXMP  = 1 << 2
)

// cleanWebP keeps the chunks of the picture and a new EXIF chunk.
func cleanWebP(data []byte) ([]byte, error) {
	var exif []byte
	out := append(make([]byte, 0, len(data)), "RIFF\x00\x00\x00\x00WEBP"...)
	flags := -1
	whole := min(uint64(len(data)), 8+uint64(binary.LittleEndian.Uint32(data[4:])))
	for rest := data[12:max(whole, 12)]; len(rest) >= 8; {
		n := uint64(binary.LittleEndian.Uint32(rest[4:]))
		if 8+n > uint64(len(rest)) {
			return nil, errCutOff
		}
		body := rest[8 : 8+n]
		switch string(rest[:4]) {
		case "VP8X":
			if len(body) > 0 {
				flags = len(out) + 8
			}
			out = webpChunk(out, "VP8X", body)
		case "VP8 ", "VP8L", "ALPH", "ICCP":
			out = webpChunk(out, string(rest[:4]), body)
		case "EXIF":
			exif = cleanEXIF(bytes.TrimPrefix(body, exifHead))
		}
		rest = rest[min(8+n+n%2, uint64(len(rest))):]
	}
	if flags >= 0 {
		out[flags] &^= webpEXIF | webpXMP
		if exif != nil {
			out[flags] |= webpEXIF
			out = webpChunk(out, "EXIF", exif)
		}
	}
	binary.LittleEndian.PutUint32(out[4:], uint32(len(out)-8))
	return out, nil
}

func webpChunk(out []byte, kind string, body []byte) []byte {
	out = binary.LittleEndian.AppendUint32(append(out, kind...), uint32(len(body)))
	return append(append(out, body...), make([]byte, len(body)%2)...)
}
