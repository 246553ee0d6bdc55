package photo

import (
	"image"
	"image/jpeg"
	"math"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"slices"
	"testing"
	"time"
)

// handLike is a picture about as hard to decode as a photograph of a hand on a
// drape: four soft bars with fine ridges, and the noise of a sensor.
func handLike(w, h int) *image.YCbCr {
	m := image.NewYCbCr(image.Rect(0, 0, w, h), image.YCbCrSubsampleRatio420)
	r := rand.New(rand.NewPCG(1, 2))
	for y := range h {
		for x := range w {
			u, v := float64(x)/float64(w), float64(y)/float64(h)
			light, cb, cr := 60., uint8(128), uint8(128)
			for _, axis := range []float64{0.2, 0.4, 0.6, 0.8} {
				off := u - axis - 0.03*math.Sin(4*v)
				if math.Abs(off) < 0.08 && v > 0.2 || v > 0.6 {
					light = 170 + 30*math.Cos(12*off) + 8*math.Sin(900*u)*math.Sin(700*v)
					cb, cr = 110, 150
				}
			}
			m.Y[m.YOffset(x, y)] = uint8(min(max(light+6*r.NormFloat64(), 0), 255))
			o := m.COffset(x, y)
			m.Cb[o], m.Cr[o] = cb+uint8(r.IntN(4)), cr+uint8(r.IntN(4))
		}
	}
	return m
}

// How long a photograph of 6000 x 4000 pixels takes to open, and what libvips
// takes to decode and shrink the same file, if it is installed:
//
//	go test -run '^$' -bench Open24Megapixel -benchtime 10x ./imaging/photo
//
// The figures of libvips are the median of five runs of its programs, starting
// them included. allocated/decoded is all memory ever asked for while opening,
// over the size of the decoded pixels: an upper bound of the peak.
func BenchmarkOpen24Megapixel(b *testing.B) {
	path := filepath.Join(b.TempDir(), "hand.jpg")
	file, err := os.Create(path)
	if err != nil {
		b.Fatal(err)
	}
	if err := jpeg.Encode(file, handLike(6000, 4000), &jpeg.Options{Quality: 95}); err != nil {
		b.Fatal(err)
	}
	if err := file.Close(); err != nil {
		b.Fatal(err)
	}
	var before, after runtime.MemStats
	var decoded int
	runtime.ReadMemStats(&before)
	for b.Loop() {
		p, err := Open(path)
		if err != nil {
			b.Fatal(err)
		}
		m := p.pixels.(*image.YCbCr)
		decoded = len(m.Y) + len(m.Cb) + len(m.Cr)
	}
	runtime.ReadMemStats(&after)
	b.ReportMetric(float64(after.TotalAlloc-before.TotalAlloc)/float64(b.N)/float64(decoded), "allocated/decoded")
	shrunk := filepath.Join(b.TempDir(), "small.jpg")
	reportRival(b, "ms-vips-shrink", "vips", "shrink", path, shrunk, "4", "4")
	reportRival(b, "ms-vipsthumbnail", "vipsthumbnail", "-s", "1500", "-o", shrunk, path)
}

func reportRival(b *testing.B, unit, program string, args ...string) {
	if _, err := exec.LookPath(program); err != nil {
		b.Logf("%s is not installed (Debian: libvips-tools)", program)
		return
	}
	var times []time.Duration
	for range 5 {
		begin := time.Now()
		if out, err := exec.Command(program, args...).CombinedOutput(); err != nil {
			b.Fatalf("%s: %v: %s", program, err, out)
		}
		times = append(times, time.Since(begin))
	}
	slices.Sort(times)
	b.ReportMetric(float64(times[2].Microseconds())/1000, unit)
}
