package display

import "encoding/binary"

// Four bytes are mixed at a time, each in a lane of 16 bits of one word: a byte
// times a share of 256 fits, and so does the sum of all shares.
const (
	lanes = 0x00ff00ff00ff00ff
	halfs = 0x0080008000800080
)

// blend mixes three lines byte by byte. The lines are at least as long as to.
func blend(to, a, b, c []uint8, t tap) {
	n := len(to)
	a, b, c = a[:n], b[:n], c[:n]
	w0, w1, w2 := uint64(t.w0), uint64(t.w1), uint64(t.w2)
	switch {
	case w1 == 0 && w2 == 0:
		copy(to, a)
		return
	case w2 == 0:
		for len(to) >= 8 && len(a) >= 8 && len(b) >= 8 {
			p, q := binary.LittleEndian.Uint64(a), binary.LittleEndian.Uint64(b)
			even := (p&lanes)*w0 + (q&lanes)*w1 + halfs
			odd := (p>>8&lanes)*w0 + (q>>8&lanes)*w1 + halfs
			binary.LittleEndian.PutUint64(to, even>>8&lanes|odd&^lanes)
			to, a, b, c = to[8:], a[8:], b[8:], c[8:]
		}
	default:
		for len(to) >= 8 && len(a) >= 8 && len(b) >= 8 && len(c) >= 8 {
			p, q, r := binary.LittleEndian.Uint64(a), binary.LittleEndian.Uint64(b), binary.LittleEndian.Uint64(c)
			even := (p&lanes)*w0 + (q&lanes)*w1 + (r&lanes)*w2 + halfs
			odd := (p>>8&lanes)*w0 + (q>>8&lanes)*w1 + (r>>8&lanes)*w2 + halfs
			binary.LittleEndian.PutUint64(to, even>>8&lanes|odd&^lanes)
			to, a, b, c = to[8:], a[8:], b[8:], c[8:]
		}
	}
	for i := range to {
		to[i] = t.mixed(a[i], b[i], c[i])
	}
}

// mixed is the mean of three bytes.
func (t *tap) mixed(a, b, c uint8) uint8 {
	return uint8((uint32(a)*uint32(t.w0) + uint32(b)*uint32(t.w1) + uint32(c)*uint32(t.w2) + 128) >> 8)
}

// spread puts the four bytes of each pixel into the lanes of a word: red and
// blue in the lower half, green and alpha in the upper.
func spread(to []uint64, from []uint8) {
	for len(to) >= 2 && len(from) >= 8 {
		p := binary.LittleEndian.Uint64(from)
		even, odd := p&lanes, p>>8&lanes
		to[0] = even&0xffffffff | odd<<32
		to[1] = even>>32 | odd&^0xffffffff
		to, from = to[2:], from[8:]
	}
}

// gathered mixes three spread pixels into the four bytes of one.
func gathered(a, b, c uint64, t *tap) uint32 {
	x := (a*uint64(t.w0) + b*uint64(t.w1) + c*uint64(t.w2) + halfs) >> 8 & lanes
	return uint32(x) | uint32(x>>32)<<8
}
