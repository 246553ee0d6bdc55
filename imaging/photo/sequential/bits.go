package sequential

import "encoding/binary"

// bits hands out the bits of a scan. Past a marker they are zeros, counted.
type bits struct {
	data  []byte
	at    int
	word  uint64 // the next bits, first one uppermost
	n     int    // how many of word are filled
	spent int    // how many of them are zeros made up past a marker
}

// fill sees to it that at least 32 bits are at hand.
func (b *bits) fill() {
	if b.n > 32 {
		return
	}
	if b.at+4 <= len(b.data) {
		next := binary.BigEndian.Uint32(b.data[b.at:])
		if inverse := ^next; (inverse-0x01010101)&^inverse&0x80808080 == 0 { // no byte is 0xff
			b.word |= uint64(next) << (32 - b.n)
			b.n += 32
			b.at += 4
			return
		}
	}
	b.fillSlowly()
}

func (b *bits) fillSlowly() {
	for ; b.n <= 56; b.n += 8 {
		switch {
		case b.at >= len(b.data):
			b.spent += 8
			continue
		case b.data[b.at] != 0xff:
			b.word |= uint64(b.data[b.at]) << (56 - b.n)
			b.at++
		case b.at+1 < len(b.data) && b.data[b.at+1] == 0:
			b.word |= 0xff << (56 - b.n)
			b.at += 2
		default:
			b.spent += 8
		}
	}
}

// take is the next size bits, of those at hand.
func (b *bits) take(size int) uint32 {
	v := uint32(b.word >> (64 - size))
	b.word <<= size
	b.n -= size
	return v
}

// overdrawn reports whether bits past the marker have been handed out.
func (b *bits) overdrawn() bool { return b.n < b.spent }

// symbol is the value of the next code; false if there is no such code.
func (b *bits) symbol(c *codes) (uint8, bool) {
	if e := c.short[b.word>>(64-shortBits)]; e != 0 {
		b.take(int(e & 0xff))
		return uint8(e >> 8), true
	}
	next := uint32(b.word >> 48)
	for length := shortBits + 1; length <= maxLength; length++ {
		if next < c.limit[length] {
			place := int32(next>>(maxLength-length)) + c.offset[length]
			b.take(length)
			return c.values[uint8(place)], true
		}
	}
	return 0, false
}

// passMarker steps over the marker that has to come next, and forgets the bits
// that filled up the byte before it.
func (b *bits) passMarker(marker byte) bool {
	for b.at+2 <= len(b.data) && b.data[b.at] == 0xff && b.data[b.at+1] == 0xff { // fill bytes
		b.at++
	}
	if b.n-b.spent >= 8 || b.overdrawn() || b.at+2 > len(b.data) || b.data[b.at] != 0xff || b.data[b.at+1] != marker {
		return false
	}
	*b = bits{data: b.data, at: b.at + 2}
	return true
}
