package drawing

import (
	"image"
	"image/png"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"

	"ogive/ui/look"
)

func TestEveryDrawingIsDrawnInLightAndInDark(t *testing.T) {
	for _, v := range []fyne.ThemeVariant{theme.VariantDark, theme.VariantLight} {
		test.NewTempApp(t).Settings().SetTheme(look.Theme(v))
		for _, name := range Names {
			d := New(name, fyne.NewSize(480, 256))
			if text := string(d.resource().Content()); strings.Contains(text, "{{") {
				t.Errorf("%s keeps a colour without a name in the theme: %s", name, text)
			}
			w := test.NewTempWindow(t, d)
			picture := w.Canvas().Capture()
			if colours(picture) < 4 {
				t.Errorf("%s shows only %d colours", name, colours(picture))
			}
			keep(t, picture, string(name))
		}
	}
}

func colours(p image.Image) int {
	seen := map[[3]uint32]bool{}
	b := p.Bounds()
	for y := b.Min.Y; y < b.Max.Y; y += 3 {
		for x := b.Min.X; x < b.Max.X; x += 3 {
			r, g, bl, _ := p.At(x, y).RGBA()
			seen[[3]uint32{r >> 11, g >> 11, bl >> 11}] = true
		}
	}
	return len(seen)
}

// keep writes what was seen to the folder named by OGIVE_SHOTS, to be looked at.
func keep(t *testing.T, p image.Image, name string) {
	folder := os.Getenv("OGIVE_SHOTS")
	if folder == "" {
		return
	}
	f, err := os.Create(filepath.Join(folder, name+".png"))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	if err := png.Encode(f, p); err != nil {
		t.Fatal(err)
	}
}
