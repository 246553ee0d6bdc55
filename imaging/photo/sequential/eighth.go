package sequential

import "image"

// Eighth is the picture in data at an eighth of its size, in about a third of
// the time of Decode: each of its pixels is the mean of a block, and all finer
// detail is skipped. False if Decode would say no; damage may escape it.
func Eighth(data []byte) (image.Image, bool) {
	f, ok := readFrame(data)
	if !ok {
		return nil, false
	}
	img := f.newEighth()
	return img, f.readMeans()
}

// newEighth is a picture of one pixel for each block, to be filled through the
// planes of the components.
func (f *frame) newEighth() image.Image {
	w, h := f.w, f.h
	f.w, f.h = (w+7)/8, (h+7)/8
	across, down := f.across, f.down
	f.across, f.down = (across+7)/8, (down+7)/8 // of MCUs made of such pixels
	img := f.newPicture()
	f.w, f.h, f.across, f.down = w, h, across, down
	return img
}

// readMeans is readScan for the first coefficient of each block alone.
func (f *frame) readMeans() bool {
	b := bits{data: f.scan}
	var before [3]int32
	var skip [4]*skips
	for _, c := range f.parts {
		if skip[c.ac] == nil {
			skip[c.ac] = newSkips(f.ac[c.ac])
		}
	}
	next := byte(firstRestart)
	for mcu := range f.across * f.down {
		if f.restart > 0 && mcu > 0 && mcu%f.restart == 0 {
			if !b.passMarker(next) {
				return false
			}
			next = firstRestart + (next+1)%8
			before = [3]int32{}
		}
		for i := range f.parts {
			c := &f.parts[i]
			q := f.quant[c.quant][0]
			x, y := mcu%f.across*c.h, mcu/f.across*c.v
			for j := range c.h * c.v {
				if !b.readMean(f.dc[c.dc], &before[i]) || !b.skipRest(f.ac[c.ac], skip[c.ac]) {
					return false
				}
				c.plane[(y+j/c.h)*c.stride+x+j%c.h] = level((before[i]*q + 4) >> 3)
			}
		}
		if b.overdrawn() {
			return false
		}
	}
	return b.passMarker(endOfImage)
}

// readMean reads the first coefficient of a block.
func (b *bits) readMean(dc *codes, before *int32) bool {
	b.fill()
	size, ok := b.symbol(dc)
	if !ok || size > 11 {
		return false
	}
	*before += extend(b.take(int(size)), int(size))
	return true
}

// skips tells how far the next bits reach into a block, several coefficients at
// a time: coefficients << 8 | bits, with lastOfBlock where the block ends there;
// 0 where not even the first coefficient fits.
type skips [1 << skipBits]uint16

const (
	skipBits    = 13
	lastOfBlock = 1 << 15
)

func newSkips(ac *codes) *skips {
	s := &skips{}
	for i := range s {
		taken, passed := 0, 0
		for {
			ahead := uint32(i) << taken & (1<<skipBits - 1)
			e := ac.short[ahead>>(skipBits-shortBits)]
			length, run, size := int(e&0xff), int(e>>12), int(e>>8&15)
			if e == 0 || taken+length+size > skipBits || passed+run+1 > 63 || size == 0 && run > 0 && run < 15 {
				break
			}
			taken += length + size
			if size == 0 && run == 0 {
				s[i] = lastOfBlock
				break
			}
			passed += run + 1
		}
		s[i] |= uint16(passed<<8 | taken)
	}
	return s
}

// skipRest goes on to the end of a block.
func (b *bits) skipRest(ac *codes, s *skips) bool {
	for k := 1; k < 64; {
		b.fill()
		e := s[b.word>>(64-skipBits)]
		passed := int(e>>8) & 0x7f
		if e == 0 || k+passed > 63 { // the last ones may belong to the next block
			var last, ok bool
			if k, last, ok = b.skipOne(ac, k); !ok {
				return false
			} else if last {
				break
			}
			continue
		}
		b.take(int(e & 0xff))
		k += passed
		if e&lastOfBlock != 0 {
			break
		}
	}
	return true
}

// skipOne skips one coefficient after the k-th, and tells whether the block ends
// there.
func (b *bits) skipOne(ac *codes, k int) (next int, last, ok bool) {
	value, ok := b.symbol(ac)
	run, size := int(value>>4), int(value&15)
	switch {
	case !ok || size == 0 && run > 0 && run < 15:
		return k, false, false
	case size == 0 && run == 0:
		return k, true, true
	}
	b.take(size)
	k += run + 1
	return k, false, k <= 64
}
