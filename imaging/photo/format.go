package photo

import (
	"bytes"
	"errors"
	"fmt"
	"image"
	"image/jpeg"
	"image/png"
	"io"

	"golang.org/x/image/tiff"
	"golang.org/x/image/webp"
)

// Limits on a photograph, checked in its header before memory is spent on it.
const (
	MaxFileSize = 600 << 20   // bytes of the file
	MaxSide     = 65_535      // pixels along one side
	MaxPixels   = 200_000_000 // pixels in all
)

// header is what can be told of a file without decoding its pixels.
type header struct {
	size  image.Point // as stored
	turn  orientation
	facts Facts
}

// format is one kind of picture file.
type format struct {
	name   string
	size   func(data []byte) (image.Point, error)
	exif   func(data []byte) []byte
	pixels func(data []byte) (image.Image, error)
}

// formatOf tells the kind of file from its first bytes, whatever its name.
func formatOf(data []byte) (format, error) {
	is := func(at int, magic string) bool {
		return len(data) >= at+len(magic) && string(data[at:at+len(magic)]) == magic
	}
	switch {
	case len(data) == 0:
		return format{}, errors.New("is empty; copy it from the camera again")
	case is(0, "\xff\xd8\xff"):
		return format{"JPEG", config(jpeg.DecodeConfig), exifInJPEG, whole(jpeg.Decode)}, nil
	case is(0, "\x89PNG\r\n\x1a\n"):
		return format{"PNG", config(png.DecodeConfig), exifInPNG, whole(png.Decode)}, nil
	case is(0, "II*\x00"), is(0, "MM\x00*"):
		return format{"TIFF", config(tiff.DecodeConfig), exifInTIFF, whole(tiff.Decode)}, nil
	case is(0, "RIFF") && is(8, "WEBP"):
		return format{"WebP", config(webp.DecodeConfig), exifInWebP, whole(webp.Decode)}, nil
	case is(4, "ftyp"):
		return format{"HEIC", sizeOfHEIC, exifInHEIC, decodeHEIC}, nil
	}
	return format{}, errors.New("is not a picture this program reads (JPEG, PNG, TIFF, WebP, HEIC); export it from the camera as JPEG")
}

// header reads the size and the EXIF data and refuses a size beyond the limits.
func (f format) header(data []byte) (h header, err error) {
	if len(data) > MaxFileSize {
		return h, fmt.Errorf("holds %d MB, more than the %d MB this program reads; export it again as JPEG", len(data)>>20, MaxFileSize>>20)
	}
	defer f.mend(&err)
	h.size, err = f.size(data)
	if err != nil {
		return h, err
	}
	if err := within(h.size); err != nil {
		return h, err
	}
	h.turn, h.facts = readEXIF(f.exif(data))
	return h, nil
}

// decode reads the pixels as stored.
func (f format) decode(data []byte) (pixels image.Image, err error) {
	defer f.mend(&err)
	return f.pixels(data)
}

// sizeError is a picture beyond the limits; its text stands by itself.
type sizeError string

func (e sizeError) Error() string { return string(e) }

func within(size image.Point) error {
	if size.X <= 0 || size.Y <= 0 {
		return sizeError("has no pixels; export it from the camera again")
	}
	if size.X > MaxSide || size.Y > MaxSide || size.X*size.Y > MaxPixels {
		return sizeError(fmt.Sprintf("says it is %d x %d pixels, more than this program reads (%d along a side, %d million in all); export it smaller",
			size.X, size.Y, MaxSide, MaxPixels/1_000_000))
	}
	return nil
}

// mend turns whatever a decoder did, a panic included, into an error that says
// what to do. Decoders of damaged files are known to panic.
func (f format) mend(err *error) {
	if p := recover(); p != nil {
		*err = fmt.Errorf("%v", p)
	}
	if *err == nil {
		return
	}
	if _, plain := (*err).(sizeError); plain {
		return
	}
	*err = fmt.Errorf("is a damaged %s file or one of an unknown kind (%w); copy it from the camera again or export it as JPEG", f.name, *err)
}

// config and whole let the decoders of the standard library read from memory.
func config(decode func(io.Reader) (image.Config, error)) func([]byte) (image.Point, error) {
	return func(data []byte) (image.Point, error) {
		c, err := decode(bytes.NewReader(data))
		return image.Pt(c.Width, c.Height), err
	}
}

func whole(decode func(io.Reader) (image.Image, error)) func([]byte) (image.Image, error) {
	return func(data []byte) (image.Image, error) { return decode(bytes.NewReader(data)) }
}
