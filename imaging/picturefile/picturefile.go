// Package picturefile writes a drawn picture to a file, as PNG or JPEG by the
// ending of its name.
//
//	if !picturefile.Known(path) { ... } // neither .png nor .jpg
//	err := picturefile.Write(path, picture)
package picturefile

import (
	"bytes"
	"fmt"
	"image"
	"image/jpeg"
	"image/png"
	"path/filepath"
	"strings"

	"ogive/imaging/wholefile"
)

// quality is that of JPEG files, from 1 to 100: lines and letters stay sharp.
const quality = 92

// encoders write a picture to memory, by the ending of its name.
var encoders = map[string]func(*bytes.Buffer, image.Image) error{
	".png": func(b *bytes.Buffer, p image.Image) error {
		return (&png.Encoder{CompressionLevel: png.BestSpeed}).Encode(b, p)
	},
	".jpg":  encodeJPEG,
	".jpeg": encodeJPEG,
}

func encodeJPEG(b *bytes.Buffer, p image.Image) error {
	return jpeg.Encode(b, p, &jpeg.Options{Quality: quality})
}

func ending(path string) string { return strings.ToLower(filepath.Ext(path)) }

// Known reports whether the name ends in .png, .jpg or .jpeg, in any case.
func Known(path string) bool { return encoders[ending(path)] != nil }

// Write writes the picture whole or not at all. The error says what is wrong and
// how to mend it.
func Write(path string, p image.Image) error {
	encode := encoders[ending(path)]
	if encode == nil {
		return fmt.Errorf("%s: the name tells no kind of picture; let it end in .png or .jpg", path)
	}
	var data bytes.Buffer
	if err := encode(&data, p); err != nil {
		return fmt.Errorf("%s: the picture can't be written: %w; measure a smaller copy of the photograph", path, err)
	}
	return wholefile.Write(path, data.Bytes())
}
