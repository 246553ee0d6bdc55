package picturefile

import (
	"image"
	"image/color"
	"os"
	"path/filepath"
	"strings"
	"testing"

	_ "image/jpeg"
	_ "image/png"
)

func TestAPictureIsWrittenInTheKindThatItsNameTells(t *testing.T) {
	for name, kind := range map[string]string{"a.png": "png", "b.jpg": "jpeg", "c.JPEG": "jpeg"} {
		path := filepath.Join(t.TempDir(), name)
		if err := Write(path, image.NewRGBA(image.Rect(0, 0, 30, 20))); err != nil || !Known(path) {
			t.Errorf("%s: %v, known %v", name, err, Known(path))
			continue
		}
		f, err := os.Open(path)
		if err != nil {
			t.Fatal(err)
		}
		p, got, err := image.Decode(f)
		if err != nil || got != kind || p.Bounds().Dx() != 30 {
			t.Errorf("%s holds %s (%v)", name, got, err)
		}
		if err := f.Close(); err != nil {
			t.Error(err)
		}
	}
}

func TestWhatCannotBeWrittenLeavesNothingAndSaysWhy(t *testing.T) {
	folder := t.TempDir()
	for name, size := range map[string]int{"notes.txt": 10, "endless.jpg": 70000} {
		path := filepath.Join(folder, name)
		err := Write(path, blank{image.Rect(0, 0, size, 1)})
		if err == nil || !strings.Contains(err.Error(), name) {
			t.Errorf("%s gave %v", name, err)
		}
	}
	if left, err := os.ReadDir(folder); err != nil || len(left) != 0 {
		t.Errorf("left behind is %v (%v)", left, err)
	}
}

// blank is a white picture that takes no memory.
type blank struct{ image.Rectangle }

func (b blank) Bounds() image.Rectangle { return b.Rectangle }
func (blank) ColorModel() color.Model   { return color.GrayModel }
func (blank) At(int, int) color.Color   { return color.White }
