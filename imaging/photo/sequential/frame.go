package sequential

import (
	"encoding/binary"
	"image"
)

// frame is what the headers of the file say, and where its scan begins.
type frame struct {
	w, h         int
	across, down int // MCUs
	parts        []component
	quant        [4]*[64]int32 // in natural order
	dc, ac       [4]*codes
	restart      int // MCUs between restart markers, 0 for none
	scan         []byte
}

// component is one colour of the picture: lightness first.
type component struct {
	id, quant uint8
	h, v      int // blocks of an MCU
	dc, ac    uint8
	plane     []uint8
	stride    int
}

// Markers (ITU-T T.81, table B.1).
const (
	startOfImage  = 0xd8
	endOfImage    = 0xd9
	startOfScan   = 0xda
	quantTables   = 0xdb
	restartEvery  = 0xdd
	huffmanTables = 0xc4
	baseline      = 0xc0
	extended      = 0xc1
	firstRestart  = 0xd0
	adobe         = 0xee
	firstApp      = 0xe0
	lastApp       = 0xef
	comment       = 0xfe
)

func readFrame(data []byte) (*frame, bool) {
	if len(data) < 4 || data[0] != 0xff || data[1] != startOfImage {
		return nil, false
	}
	f := &frame{}
	for data = data[2:]; len(data) >= 4 && data[0] == 0xff; {
		marker, n := data[1], int(binary.BigEndian.Uint16(data[2:]))
		if n < 2 || 2+n > len(data) {
			return nil, false
		}
		body := data[4 : 2+n]
		data = data[2+n:]
		ok := true
		switch marker {
		case quantTables:
			ok = f.readQuant(body)
		case huffmanTables:
			ok = f.readCodes(body)
		case baseline, extended:
			ok = f.readComponents(body)
		case restartEvery:
			if ok = len(body) == 2; ok {
				f.restart = int(binary.BigEndian.Uint16(body))
			}
		case adobe: // may say that the colours are not YCbCr
			ok = len(body) >= 12 && string(body[:5]) == "Adobe" && body[11] == 1
		case startOfScan:
			f.scan = data
			return f, f.readScanHeader(body) && f.mayFit()
		default:
			ok = marker >= firstApp && marker <= lastApp || marker == comment
		}
		if !ok {
			return nil, false
		}
	}
	return nil, false
}

// zigzag is where the coefficients stand in a block, in the order of the file;
// 16 more take what a damaged file has too much (ITU-T T.81, figure A.6).
var zigzag = [64 + 16]uint8{
	0, 1, 8, 16, 9, 2, 3, 10, 17, 24, 32, 25, 18, 11, 4, 5,
	12, 19, 26, 33, 40, 48, 41, 34, 27, 20, 13, 6, 7, 14, 21, 28,
	35, 42, 49, 56, 57, 50, 43, 36, 29, 22, 15, 23, 30, 37, 44, 51,
	58, 59, 52, 45, 38, 31, 39, 46, 53, 60, 61, 54, 47, 55, 62, 63,
	63, 63, 63, 63, 63, 63, 63, 63, 63, 63, 63, 63, 63, 63, 63, 63,
}

func (f *frame) readQuant(body []byte) bool {
	for ; len(body) >= 65; body = body[65:] {
		if body[0] > 3 { // more than 8 bits, or no such table
			return false
		}
		t := new([64]int32)
		for i, q := range body[1:65] {
			t[zigzag[i]] = int32(q)
		}
		f.quant[body[0]] = t
	}
	return len(body) == 0
}

func (f *frame) readComponents(body []byte) bool {
	if f.parts != nil || len(body) < 6 || body[0] != 8 {
		return false
	}
	f.h, f.w = int(binary.BigEndian.Uint16(body[1:])), int(binary.BigEndian.Uint16(body[3:]))
	n := int(body[5])
	if f.w == 0 || f.h == 0 || n != 1 && n != 3 || len(body) != 6+3*n {
		return false
	}
	for body = body[6:]; len(body) > 0; body = body[3:] {
		c := component{id: body[0], h: int(body[1] >> 4), v: int(body[1] & 15), quant: body[2]}
		most := 1
		if len(f.parts) == 0 {
			most = 2
		}
		if c.h < 1 || c.v < 1 || c.h > most || c.v > most || c.quant > 3 {
			return false
		}
		if n == 1 { // one colour alone is never gathered into larger MCUs
			c.h, c.v = 1, 1
		}
		f.parts = append(f.parts, c)
	}
	luma := f.parts[0]
	f.across, f.down = (f.w+8*luma.h-1)/(8*luma.h), (f.h+8*luma.v-1)/(8*luma.v)
	return n == 1 || luma.id != 'R' && luma.id != f.parts[1].id && luma.id != f.parts[2].id && f.parts[1].id != f.parts[2].id
}

// readScanHeader takes a scan of all colours at once only.
func (f *frame) readScanHeader(body []byte) bool {
	n := len(f.parts)
	if n == 0 || len(body) != 4+2*n || int(body[0]) != n {
		return false
	}
	for i := range f.parts {
		c, use := &f.parts[i], body[2+2*i]
		c.dc, c.ac = use>>4, use&15
		if body[1+2*i] != c.id || c.dc > 1 || c.ac > 1 ||
			f.dc[c.dc] == nil || f.ac[c.ac] == nil || f.quant[c.quant] == nil {
			return false
		}
	}
	rest := body[1+2*n:]
	return rest[0] == 0 && rest[1] == 63 && rest[2] == 0
}

// mayFit reports whether the scan is long enough for the picture: a block takes
// two bits at least, one for its first coefficient and one for its end. So a
// file can't ask for memory out of proportion to its own length.
func (f *frame) mayFit() bool {
	return f.across*f.down*f.blocksPerMCU() <= 4*len(f.scan)
}

func (f *frame) blocksPerMCU() (n int) {
	for _, c := range f.parts {
		n += c.h * c.v
	}
	return n
}

// newPicture is the picture, whole MCUs in memory, to be filled through the
// planes of the components.
func (f *frame) newPicture() image.Image {
	luma, shown := &f.parts[0], image.Rect(0, 0, f.w, f.h)
	whole := image.Rect(0, 0, 8*luma.h*f.across, 8*luma.v*f.down)
	if len(f.parts) == 1 {
		m := image.NewGray(whole)
		luma.plane, luma.stride = m.Pix, m.Stride
		return m.SubImage(shown)
	}
	ratio := map[image.Point]image.YCbCrSubsampleRatio{
		{X: 1, Y: 1}: image.YCbCrSubsampleRatio444, {X: 2, Y: 1}: image.YCbCrSubsampleRatio422,
		{X: 1, Y: 2}: image.YCbCrSubsampleRatio440, {X: 2, Y: 2}: image.YCbCrSubsampleRatio420,
	}[image.Pt(luma.h, luma.v)]
	m := image.NewYCbCr(whole, ratio)
	luma.plane, luma.stride = m.Y, m.YStride
	f.parts[1].plane, f.parts[1].stride = m.Cb, m.CStride
	f.parts[2].plane, f.parts[2].stride = m.Cr, m.CStride
	return m.SubImage(shown)
}
