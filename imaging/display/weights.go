package display

// tap says from which three samples of a line one pixel of a frame is mixed:
// those at at, at+1 and at+2, in shares of 256 that add up to 256.
type tap struct {
	at         int32
	w0, w1, w2 uint16
	outer      uint32 // w0 in the upper half, w2 in the lower
}

// axis is one direction of a frame: the n pixels from the first one on that
// show the photograph.
type axis struct {
	zoom, corner float64
	length       int  // of the photograph along this direction
	flipped      bool // whether the stored samples run the other way
	first, n     int
}

// newAxis finds the pixels of the frame whose centres lie on the photograph.
func newAxis(zoom, corner float64, length, window int, flipped bool) axis {
	a := axis{zoom: zoom, corner: corner, length: length, flipped: flipped}
	on := func(i int) bool { x := a.place(i); return x >= 0 && x < one*int64(length) }
	for a.first < window && !on(a.first) {
		a.first++
	}
	for a.first+a.n < window && on(a.first+a.n) {
		a.n++
	}
	return a
}

// Places along an axis are in parts of a pixel of the photograph, so that the
// sums are the same on every machine.
const one int64 = 1 << 24

// place is where the centre of pixel i of the frame lies on the photograph.
func (a axis) place(i int) int64 {
	return fixed(a.corner) + fixed((float64(i)+0.5)/a.zoom)
}

func fixed(x float64) int64 {
	scaled := x * float64(one)
	if scaled < 0 {
		return -int64(0.5 - scaled)
	}
	return int64(scaled + 0.5)
}

// samples are the samples seen at the pixels, where each is one pixel of the
// photograph.
func (a axis) samples() []int {
	to := make([]int, a.n)
	for i := range to {
		to[i] = int(a.place(a.first+i) / one)
		if a.flipped {
			to[i] = a.length - 1 - to[i]
		}
	}
	return to
}

// taps are the shares of the samples in each pixel. There are n samples, each
// perSample pixels of the photograph long. A pixel of the frame is the mean over
// its own length, but over no less than one sample, which is the linear
// interpolation between two; and over no more than two samples.
func (a axis) taps(n int, perSample float64) []tap {
	to := make([]tap, a.n)
	unit := fixed(perSample)
	length := min(max(fixed(1/a.zoom), unit), 2*unit)
	for i := range to {
		x := a.place(a.first + i)
		if a.flipped {
			x = one*int64(a.length) - x
		}
		to[i] = newTap(x-length/2, length, unit, n)
	}
	return to
}

// newTap mixes the samples under a line that begins at from.
func newTap(from, length, unit int64, n int) tap {
	first := from / unit
	if from < 0 {
		first = (from - unit + 1) / unit
	}
	base := min(max(first, 0), max(int64(n)-3, 0))
	last := int64(n - 1)
	var share [3]int64
	var spent int64
	for k := range int64(3) {
		end := min((first+k+1)*unit, from+length) - from
		upTo := (end*256 + length/2) / length
		share[min(max(first+k, 0), last)-base] += upTo - spent
		spent = upTo
	}
	return tap{at: int32(base), w0: uint16(share[0]), w1: uint16(share[1]), w2: uint16(share[2]), outer: uint32(share[0]<<16 | share[2])}
}

// mixed is 256 times the mean of the lower three bytes of l. The first and the
// third meet their shares in one product, whose middle is the sum.
func (t *tap) mixed(l uint32) uint64 {
	return uint64(l&0xff00ff)*uint64(t.outer)>>16&0xffff + uint64(l>>8&0xff)*uint64(t.w1)
}
