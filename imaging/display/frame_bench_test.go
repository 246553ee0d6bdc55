package display

import (
	"fmt"
	"image"
	"math"
	"math/rand/v2"
	"slices"
	"testing"
	"time"

	"ogive/imaging/photo"
)

// How long a frame of 1920 x 1080 screen pixels takes, while zooming and panning
// over a photograph of 24 and of 48 megapixels:
//
//	go test -run '^$' -bench Frame -benchtime 1x ./imaging/display
//
// Each figure is over all frames of one run through: 60 zooms from the whole
// photograph to 800 per cent, 5 places at each.
func BenchmarkFrame(b *testing.B) {
	for _, size := range []image.Point{{X: 6000, Y: 4000}, {X: 8000, Y: 6000}} {
		for _, kind := range []string{"JPEG", "RGB", "JPEG on its side"} {
			b.Run(fmt.Sprintf("%dMP %s", size.X*size.Y/1_000_000, kind), func(b *testing.B) {
				benchmarkFrame(b, pyramidOfKind(kind, size))
			})
		}
	}
}

func pyramidOfKind(kind string, size image.Point) *Pyramid {
	if kind == "RGB" {
		return New(photo.From(noiseRGBA(size)))
	}
	p := New(photo.From(noiseYCbCr(size)))
	if kind == "JPEG on its side" {
		p.swaps, p.flipY, p.upright = true, true, image.Pt(size.Y, size.X)
	}
	return p
}

func benchmarkFrame(b *testing.B, p *Pyramid) {
	begin := time.Now()
	p.Build()
	built := time.Since(begin)
	window := image.Pt(1920, 1080)
	dst := image.NewRGBA(image.Rectangle{Max: window})
	var times []time.Duration
	slowest, at := time.Duration(0), 0.0
	for b.Loop() {
		r := rand.New(rand.NewPCG(1, 2))
		fit := Fit(p.Size(), window)
		for i := range 60 {
			zoom := fit.Zoom * math.Pow(MostZoom/fit.Zoom, float64(i)/59)
			var here []time.Duration
			for range 5 {
				v := fit.ZoomedTo(zoom, Place{r.Float64() * 1920, r.Float64() * 1080})
				begin := time.Now()
				p.Frame(dst, v)
				here = append(here, time.Since(begin))
			}
			times = append(times, here...)
			slices.Sort(here)
			if here[2] > slowest {
				slowest, at = here[2], zoom
			}
		}
	}
	slices.Sort(times)
	ms := func(d time.Duration) float64 { return float64(d.Microseconds()) / 1000 }
	b.ReportMetric(0, "ns/op")
	b.ReportMetric(ms(times[len(times)/2]), "ms-median")
	b.ReportMetric(ms(times[len(times)*95/100]), "ms-p95")
	b.ReportMetric(ms(slowest), "ms-worst-zoom")
	b.ReportMetric(100*at, "%-worst-zoom")
	b.ReportMetric(ms(built), "ms-build")
}
