package rounds

import (
	"image"

	"ogive/imaging/photo"
)

// blank stands where a test needs a picture's size and nothing of what is on it.
var blank = photo.From(image.NewRGBA(image.Rect(0, 0, pictureWidth, pictureHeight)))
