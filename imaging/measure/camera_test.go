package measure

import (
	"image"
	"math"
	"testing"

	"ogive/geometry/plane"
	"ogive/imaging/photo"
)

// A lens of 26 mm on a 36 x 24 mm frame sees 79.5 degrees across the diagonal,
// 2 atan(43.27 / 52), and so it must on any picture.
func TestTheFocalLengthInPixelsKeepsTheAngleOfView(t *testing.T) {
	for _, size := range []image.Point{{X: 4000, Y: 3000}, {X: 3000, Y: 4000}, {X: 1920, Y: 1080}} {
		c := cameraOf(size, photo.Facts{Focal35: 26}, plane.Degrees(5))
		diagonal := math.Hypot(float64(c.Width), float64(c.Height))
		if got := 2 * math.Atan(diagonal/2/float64(c.Focal)) * 180 / math.Pi; math.Abs(got-79.5) > 0.1 {
			t.Errorf("%v: %.2f degrees across the diagonal", size, got)
		}
		if c.Tilt != plane.Degrees(5) {
			t.Errorf("the tilt became %v", c.Tilt)
		}
	}
}

func TestAnUnknownFocalLengthStaysUnknown(t *testing.T) {
	if c := cameraOf(image.Pt(4000, 3000), photo.Facts{}, plane.Degrees(10)); c.Focal != 0 {
		t.Errorf("the focal length is %v px", c.Focal)
	}
}
