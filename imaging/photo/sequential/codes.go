package sequential

// codes is one Huffman table (ITU-T T.81, annex C), laid out for looking codes
// up by their first bits.
type codes struct {
	short  [1 << shortBits]uint16 // value << 8 | length of a code, 0 if it is longer
	coeffs [1 << shortBits]int32  // see setCoefficients
	limit  [maxLength + 2]uint32  // first 16 bits beyond all codes up to each length
	offset [maxLength + 1]int32   // from a code to the place of its value
	values [256]uint8
}

const (
	shortBits = 10
	maxLength = 16
)

func (f *frame) readCodes(body []byte) bool {
	for len(body) >= 17 {
		class, id := body[0]>>4, body[0]&15
		total := 0
		for _, n := range body[1:17] {
			total += int(n)
		}
		if class > 1 || id > 1 || total == 0 || total > 256 || len(body) < 17+total {
			return false
		}
		c, ok := newCodes(body[1:17], body[17:17+total])
		if !ok {
			return false
		}
		if class == 0 {
			f.dc[id] = c
		} else {
			c.setCoefficients()
			f.ac[id] = c
		}
		body = body[17+total:]
	}
	return len(body) == 0
}

// newCodes builds a table from the number of codes of each length and their
// values in order.
func newCodes(counts, values []byte) (*codes, bool) {
	c := &codes{}
	copy(c.values[:], values)
	code, k := uint32(0), 0
	for length := 1; length <= maxLength; length++ {
		c.offset[length] = int32(k) - int32(code)
		for range counts[length-1] {
			if code >= 1<<length {
				return nil, false // more codes than there is room for
			}
			if length <= shortBits {
				first := code << (shortBits - length)
				for i := range uint32(1) << (shortBits - length) {
					c.short[first+i] = uint16(values[k])<<8 | uint16(length)
				}
			}
			code++
			k++
		}
		c.limit[length] = code << (maxLength - length)
		code <<= 1
	}
	c.limit[maxLength+1] = 1 << 16
	return c, true
}

// setCoefficients prepares the short codes whose coefficient fits in the bits
// looked at too: coefficient << 16 | zeros before it << 8 | bits taken.
func (c *codes) setCoefficients() {
	for i := range c.short {
		length, value := int(c.short[i]&0xff), c.short[i]>>8
		run, size := int32(value>>4), int(value&15)
		if length == 0 || size == 0 || length+size > shortBits {
			continue
		}
		bits := uint32(i) >> (shortBits - length - size) & (1<<size - 1)
		c.coeffs[i] = extend(bits, size)<<16 | run<<8 | int32(length+size)
	}
}

// extend is the number that size bits stand for (ITU-T T.81, figure F.12).
func extend(bits uint32, size int) int32 {
	v := int32(bits)
	if size > 0 && v < 1<<(size-1) {
		v -= 1<<size - 1
	}
	return v
}
