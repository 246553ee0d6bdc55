package photo

import (
	"bytes"
	"encoding/binary"
	"errors"
	"image"

	"github.com/gen2brain/heic"
)

// narrowHEIC is the width below which the decoder gets the colour planes wrong.
const narrowHEIC = 128

// sizeOfHEIC is the size after the rotation and cropping that the file asks
// for, which the decoder carries out. So the EXIF orientation has no say in HEIC
// (ISO/IEC 23008-12: it only informs).
func sizeOfHEIC(data []byte) (image.Point, error) {
	h, err := readHEIF(data)
	if err != nil {
		return image.Point{}, err
	}
	for _, size := range h.sizes {
		if err := within(size); err != nil {
			return image.Point{}, err
		}
	}
	size, err := h.primarySize()
	if err == nil && size.X < narrowHEIC {
		err = errors.New("it is less than 128 pixels wide")
	}
	return size, err
}

// decodeHEIC copies the pixels, as those handed over keep all of the decoder's
// memory alive.
func decodeHEIC(data []byte) (image.Image, error) {
	prepareHEIC()
	img, err := heic.Decode(bytes.NewReader(data))
	if m, ok := img.(*image.YCbCr); ok && err == nil {
		m.Y, m.Cb, m.Cr = bytes.Clone(m.Y), bytes.Clone(m.Cb), bytes.Clone(m.Cr)
	}
	return img, err
}

func exifInHEIC(data []byte) []byte {
	h, err := readHEIF(data)
	if err != nil {
		return nil
	}
	for _, id := range h.order {
		if h.kinds[id] != "Exif" {
			continue
		}
		block := h.places[id]
		if len(block) < 4 {
			return nil
		}
		skip := uint64(binary.BigEndian.Uint32(block)) // to the TIFF header
		if 4+skip > uint64(len(block)) {
			return nil
		}
		return block[4+skip:]
	}
	return nil
}
