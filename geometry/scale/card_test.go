package scale

import (
	"encoding/json"
	"math"
	"os"
	"strings"
	"testing"

	"ogive/geometry/plane"
)

// OpenCV 4.6.0 getPerspectiveTransform and perspectiveTransform, computed from
// single-precision corners, on an ISO/IEC 7810 ID-1 card (85.60 x 53.98 mm).
func TestACardMapsPointsAsOpenCVDoes(t *testing.T) {
	data, err := os.ReadFile("../../testdata/reference/homography_opencv.json")
	if err != nil {
		t.Fatal(err)
	}
	var file struct {
		Card  [2]plane.Millimetre `json:"card_mm"`
		Cases []struct {
			Corners [4][2]plane.Pixel     `json:"corners_px"`
			Pixels  [][2]plane.Pixel      `json:"points_px"`
			Places  [][2]plane.Millimetre `json:"points_mm"`
		} `json:"cases"`
	}
	if err := json.Unmarshal(data, &file); err != nil || len(file.Cases) == 0 {
		t.Fatal(len(file.Cases), err)
	}
	for i, c := range file.Cases {
		card := Card{Width: single(file.Card[0]), Height: single(file.Card[1])}
		for k, p := range c.Corners {
			card.Corners[k] = plane.Pt(p[0], p[1])
		}
		fit, err := card.Fit(Camera{Width: 1600, Height: 1400}, 2)
		if err != nil {
			t.Fatal(err)
		}
		for k, p := range c.Pixels {
			got, want := fit.Best.Position(plane.Pt(p[0], p[1])), plane.Pt(c.Places[k][0], c.Places[k][1])
			if d := got.Distance(want); d > 1e-6 {
				t.Errorf("case %d, point %d: %v, OpenCV %v", i, k, got, want)
			}
		}
	}
}

// single is what is left of mm in single precision.
func single(mm plane.Millimetre) plane.Millimetre { return plane.Millimetre(float32(mm)) }

func TestACardClickedEitherWayRoundDoesNotMirrorTheHand(t *testing.T) {
	corners := [4]plane.PixelPoint{plane.Pt[plane.Pixel](200, 300), plane.Pt[plane.Pixel](1056, 310), plane.Pt[plane.Pixel](1060, 850), plane.Pt[plane.Pixel](205, 840)}
	around := Card{corners, 85.6, 53.98}
	back := Card{[4]plane.PixelPoint{corners[1], corners[0], corners[3], corners[2]}, 85.6, 53.98}
	for _, c := range []Card{around, back} {
		fit, err := c.Fit(Camera{Width: 1500, Height: 1200}, 2)
		if err != nil {
			t.Fatal(err)
		}
		for _, m := range append(fit.Likely, fit.Best) {
			if j := m.Local(c.middle()); j[0]*j[3]-j[1]*j[2] <= 0 {
				t.Fatalf("corners %v: the map mirrors", c.Corners)
			}
		}
		// The sides come out as given.
		for k, want := range []plane.Millimetre{85.6, 53.98, 85.6, 53.98} {
			got := fit.Best.Position(c.Corners[k]).Distance(fit.Best.Position(c.Corners[(k+1)%4]))
			if math.Abs(float64(got-want)) > 1e-9 {
				t.Errorf("side %d is %v mm, want %v", k+1, got, want)
			}
		}
	}
}

func TestACardThatCannotBeOneIsRefused(t *testing.T) {
	good := [4]plane.PixelPoint{plane.Pt[plane.Pixel](200, 300), plane.Pt[plane.Pixel](1056, 310), plane.Pt[plane.Pixel](1060, 850), plane.Pt[plane.Pixel](205, 840)}
	with := func(k int, x, y plane.Pixel) [4]plane.PixelPoint {
		q := good
		q[k] = plane.Pt(x, y)
		return q
	}
	nan := plane.Pixel(math.NaN())
	for name, c := range map[string]struct {
		card Card
		says string
	}{
		"three corners on a line": {Card{with(1, 630, 575), 85.6, 53.98}, "one line"},
		"crossed":                 {Card{[4]plane.PixelPoint{good[0], good[2], good[1], good[3]}, 85.6, 53.98}, "in order around"},
		"repeated":                {Card{with(2, 1056, 310), 85.6, 53.98}, "corners 2 and 3"},
		"dented":                  {Card{with(2, 450, 450), 85.6, 53.98}, "inside"},
		"not a number":            {Card{with(2, nan, 450), 85.6, 53.98}, "point 3"},
		"no width":                {Card{good, 0, 53.98}, "scale.width_mm"},
		"negative height":         {Card{good, 85.6, -5}, "scale.height_mm"},
		"begun at the short side": {Card{good, 53.98, 85.6}, "exchange"},
	} {
		_, err := c.card.Fit(Camera{Width: 1500, Height: 1200}, 2)
		if err == nil || !strings.Contains(err.Error(), c.says) || !strings.HasPrefix(err.Error(), "scale.") {
			t.Errorf("%s: %v", name, err)
		}
	}
}
