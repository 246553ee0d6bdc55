package sequential

// readScan undoes the Huffman coding band by band; false if the file is not
// sound.
func (f *frame) readScan(free <-chan *band, full chan<- *band) bool {
	b := bits{data: f.scan}
	var before [3]int32 // the last DC coefficient of each colour
	mcu, next := 0, byte(firstRestart)
	for row := range f.down {
		to := <-free
		to.row = row
		k := 0
		for range f.across {
			if f.restart > 0 && mcu > 0 && mcu%f.restart == 0 {
				if !b.passMarker(next) {
					return false
				}
				next = firstRestart + (next+1)%8
				before = [3]int32{}
			}
			mcu++
			for i := range f.parts {
				c := &f.parts[i]
				dc, ac := f.dc[c.dc], f.ac[c.ac]
				for range c.h * c.v {
					last, ok := b.readBlock(&to.blocks[k], dc, ac, &before[i])
					if !ok {
						return false
					}
					to.last[k] = last
					k++
				}
			}
		}
		if b.overdrawn() {
			return false
		}
		full <- to
	}
	return b.passMarker(endOfImage)
}

// readBlock fills a block of zeros (ITU-T T.81, F.2.2) and tells where in zigzag
// order its last coefficient stands.
func (b *bits) readBlock(to *[64]int16, dc, ac *codes, before *int32) (last uint8, ok bool) {
	b.fill()
	size, ok := b.symbol(dc)
	if !ok || size > 11 {
		return 0, false
	}
	*before += extend(b.take(int(size)), int(size))
	to[0] = int16(*before)
	at := 0
	for k := 1; k < 64; k++ {
		b.fill()
		if e := ac.coeffs[b.word>>(64-shortBits)]; e != 0 {
			b.take(int(e & 0xff))
			k += int(e >> 8 & 0xff)
			at = k
			to[zigzag[k]] = int16(e >> 16)
			continue
		}
		value, ok := b.symbol(ac)
		if !ok {
			return 0, false
		}
		run, size := int(value>>4), int(value&15)
		if size == 0 {
			if run == 0 { // end of block
				break
			}
			if run < 15 { // means something in progressive files only
				return 0, false
			}
			k += 15
			continue
		}
		k += run
		at = k
		to[zigzag[k]] = int16(extend(b.take(size), size))
	}
	return uint8(at), at < 64
}
