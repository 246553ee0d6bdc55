package strip

import (
	"bytes"
	"errors"
	"image"
	"image/png"

	"golang.org/x/image/tiff"
)

// cleanTIFF is a PNG of the same pixels, with the facts that are kept.
func cleanTIFF(data []byte) ([]byte, error) {
	img, err := tiff.Decode(bytes.NewReader(data))
	if err != nil {
		return nil, err
	}
	if !fitsPNG(img) {
		return nil, errors.New("holds its pixels in a way that can't be kept without loss; export it as PNG or JPEG")
	}
	var out bytes.Buffer
	if err := png.Encode(&out, img); err != nil {
		return nil, err
	}
	const head = 8 + 12 + 13 // signature and IHDR
	exif := cleanEXIF(data)
	if exif == nil {
		return out.Bytes(), nil
	}
	return append(out.Bytes()[:head:head], append(pngChunk("eXIf", exif), out.Bytes()[head:]...)...), nil
}

// fitsPNG reports whether PNG holds the pixels as they are. It has no colours
// multiplied by their alpha, and none for printing.
func fitsPNG(img image.Image) bool {
	switch m := img.(type) {
	case *image.Gray, *image.Gray16, *image.NRGBA, *image.NRGBA64, *image.Paletted:
		return true
	case *image.RGBA:
		return m.Opaque()
	case *image.RGBA64:
		return m.Opaque()
	}
	return false
}
