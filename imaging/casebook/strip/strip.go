// Package strip makes the copy of a photograph that enters a casebook: without
// location, owner, serial numbers, remarks and hidden pictures.
//
//	clean, err := strip.Photograph(data)
//	clean.Data, clean.Extension, clean.Picture.Facts()
//
// What is kept: the picture itself, its colour profile, orientation, date,
// camera and focal length. JPEG, PNG, WebP and HEIC keep their coded pixels byte
// for byte. TIFF mixes pixels and facts too freely to be cleaned in place and
// becomes a PNG of the same pixels, or is refused where PNG has no room for them.
// Stripping a stripped photograph changes nothing.
package strip

import (
	"errors"
	"fmt"

	"ogive/imaging/photo"
)

// Clean is the copy that is kept.
type Clean struct {
	Data      []byte
	Extension string // without the dot: jpg, png, webp or heic
	// Picture is the copy, decoded.
	Picture *photo.Photograph
}

// Photograph cleans the photograph in data, a whole file. The error begins with
// a verb, for the file's name to stand before it.
func Photograph(data []byte) (clean Clean, err error) {
	if _, err := photo.Decode(data); err != nil {
		return Clean{}, err
	}
	defer func() {
		if p := recover(); p != nil {
			clean, err = Clean{}, fmt.Errorf("can't be freed of its hidden facts (%v); export it as JPEG", p)
		}
	}()
	is := func(at int, magic string) bool {
		return len(data) >= at+len(magic) && string(data[at:at+len(magic)]) == magic
	}
	switch {
	case is(0, "\xff\xd8\xff"):
		clean.Extension = "jpg"
		clean.Data, err = cleanJPEG(data)
	case is(0, "\x89PNG\r\n\x1a\n"):
		clean.Extension = "png"
		clean.Data, err = cleanPNG(data)
	case is(0, "RIFF"):
		clean.Extension = "webp"
		clean.Data, err = cleanWebP(data)
	case is(4, "ftyp"):
		clean.Extension = "heic"
		clean.Data, err = cleanHEIC(data)
	default:
		clean.Extension = "png"
		clean.Data, err = cleanTIFF(data)
	}
	if err != nil {
		return Clean{}, err
	}
	if clean.Picture, err = photo.Decode(clean.Data); err != nil {
		return Clean{}, fmt.Errorf("can't be read any more without its hidden facts (%w); export it as JPEG", err)
	}
	return clean, nil
}

var errCutOff = errors.New("is cut off; copy it from the camera again")
