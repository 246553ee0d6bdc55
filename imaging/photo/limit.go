package photo

import (
	"fmt"
	"image"
)

// Limits on a photograph, checked in its header before memory is spent on it.
const (
	MaxFileSize = 600 << 20   // bytes of the file
	MaxSide     = 65_535      // pixels along one side
	MaxPixels   = 200_000_000 // pixels in all
	MaxScans    = 100         // passes over the picture in a progressive JPEG
)

// A picture of more than smallPixels has to be at least a byte long for every
// maxSqueeze pixels. Photographs need a hundred times more; a file that promises
// more is cut off or made to exhaust memory. Deflate squeezes 1032 to 1 at best.
const (
	smallPixels = 4_000_000
	maxSqueeze  = 2_000
)

// limitError is a picture beyond a limit. Its text says all there is to say.
type limitError string

func (e limitError) Error() string { return string(e) }

func light(bytes int64) error {
	if bytes > MaxFileSize {
		return limitError(fmt.Sprintf("holds %d MB, more than the %d MB this program reads; export it again as JPEG", bytes>>20, MaxFileSize>>20))
	}
	return nil
}

func within(size image.Point) error {
	if size.X <= 0 || size.Y <= 0 {
		return limitError("has no pixels; export it from the camera again")
	}
	if size.X > MaxSide || size.Y > MaxSide || size.X*size.Y > MaxPixels {
		return limitError(fmt.Sprintf("says it is %d x %d pixels, more than this program reads (%d along a side, %d million in all); export it smaller",
			size.X, size.Y, MaxSide, MaxPixels/1_000_000))
	}
	return nil
}

func plausible(size image.Point, bytes int) error {
	if n := size.X * size.Y; n > smallPixels && n > maxSqueeze*bytes {
		return limitError(fmt.Sprintf("says it is %d x %d pixels, but holds only %d bytes: it is cut off or no photograph; copy it from the camera again", size.X, size.Y, bytes))
	}
	return nil
}
