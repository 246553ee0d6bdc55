package plancolour

import (
	"image"
	"image/color"
	"strings"
	"testing"

	"ogive/geometry/plane"
	"ogive/imaging/photo"
	"ogive/imaging/skin"
)

func TestAColouredClothIsRefusedAsGreyBeforeSkinIsPlaced(t *testing.T) {
	r := show(t)
	photograph := photo.From(filled(color.RGBA{60, 110, 170, 255}))
	r.Use(r.table, func(string) (*photo.Photograph, error) { return photograph, nil })
	r.place(skin.GreyPatch, onGrey)
	if got := r.results.refused.Words(); !strings.Contains(got, skin.NotGrey) {
		t.Errorf("it says %q", got)
	}
	if r.place("back", onSkin); !strings.Contains(r.results.refused.Words(), skin.NotGrey) || !strings.Contains(r.results.light.Words(), skin.NoNeutral) {
		t.Errorf("it says %q and %q", r.results.refused.Words(), r.results.light.Words())
	}
}

func TestWhatCanBeNoSkinIsNotReasonedFrom(t *testing.T) {
	r := show(t)
	r.place(skin.GreyPatch, onGrey)
	if r.results.refused.Visible() || r.results.state.Words() == "" {
		t.Errorf("a grey patch alone: %q, %q", r.results.refused.Words(), r.results.state.Words())
	}
	r.place("back", onSkin)
	r.place("palm", onGrey.Add(plane.Vec[plane.Pixel](0, 40)))
	if got := r.results.refused.Words(); !strings.Contains(got, "patch of the palm has a colour that skin can't have") {
		t.Errorf("it says %q", got)
	}
	if got := r.results.reason.Words(); !strings.HasPrefix(got, "The colours speak for no flap") || r.results.yours.Visible() {
		t.Errorf("the reasoning reads %q", got)
	}
	for _, flap := range []string{"would hardly show", "dorsal flap would not"} {
		if strings.Contains(r.results.reason.Words()+r.results.notes.Words(), flap) {
			t.Errorf("it speaks for a flap: %q", r.results.notes.Words())
		}
	}
}

// filled is a picture of one colour.
func filled(c color.Color) *image.RGBA {
	img := image.NewRGBA(image.Rect(0, 0, 400, 300))
	for y := range 300 {
		for x := range 400 {
			img.Set(x, y, c)
		}
	}
	return img
}
