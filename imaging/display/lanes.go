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
			p, q := word(a), word(b)
			binary.LittleEndian.PutUint64(to, mix2(p, q, w0, w1)>>8&lanes|mix2(p>>8, q>>8, w0, w1)&^lanes)
			to, a, b = to[8:], a[8:], b[8:]
		}
		c = c[n-len(to):]
	default:
		for len(to) >= 8 && len(a) >= 8 && len(b) >= 8 && len(c) >= 8 {
			p, q, r := word(a), word(b), word(c)
			binary.LittleEndian.PutUint64(to, mix3(p, q, r, w0, w1, w2)>>8&lanes|mix3(p>>8, q>>8, r>>8, w0, w1, w2)&^lanes)
			to, a, b, c = to[8:], a[8:], b[8:], c[8:]
		}
	}
	for i := range to {
		to[i] = uint8((uint64(a[i])*w0 + uint64(b[i])*w1 + uint64(c[i])*w2 + 128) >> 8)
	}
}

// blendPixels mixes three lines of pixels and puts the four bytes of each into
// the lanes of a word: red and blue in the lower half, green and alpha in the
// upper. The lines are as long as each other, to has room for one more pixel.
func blendPixels(to []uint64, a, b, c []uint8, t tap) {
	w0, w1, w2 := uint64(t.w0), uint64(t.w1), uint64(t.w2)
	switch {
	case w1 == 0 && w2 == 0:
		for len(to) >= 2 && len(a) >= 8 {
			p := word(a)
			to[0], to[1] = apart(p&lanes, p>>8&lanes)
			to, a = to[2:], a[8:]
		}
		b, c = b[len(b)-len(a):], c[len(c)-len(a):]
	case w2 == 0:
		for len(to) >= 2 && len(a) >= 8 && len(b) >= 8 {
			p, q := word(a), word(b)
			to[0], to[1] = apart(mix2(p, q, w0, w1)>>8&lanes, mix2(p>>8, q>>8, w0, w1)>>8&lanes)
			to, a, b = to[2:], a[8:], b[8:]
		}
		c = c[len(c)-len(a):]
	default:
		for len(to) >= 2 && len(a) >= 8 && len(b) >= 8 && len(c) >= 8 {
			p, q, r := word(a), word(b), word(c)
			to[0], to[1] = apart(mix3(p, q, r, w0, w1, w2)>>8&lanes, mix3(p>>8, q>>8, r>>8, w0, w1, w2)>>8&lanes)
			to, a, b, c = to[2:], a[8:], b[8:], c[8:]
		}
	}
	if len(to) > 0 && len(a) >= 4 && len(b) >= 4 && len(c) >= 4 { // a last pixel without a partner
		p, q, r := uint64(binary.LittleEndian.Uint32(a)), uint64(binary.LittleEndian.Uint32(b)), uint64(binary.LittleEndian.Uint32(c))
		to[0], _ = apart(mix3(p, q, r, w0, w1, w2)>>8&lanes, mix3(p>>8, q>>8, r>>8, w0, w1, w2)>>8&lanes)
	}
}

func word(b []uint8) uint64 { return binary.LittleEndian.Uint64(b) }

// mix2 and mix3 mix every other byte of words; each lane of the sum holds 256
// times the mean, and a half.
func mix2(p, q, w0, w1 uint64) uint64 { return (p&lanes)*w0 + (q&lanes)*w1 + halfs }

func mix3(p, q, r, w0, w1, w2 uint64) uint64 {
	return (p&lanes)*w0 + (q&lanes)*w1 + (r&lanes)*w2 + halfs
}

// apart sorts the even and the odd bytes of two pixels by pixel.
func apart(even, odd uint64) (first, second uint64) {
	const low = 0xffffffff
	return even&low | odd<<32, even>>32 | odd&^low
}

// gathered mixes three spread pixels into the four bytes of one.
func gathered(a, b, c uint64, t *tap) uint32 {
	x := (a*uint64(t.w0) + b*uint64(t.w1) + c*uint64(t.w2) + halfs) >> 8 & lanes
	return uint32(x) | uint32(x>>32)<<8
}
