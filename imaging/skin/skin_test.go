package skin

import (
	"image"
	"image/color"
	"math"
	"strings"
	"testing"

	"ogive/geometry/plane"
	"ogive/geometry/skincolour"
	"ogive/imaging/photo"
)

// card is a photograph that is grey, with a patch of skin at (50, 50).
func card(grey, skin color.Color) *image.RGBA {
	img := image.NewRGBA(image.Rect(0, 0, 200, 100))
	for y := range 100 {
		for x := range 200 {
			img.Set(x, y, grey)
			if x < 100 {
				img.Set(x, y, skin)
			}
		}
	}
	return img
}

var (
	onSkin = Spot{plane.Pt[plane.Pixel](50, 50), 20}
	onGrey = Spot{plane.Pt[plane.Pixel](150, 50), 20}
)

func TestAGreyOfItsReflectanceBecomesNeutral(t *testing.T) {
	p := photo.From(card(color.RGBA{200, 150, 90, 255}, color.RGBA{200, 150, 90, 255}))
	on := On(p, "one")
	if err := on.BalanceOn(Neutral{onGrey, GreyCard}); err != nil {
		t.Fatal(err)
	}
	s, err := on.Sample(skincolour.Back, onSkin)
	if err != nil {
		t.Fatal(err)
	}
	// L of a reflectance of 0.18 is 116 * 0.18^(1/3) - 16 = 49.50.
	want := skincolour.Lab{L: 116*math.Cbrt(0.18) - 16}
	if d := skincolour.CIELAB(s.Colour, want); d > 0.05 {
		t.Errorf("the card's own colour is %v, want %v", s.Colour, want)
	}
}

func TestBadPatchesAreRefusedAndSayWhy(t *testing.T) {
	half := card(color.Gray{128}, color.RGBA{180, 140, 120, 255})
	for x := 50; x < 60; x++ {
		for y := range 100 {
			half.Set(x, y, color.RGBA{255, 240, 230, 255})
		}
	}
	for _, c := range []struct {
		claim string
		img   image.Image
		at    Spot
		want  string
	}{
		{"clipped highlights", half, onSkin, "pixels are as bright as the camera can write"},
		{"darkness", card(color.Gray{128}, color.RGBA{30, 12, 4, 255}), onSkin, "too dark"},
		{"too few pixels", half, Spot{onGrey.Centre, 5}, "too small"},
		{"no radius", half, Spot{onGrey.Centre, plane.Pixel(math.NaN())}, "has no place"},
		{"a patch over the edge", half, Spot{plane.Pt[plane.Pixel](10, 50), 20}, "over the edge"},
		{"a patch over everything", half, Spot{onGrey.Centre, 5000}, "too large"},
	} {
		_, err := On(photo.From(c.img), "one").Sample(skincolour.Palm, c.at)
		if err == nil || !strings.Contains(err.Error(), c.want) || !strings.Contains(err.Error(), "palm") {
			t.Errorf("%s: error %v", c.claim, err)
		}
	}
	on := On(photo.From(half), "one")
	if err := on.BalanceOn(Neutral{onSkin, GreyCard}); err == nil || !strings.Contains(err.Error(), "the neutral patch is clipped: ") {
		t.Errorf("a clipped neutral patch: error %v", err)
	}
	if err := on.BalanceOn(Neutral{onGrey, 0}); err == nil {
		t.Error("a patch without reflectance balances")
	}
	if on.balance.Neutral {
		t.Error("a refused patch has changed the balance")
	}
}

func TestAFewHighlightsAreToldAndHardlyMoveTheColour(t *testing.T) {
	img := card(color.Gray{128}, color.RGBA{180, 140, 120, 255})
	for i := range 8 {
		img.Set(45+i, 50, color.White)
	}
	s, err := On(photo.From(img), "one").Sample(skincolour.Graft, onSkin)
	if err != nil {
		t.Fatal(err)
	}
	if s.Clipped != 8 || len(s.Notes) != 2 || !strings.HasPrefix(s.Notes[1], "8 of ") {
		t.Errorf("%d clipped, notes %q", s.Clipped, s.Notes)
	}
	if r, g, b := s.Colour.SRGB(); r != 180 || g != 140 || b != 120 {
		t.Errorf("the colour is %d %d %d", r, g, b)
	}
}

func TestAPatchOverTwoColoursIsCalledUneven(t *testing.T) {
	img := card(color.Gray{60}, color.RGBA{200, 150, 120, 255})
	s, err := On(photo.From(img), "one").Sample(skincolour.Back, Spot{plane.Pt[plane.Pixel](100, 50), 30})
	if err != nil {
		t.Fatal(err)
	}
	if s.Spread.L < uneven || !strings.Contains(strings.Join(s.Notes, " "), "uneven") {
		t.Errorf("spread %v, notes %q", s.Spread, s.Notes)
	}
}
