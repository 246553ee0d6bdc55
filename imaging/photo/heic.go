package photo

import (
	"bytes"
	"image"

	"github.com/gen2brain/heic"
)

func sizeOfHEIC(data []byte) (image.Point, error) {
	c, err := heic.DecodeConfig(bytes.NewReader(data))
	return image.Pt(c.Width, c.Height), err
}

func decodeHEIC(data []byte) (image.Image, error) { return heic.Decode(bytes.NewReader(data)) }

func exifInHEIC([]byte) []byte { return nil }
