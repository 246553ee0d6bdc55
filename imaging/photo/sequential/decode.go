// Package sequential decodes the JPEG files that cameras write (ITU-T T.81,
// sequential Huffman coding, 8 bits, grey or YCbCr in one scan) in about half
// the time of the standard library: one processor undoes the Huffman coding
// while others transform what it has already found.
//
//	img, ok := sequential.Decode(data)
//	if !ok {
//		img, err = jpeg.Decode(bytes.NewReader(data)) // any other or a damaged file
//	}
//
// It says no to whatever is out of the ordinary, a damaged file included, and
// leaves it to the standard library to read that or to say what is wrong.
package sequential

import (
	"image"
	"runtime"
	"sync"
)

// Decode reads the JPEG file in data; false if it is not a sound file of the
// kind this package is for. The picture is an *image.Gray or an *image.YCbCr.
func Decode(data []byte) (image.Image, bool) {
	f, ok := readFrame(data)
	if !ok {
		return nil, false
	}
	img := f.newPicture()
	free, full := make(chan *band, bandsAhead), make(chan *band, bandsAhead)
	for range bandsAhead {
		free <- f.newBand()
	}
	var workers sync.WaitGroup
	for range min(max(runtime.GOMAXPROCS(0)-1, 1), bandsAhead-1) {
		workers.Go(func() {
			for b := range full {
				f.transform(b)
				free <- b
			}
		})
	}
	ok = f.readScan(free, full)
	close(full)
	workers.Wait()
	if !ok {
		return nil, false
	}
	return img, true
}

// bandsAhead is how many bands are under way at a time.
const bandsAhead = 4

// band is one row of MCUs: the coefficients of its blocks in the order of the
// file, each block's in natural order, and where its last one stood in zigzag
// order.
type band struct {
	row    int
	blocks [][64]int16
	last   []uint8
}

func (f *frame) newBand() *band {
	n := f.across * f.blocksPerMCU()
	return &band{blocks: make([][64]int16, n), last: make([]uint8, n)}
}
