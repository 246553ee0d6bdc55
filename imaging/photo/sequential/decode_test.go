package sequential

import (
	"bytes"
	"image"
	"image/color"
	"image/jpeg"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"runtime"
	"testing"
)

// scene is a picture with soft shades, hard borders and some noise.
func scene(w, h int, noise float64) *image.RGBA {
	m := image.NewRGBA(image.Rect(0, 0, w, h))
	r := rand.New(rand.NewPCG(3, 4))
	for y := range h {
		for x := range w {
			v := 120 + 80*math.Sin(float64(x)/37)*math.Cos(float64(y)/23)
			if (x/50+y/70)%3 == 0 {
				v = 230
			}
			at := func(base float64) uint8 { return uint8(min(max(base+noise*r.NormFloat64(), 0), 255)) }
			m.SetRGBA(x, y, color.RGBA{at(v), at(v * 0.7), at(255 - v), 255})
		}
	}
	return m
}

func encoded(t testing.TB, img image.Image, quality int) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := jpeg.Encode(&b, img, &jpeg.Options{Quality: quality}); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// gray is a grey copy.
func gray(img image.Image) *image.Gray {
	m := image.NewGray(img.Bounds())
	for y := range m.Rect.Dy() {
		for x := range m.Rect.Dx() {
			m.Set(x, y, img.At(x, y))
		}
	}
	return m
}

// apart is the greatest difference of two decoded pictures in levels, over all
// planes; -1 if they are not of one kind and size.
func apart(a, b image.Image) int {
	if a.Bounds() != b.Bounds() {
		return -1
	}
	worst := 0
	see := func(p, q uint8) { worst = max(worst, int(p)-int(q), int(q)-int(p)) }
	switch a := a.(type) {
	case *image.Gray:
		b, same := b.(*image.Gray)
		if !same {
			return -1
		}
		for y := range a.Rect.Dy() {
			for x := range a.Rect.Dx() {
				see(a.GrayAt(x, y).Y, b.GrayAt(x, y).Y)
			}
		}
	case *image.YCbCr:
		b, same := b.(*image.YCbCr)
		if !same || a.SubsampleRatio != b.SubsampleRatio {
			return -1
		}
		for y := range a.Rect.Dy() {
			for x := range a.Rect.Dx() {
				see(a.Y[a.YOffset(x, y)], b.Y[b.YOffset(x, y)])
				see(a.Cb[a.COffset(x, y)], b.Cb[b.COffset(x, y)])
				see(a.Cr[a.COffset(x, y)], b.Cr[b.COffset(x, y)])
			}
		}
	default:
		return -1
	}
	return worst
}

// checkAgainstStandard compares with the standard library's decoder. Both round
// the same exact transform, so they may differ by one level.
func checkAgainstStandard(t *testing.T, data []byte) {
	t.Helper()
	got, ok := Decode(data)
	if !ok {
		t.Fatal("refused")
	}
	want, err := jpeg.Decode(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	if d := apart(got, want); d < 0 || d > 1 {
		t.Errorf("differs from the standard library by %d levels", d)
	}
}

func TestPicturesAreThoseOfTheStandardLibrary(t *testing.T) {
	for _, size := range []image.Point{{1, 1}, {16, 16}, {17, 33}, {333, 257}} {
		for _, quality := range []int{5, 75, 95, 100} {
			img := scene(size.X, size.Y, 12)
			checkAgainstStandard(t, encoded(t, img, quality))
			checkAgainstStandard(t, encoded(t, gray(img), quality))
		}
	}
}

// The seeds were written by libjpeg-turbo, the first two by way of libvips
// 8.14.1: with colour at half the resolution, in full, and with restart markers
// (cjpeg 2.1.5 -quality 80 -restart 2B).
func TestFilesOfAnotherWriterAreThoseOfTheStandardLibrary(t *testing.T) {
	for _, name := range []string{"turned.jpg", "full-colour.jpg", "restarts.jpg"} {
		data, err := os.ReadFile(filepath.Join("..", "..", "..", "testdata", "photographs", name))
		if err != nil {
			t.Fatal(err)
		}
		t.Run(name, func(t *testing.T) { checkAgainstStandard(t, data) })
	}
}

func TestDamagedFileIsLeftToTheStandardLibrary(t *testing.T) {
	data := encoded(t, scene(90, 70, 12), 80)
	for n := range len(data) {
		if _, ok := Decode(data[:n]); ok {
			t.Fatalf("took the first %d of %d bytes for a whole picture", n, len(data))
		}
	}
}

func TestPictureTooLargeForItsFileIsRefusedBeforeMemoryIsSpent(t *testing.T) {
	data := encoded(t, scene(90, 70, 12), 80)
	at := bytes.Index(data, []byte{0xff, baseline})
	copy(data[at+5:], []byte{0xf0, 0, 0xf0, 0}) // 61440 x 61440 pixels
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	if _, ok := Decode(data); ok {
		t.Error("accepted")
	}
	runtime.ReadMemStats(&after)
	if spent := after.TotalAlloc - before.TotalAlloc; spent > 1<<20 {
		t.Errorf("%d MB were spent", spent>>20)
	}
}

// The inverse transform is that of ITU-T T.81, A.3.3, computed in full here.
func TestTransformIsTheInverseCosineTransform(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	for range 200 {
		var block [64]int16
		var q [64]int32
		for i := range q {
			q[i] = 1 + r.Int32N(20)
		}
		for range 1 + r.IntN(20) {
			block[r.IntN(64)] = int16(r.IntN(60) - 30)
		}
		kept := block
		var got [64]uint8
		inverse(got[:], 8, &block, &q)
		for y := range 8 {
			for x := range 8 {
				var sum float64
				for v := range 8 {
					for u := range 8 {
						c := 0.25
						if u == 0 {
							c *= math.Sqrt2 / 2
						}
						if v == 0 {
							c *= math.Sqrt2 / 2
						}
						sum += c * float64(int32(kept[8*v+u])*q[8*v+u]) *
							math.Cos(float64(2*x+1)*float64(u)*math.Pi/16) * math.Cos(float64(2*y+1)*float64(v)*math.Pi/16)
					}
				}
				want := min(max(sum+128, 0), 255)
				if d := math.Abs(float64(got[8*y+x]) - want); d > 0.6 {
					t.Fatalf("sample (%d, %d) is %d, exactly %.3f", x, y, got[8*y+x], want)
				}
			}
		}
	}
}

// What Decode accepts the standard library accepts too, and reads the same.
func FuzzDecode(f *testing.F) {
	f.Add(encoded(f, scene(40, 30, 12), 80))
	f.Add(encoded(f, gray(scene(20, 20, 12)), 40))
	f.Fuzz(func(t *testing.T, data []byte) {
		got, ok := Decode(data)
		if !ok {
			return
		}
		want, err := jpeg.Decode(bytes.NewReader(data))
		if err != nil {
			t.Fatalf("the standard library says %v", err)
		}
		if d := apart(got, want); d < 0 {
			t.Errorf("differs from the standard library by %d levels", d)
		}
	})
}
