package sequential

import "encoding/binary"

// transform writes the pixels of a band and leaves its blocks zero again.
func (f *frame) transform(b *band) {
	k := 0
	for mcu := range f.across {
		for i := range f.parts {
			c := &f.parts[i]
			q := f.quant[c.quant]
			for j := range c.h * c.v {
				x, y := 8*(mcu*c.h+j%c.h), 8*(b.row*c.v+j/c.h)
				to := c.plane[y*c.stride+x:]
				if block := &b.blocks[k]; b.last[k] == 0 {
					flat(to, c.stride, int32(block[0])*q[0])
					block[0] = 0
				} else {
					inverse(to, c.stride, block, q)
					*block = [64]int16{}
				}
				k++
			}
		}
	}
}

// flat is the transform of a block without any but the first coefficient.
func flat(to []uint8, stride int, dc int32) {
	v := uint64(level((dc+4)>>3)) * 0x0101010101010101
	for y := range 8 {
		binary.LittleEndian.PutUint64(to[y*stride:], v)
	}
}

// level is a sample of the transform as a level from 0 to 255.
func level(v int32) uint8 {
	v += 128
	if uint32(v) > 255 {
		v = ^(v >> 31)
	}
	return uint8(v)
}

// The factors of the transform, times 1<<13: Loeffler C, Ligtenberg A, Moschytz
// GS. Practical fast 1-D DCT algorithms with 11 multiplications. Proc ICASSP
// 1989:988-91, figure 1.
const (
	c0298 = 2446
	c0390 = 3196
	c0541 = 4433
	c0765 = 6270
	c0899 = 7373
	c1175 = 9633
	c1501 = 12299
	c1847 = 15137
	c1961 = 16069
	c2053 = 16819
	c2562 = 20995
	c3072 = 25172
)

// inverse is the inverse cosine transform of a block in 32-bit integers: the
// columns with two more bits than the result, then the rows.
func inverse(to []uint8, stride int, block *[64]int16, q *[64]int32) {
	var w [64]int32
	for x := range 8 {
		s0 := int32(block[x]) * q[x]
		s1, s2, s3, s4 := int32(block[8+x])*q[8+x], int32(block[16+x])*q[16+x], int32(block[24+x])*q[24+x], int32(block[32+x])*q[32+x]
		s5, s6, s7 := int32(block[40+x])*q[40+x], int32(block[48+x])*q[48+x], int32(block[56+x])*q[56+x]
		if s1|s2|s3|s4|s5|s6|s7 == 0 {
			s0 <<= 2
			w[x], w[8+x], w[16+x], w[24+x], w[32+x], w[40+x], w[48+x], w[56+x] = s0, s0, s0, s0, s0, s0, s0, s0
			continue
		}
		e0, e1, e2, e3 := even(s0, s2, s4, s6)
		o0, o1, o2, o3 := odd(s1, s3, s5, s7)
		const half, bits = 1 << 10, 11
		w[x], w[56+x] = (e0+o0+half)>>bits, (e0-o0+half)>>bits
		w[8+x], w[48+x] = (e1+o1+half)>>bits, (e1-o1+half)>>bits
		w[16+x], w[40+x] = (e2+o2+half)>>bits, (e2-o2+half)>>bits
		w[24+x], w[32+x] = (e3+o3+half)>>bits, (e3-o3+half)>>bits
	}
	for y := range 8 {
		s := w[8*y : 8*y+8 : 8*y+8]
		e0, e1, e2, e3 := even(s[0], s[2], s[4], s[6])
		o0, o1, o2, o3 := odd(s[1], s[3], s[5], s[7])
		const half, bits = 1 << 17, 18
		line := to[y*stride:][:8]
		line[0], line[7] = level((e0+o0+half)>>bits), level((e0-o0+half)>>bits)
		line[1], line[6] = level((e1+o1+half)>>bits), level((e1-o1+half)>>bits)
		line[2], line[5] = level((e2+o2+half)>>bits), level((e2-o2+half)>>bits)
		line[3], line[4] = level((e3+o3+half)>>bits), level((e3-o3+half)>>bits)
	}
}

func even(s0, s2, s4, s6 int32) (e0, e1, e2, e3 int32) {
	z := (s2 + s6) * c0541
	low, high := z-s6*c1847, z+s2*c0765
	sum, difference := (s0+s4)<<13, (s0-s4)<<13
	return sum + high, difference + low, difference - low, sum - high
}

func odd(s1, s3, s5, s7 int32) (o0, o1, o2, o3 int32) {
	z := (s7 + s3 + s5 + s1) * c1175
	a, b := (s7+s1)*-c0899, (s5+s3)*-c2562
	c, d := (s7+s3)*-c1961+z, (s5+s1)*-c0390+z
	return s1*c1501 + a + d, s3*c3072 + b + c, s5*c2053 + b + d, s7*c0298 + a + c
}
