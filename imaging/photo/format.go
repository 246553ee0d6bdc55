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

	"ogive/imaging/photo/sequential"
)

// header is what can be told of a file without decoding its pixels.
type header struct {
	size  image.Point // as stored
	turn  orientation
	facts Facts
}

// format is one kind of picture file.
type format struct {
	name         string
	size         func(data []byte) (image.Point, error)
	exif         func(data []byte) []byte
	pixels       func(data []byte) (image.Image, error)
	decoderTurns bool // whether pixels are upright already
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
		return format{"JPEG", sizeOfJPEG, exifInJPEG, decodeJPEG, false}, nil
	case is(0, "\x89PNG\r\n\x1a\n"):
		return format{"PNG", config(png.DecodeConfig), exifInPNG, whole(png.Decode), false}, nil
	case is(0, "II*\x00"), is(0, "MM\x00*"):
		return format{"TIFF", config(tiff.DecodeConfig), exifInTIFF, whole(tiff.Decode), false}, nil
	case is(0, "RIFF") && is(8, "WEBP"):
		return format{"WebP", config(webp.DecodeConfig), exifInWebP, whole(webp.Decode), false}, nil
	case is(4, "ftyphei"), is(4, "ftyphev"), is(4, "ftypmif1"), is(4, "ftypmsf1"):
		return format{"HEIC", sizeOfHEIC, exifInHEIC, decodeHEIC, true}, nil
	}
	return format{}, errors.New("is not a picture this program reads (JPEG, PNG, TIFF, WebP, HEIC); export it from the camera as JPEG")
}

// decodeJPEG takes the fast way for what cameras write.
func decodeJPEG(data []byte) (image.Image, error) {
	if img, ok := sequential.Decode(data); ok {
		return img, nil
	}
	return jpeg.Decode(bytes.NewReader(data))
}

// header reads the size and the EXIF data and refuses a size beyond the limits.
func (f format) header(data []byte) (h header, err error) {
	defer f.mend(&err)
	h.size, err = f.size(data)
	if err != nil {
		return h, err
	}
	if err := within(h.size); err != nil {
		return h, err
	}
	if err := plausible(h.size, len(data)); err != nil {
		return h, err
	}
	h.turn, h.facts = readEXIF(f.exif(data))
	if f.decoderTurns {
		h.turn = upright
	}
	return h, nil
}

// decode reads the pixels as stored.
func (f format) decode(data []byte) (pixels image.Image, err error) {
	defer f.mend(&err)
	return f.pixels(data)
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
	if _, plain := (*err).(limitError); plain {
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

// sizeOfJPEG also refuses a file whose many scans would each go over the whole
// picture again, for hours.
func sizeOfJPEG(data []byte) (image.Point, error) {
	if n := bytes.Count(data, []byte{0xff, 0xda}); n > MaxScans {
		return image.Point{}, limitError(fmt.Sprintf("goes over its picture %d times, which no camera does (up to %d are read); export it again as JPEG", n, MaxScans))
	}
	return config(jpeg.DecodeConfig)(data)
}

func whole(decode func(io.Reader) (image.Image, error)) func([]byte) (image.Image, error) {
	return func(data []byte) (image.Image, error) { return decode(bytes.NewReader(data)) }
}
