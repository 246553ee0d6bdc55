package measure

import (
	"image"
	"math"

	"ogive/geometry/plane"
	"ogive/geometry/scale"
	"ogive/imaging/photo"
)

// frameDiagonal is the diagonal of the 36 x 24 mm frame to which EXIF refers
// focal lengths, in millimetres.
var frameDiagonal = math.Hypot(36, 24)

// cameraOf is what is known of the camera. The focal length in pixels follows
// from the one for a 36 x 24 mm frame by the diagonals (CIPA DCG-001; from
// memory), if the photograph was not cropped since.
func cameraOf(size image.Point, facts photo.Facts, tilt plane.Angle) scale.Camera {
	w, h := float64(size.X), float64(size.Y)
	return scale.Camera{
		Width: plane.Pixel(w), Height: plane.Pixel(h),
		Focal: plane.Pixel(facts.Focal35 / frameDiagonal * math.Hypot(w, h)),
		Tilt:  tilt,
	}
}
