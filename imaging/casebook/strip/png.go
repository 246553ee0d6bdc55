package strip

import (
	"encoding/binary"
	"hash/crc32"
	"slices"
)

// keptChunks is what decides how the pixels look (PNG Specification, Third
// Edition, 11).
var keptChunks = []string{"IHDR", "PLTE", "IDAT", "tRNS", "gAMA", "cHRM", "sRGB", "iCCP", "sBIT", "bKGD", "pHYs", "cICP"}

func cleanPNG(data []byte) ([]byte, error) {
	var exif []byte
	out := append(make([]byte, 0, len(data)), data[:8]...)
	head := 0
	for rest := data[8:]; len(rest) >= 12; {
		n := uint64(binary.BigEndian.Uint32(rest))
		if 12+n > uint64(len(rest)) {
			return nil, errCutOff
		}
		chunk, kind := rest[:12+n], string(rest[4:8])
		switch {
		case kind == "eXIf" && exif == nil:
			exif = cleanEXIF(chunk[8 : 8+n])
		case kind == "IEND":
			out = append(out, pngChunk("IEND", nil)...)
			if exif == nil {
				return out, nil
			}
			return append(out[:head:head], append(pngChunk("eXIf", exif), out[head:]...)...), nil
		case slices.Contains(keptChunks, kind):
			out = append(out, chunk...)
			if kind == "IHDR" {
				head = len(out)
			}
		}
		rest = rest[12+n:]
	}
	return nil, errCutOff
}

func pngChunk(kind string, body []byte) []byte {
	out := append(binary.BigEndian.AppendUint32(nil, uint32(len(body))), kind...)
	out = append(out, body...)
	return binary.BigEndian.AppendUint32(out, crc32.ChecksumIEEE(out[4:]))
}
