package photo

import (
	"bytes"
	"encoding/binary"
	"image"
	"image/color"
	"image/jpeg"
	"os"
	"path/filepath"
	"testing"
)

// quartered is a picture whose left half is red and whose right half is green.
func quartered(w, h int) *image.RGBA {
	m := image.NewRGBA(image.Rect(0, 0, w, h))
	for y := range h {
		for x := range w {
			c := color.RGBA{200, 40, 40, 255}
			if x >= w/2 {
				c = color.RGBA{40, 200, 40, 255}
			}
			m.SetRGBA(x, y, c)
		}
	}
	return m
}

func glanceAt(t *testing.T, data []byte) (image.Image, image.Point, bool) {
	t.Helper()
	path := filepath.Join(t.TempDir(), "hand.jpg")
	if err := os.WriteFile(path, data, 0o600); err != nil {
		t.Fatal(err)
	}
	return Glance(path)
}

func TestAGlanceAtAPhotographWithoutPreviewIsAnUprightEighth(t *testing.T) {
	small, size, ok := glanceAt(t, jpegWith(quartered(640, 400), exifBlock(binary.BigEndian, uint16(rightTop), nil)))
	if !ok || size != image.Pt(400, 640) || small.Bounds() != image.Rect(0, 0, 50, 80) {
		t.Fatalf("seen %v, of %v: %v", ok, size, small)
	}
	if r, g, _, _ := small.At(25, 10).RGBA(); r < g {
		t.Error("the left half is not on top, where the camera was turned to")
	}
}

func TestAGlanceLeavesOutTheBlackBarsOfAPreview(t *testing.T) {
	bars := image.NewRGBA(image.Rect(0, 0, 160, 120))
	inside := quartered(160, 106)
	copy(bars.Pix[7*bars.Stride:], inside.Pix)
	for i := 3; i < len(bars.Pix); i += 4 {
		bars.Pix[i] = 255
	}
	var preview bytes.Buffer
	if err := jpeg.Encode(&preview, bars, &jpeg.Options{Quality: 95}); err != nil {
		t.Fatal(err)
	}
	small, size, ok := glanceAt(t, jpegWith(quartered(600, 400), exifBlock(binary.BigEndian, 1, preview.Bytes())))
	if !ok || size != image.Pt(600, 400) || small.Bounds().Size() != image.Pt(160, 107) {
		t.Fatalf("seen %v, of %v, %v", ok, size, small.Bounds())
	}
	for _, y := range []int{2, 104} {
		if r, _, _, _ := small.At(30, y).RGBA(); r < 0x8000 {
			t.Errorf("row %d is dark", y)
		}
	}
}

func TestThereIsNoGlanceAtWhatIsNoJPEG(t *testing.T) {
	if _, _, ok := glanceAt(t, pngOf(flag())); ok {
		t.Error("a short cut through a PNG was found")
	}
	if _, _, ok := glanceAt(t, []byte("a letter to the editor")); ok {
		t.Error("a letter was glanced at")
	}
	if _, _, ok := Glance(filepath.Join(t.TempDir(), "gone.jpg")); ok {
		t.Error("a file that is not there was glanced at")
	}
}
