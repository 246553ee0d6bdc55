package display

import (
	"encoding/binary"
	"image"
)

// source is a picture from which frames are taken, as it is stored.
type source interface {
	size() image.Point
	// colours writes the pixels from (x0, y) on, red, green, blue, alpha.
	colours(to []uint8, x0, y int)
	// halved is the picture reduced by two. It hands its rows out through rows,
	// in parts that may be worked on at the same time.
	halved(rows func(n int, work func(from, to int))) packed
	// mixer makes liners for a frame whose pixels are mixed from the samples by
	// the taps x and y. Colour that is stored at half the resolution takes its
	// taps from coarseX and coarseY.
	mixer(x, y []tap, coarseX, coarseY func(n int) []tap) func() liner
}

// liner lays lines of a frame. It is for one goroutine.
type liner interface {
	// lay writes line v, red, green, blue, alpha.
	lay(to []uint8, v int)
}

// span is the part of n samples that the taps need. The taps count from its
// beginning afterwards.
func span(taps []tap, n int) (first, length int) {
	if len(taps) == 0 {
		return 0, 0
	}
	low, high := taps[0].at, taps[len(taps)-1].at
	if low > high {
		low, high = high, low
	}
	for i := range taps {
		taps[i].at -= low
	}
	return int(low), min(int(high)+3, n) - int(low)
}

// crisp lays lines whose pixels are those of the source, unmixed.
type crisp struct {
	from    source
	x, y    []int // the sample of each pixel
	left    int
	pixels  []uint8
	current int // the line in pixels, -1 for none
}

func newCrisp(from source, x, y axis) func() liner {
	xs, ys := x.samples(), y.samples()
	left, n := min(xs[0], xs[len(xs)-1]), max(xs[0], xs[len(xs)-1])+1-min(xs[0], xs[len(xs)-1])
	return func() liner {
		return &crisp{from: from, x: xs, y: ys, left: left, pixels: make([]uint8, 4*n), current: -1}
	}
}

func (c *crisp) lay(to []uint8, v int) {
	if y := c.y[v]; y != c.current {
		c.from.colours(c.pixels, c.left, y)
		c.current = y
	}
	for i, x := range c.x {
		binary.LittleEndian.PutUint32(to[4*i:], binary.LittleEndian.Uint32(c.pixels[4*(x-c.left):]))
	}
}
