// Package photo reads photographs: JPEG, PNG, TIFF, WebP and HEIC files, told
// apart by their content.
//
//	p, err := photo.Open("right-dorsal.jpg")
//	size := p.Size()                                    // upright, in pixels
//	part := p.Patch(image.Rect(900, 700, 1500, 1300), 1) // linear light
//	p.Facts().Taken                                     // from the EXIF data
//
// All coordinates are those of the upright photograph: the camera's EXIF
// orientation is applied on the way, the pixels stay as they were decoded.
//
// Numbers in the file are taken as sRGB (IEC 61966-2-1). An embedded profile is
// not applied: Display P3 shares the sRGB transfer curve, so lightness and edges
// are right, while saturated colours come out a little dull.
package photo

import (
	"errors"
	"fmt"
	"image"
	"io/fs"
	"os"
	"path/filepath"
	"time"
)

// Photograph is a decoded photograph, upright. It does not change and may be
// read by several goroutines.
type Photograph struct {
	pixels image.Image // as decoded
	turn   orientation // how to hold them upright
	facts  Facts
}

// Facts is what the photograph's EXIF data say, zero where they say nothing.
type Facts struct {
	Taken   time.Time
	Camera  string
	Focal35 float64 // focal length in mm, as on a 36 x 24 mm frame
}

// Open reads the photograph in the file at path. The error names the file,
// says what is wrong with it and how to mend that.
func Open(path string) (*Photograph, error) {
	data, err := load(path)
	if err != nil {
		return nil, err
	}
	p, err := Decode(data)
	if err != nil {
		return nil, fmt.Errorf("%s %w", filepath.Base(path), err)
	}
	return p, nil
}

// Decode reads the photograph in data, a whole file. The error begins with a
// verb, for the file's name to stand before it.
func Decode(data []byte) (*Photograph, error) {
	if err := light(int64(len(data))); err != nil {
		return nil, err
	}
	f, err := formatOf(data)
	if err != nil {
		return nil, err
	}
	h, err := f.header(data)
	if err != nil {
		return nil, err
	}
	pixels, err := f.decode(data)
	if err != nil {
		return nil, err
	}
	return &Photograph{pixels: pixels, turn: h.turn, facts: h.facts}, nil
}

// ReadSize is the width and height of the upright photograph in the file at
// path, read from its header without decoding it.
func ReadSize(path string) (image.Point, error) {
	data, err := load(path)
	if err != nil {
		return image.Point{}, err
	}
	f, err := formatOf(data)
	if err == nil {
		var h header
		if h, err = f.header(data); err == nil {
			return h.turn.upright(h.size), nil
		}
	}
	return image.Point{}, fmt.Errorf("%s %w", filepath.Base(path), err)
}

// From is a photograph of an upright picture made in memory.
func From(img image.Image) *Photograph { return &Photograph{pixels: img, turn: upright} }

// Size is the width and height of the upright photograph in pixels.
func (p *Photograph) Size() image.Point { return p.turn.upright(p.pixels.Bounds().Size()) }

// Facts is what the EXIF data say.
func (p *Photograph) Facts() Facts { return p.facts }

func load(path string) ([]byte, error) {
	name := filepath.Base(path)
	info, err := os.Stat(path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil, fmt.Errorf("%s is not there; check the name and the folder (%s)", name, filepath.Dir(path))
	case err != nil:
		return nil, fmt.Errorf("%s can't be read: %w", name, err)
	case !info.Mode().IsRegular():
		return nil, fmt.Errorf("%s is not a file; give the name of a photograph", name)
	}
	if err := light(info.Size()); err != nil {
		return nil, fmt.Errorf("%s %w", name, err)
	}
	data, err := os.ReadFile(path)
	if err != nil {
		return nil, fmt.Errorf("%s can't be read: %w", name, err)
	}
	return data, nil
}
