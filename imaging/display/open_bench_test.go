//go:build unix

package display

import (
	"image"
	"image/jpeg"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"testing"
	"time"

	"ogive/imaging/photo"
)

// How long it takes until the first pixels of a JPEG of 24 megapixels, without a
// preview in its EXIF data, fill a frame of 1920 x 1080, and until the photograph
// itself does, from all its copies:
//
//	go test -run '^$' -bench Open -benchtime 5x ./imaging/display
func BenchmarkOpen(b *testing.B) {
	path := filepath.Join(b.TempDir(), "hand.jpg")
	file, err := os.Create(path)
	if err != nil {
		b.Fatal(err)
	}
	if err := jpeg.Encode(file, handLike(6000, 4000), &jpeg.Options{Quality: 92}); err != nil {
		b.Fatal(err)
	}
	if info, err := file.Stat(); err == nil {
		b.ReportMetric(float64(info.Size())/1e6, "MB")
	}
	if err := file.Close(); err != nil {
		b.Fatal(err)
	}
	window := image.Pt(1920, 1080)
	dst := image.NewRGBA(image.Rectangle{Max: window})
	var first, own, all, spent time.Duration
	for b.Loop() {
		begin, before := time.Now(), processorTime()
		small, size, ok := photo.Glance(path)
		if !ok {
			b.Fatal("there is no glance at the photograph")
		}
		Preview(small, size).Frame(dst, Fit(size, window))
		first += time.Since(begin)
		spent += processorTime() - before
		photograph, err := photo.Open(path)
		if err != nil {
			b.Fatal(err)
		}
		p := New(photograph)
		p.Frame(dst, Fit(size, window))
		own += time.Since(begin)
		p.Build()
		p.Frame(dst, Fit(size, window))
		all += time.Since(begin)
	}
	ms := func(d time.Duration) float64 { return float64(d.Microseconds()) / 1000 / float64(b.N) }
	b.ReportMetric(0, "ns/op")
	b.ReportMetric(ms(first), "ms-first-pixels")
	b.ReportMetric(ms(spent), "cpu-ms-first-pixels")
	b.ReportMetric(ms(own), "ms-photograph")
	b.ReportMetric(ms(all), "ms-all")
}

// handLike is a picture about as hard to decode as a photograph of a hand on a
// drape: four soft bars with fine ridges, and the noise of a sensor.
func handLike(w, h int) *image.YCbCr {
	m := image.NewYCbCr(image.Rect(0, 0, w, h), image.YCbCrSubsampleRatio420)
	r := rand.New(rand.NewPCG(1, 2))
	noise := make([]float64, 1<<16)
	for i := range noise {
		noise[i] = 5 * r.NormFloat64()
	}
	for y := range h {
		from := r.IntN(len(noise))
		for x := range w {
			u, v := float64(x)/float64(w), float64(y)/float64(h)
			light, cb, cr := 60., uint8(128), uint8(128)
			for _, axis := range []float64{0.2, 0.4, 0.6, 0.8} {
				if off := u - axis; math.Abs(off) < 0.08 && v > 0.2 || v > 0.6 {
					light, cb, cr = 190-900*off*off+float64((x/3+y/5)%7), 110, 150
				}
			}
			m.Y[m.YOffset(x, y)] = uint8(min(max(light+noise[(from+x)%len(noise)], 0), 255))
			o := m.COffset(x, y)
			m.Cb[o], m.Cr[o] = cb, cr
		}
	}
	return m
}
