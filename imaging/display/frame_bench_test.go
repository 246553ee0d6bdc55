//go:build unix

package display

import (
	"fmt"
	"image"
	"math"
	"math/rand/v2"
	"runtime"
	"slices"
	"syscall"
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
// photograph to 800 per cent, 5 places at each. The figures in cpu-ms are the
// processor time spent, over the number of processors: what a frame takes on a
// machine that does nothing else.
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
	var times, spent []time.Duration
	slowest, at := time.Duration(0), 0.0
	for b.Loop() {
		r := rand.New(rand.NewPCG(1, 2))
		fit := Fit(p.Size(), window)
		for i := range 60 {
			zoom := fit.Zoom * math.Pow(MostZoom/fit.Zoom, float64(i)/59)
			var here, cpu []time.Duration
			for range 5 {
				v := fit.ZoomedTo(zoom, Place{r.Float64() * 1920, r.Float64() * 1080})
				begin, before := time.Now(), processorTime()
				p.Frame(dst, v)
				here = append(here, time.Since(begin))
				cpu = append(cpu, (processorTime()-before)/time.Duration(runtime.GOMAXPROCS(0)))
			}
			times, spent = append(times, here...), append(spent, cpu...)
			slices.Sort(cpu)
			if cpu[2] > slowest {
				slowest, at = cpu[2], zoom
			}
		}
	}
	slices.Sort(times)
	slices.Sort(spent)
	ms := func(d time.Duration) float64 { return float64(d.Microseconds()) / 1000 }
	b.ReportMetric(0, "ns/op")
	b.ReportMetric(ms(times[len(times)/2]), "ms-median")
	b.ReportMetric(ms(times[len(times)*95/100]), "ms-p95")
	b.ReportMetric(ms(spent[len(spent)/2]), "cpu-ms-median")
	b.ReportMetric(ms(spent[len(spent)*95/100]), "cpu-ms-p95")
	b.ReportMetric(ms(slowest), "cpu-ms-worst-zoom")
	b.ReportMetric(100*at, "%-worst-zoom")
	b.ReportMetric(ms(built), "ms-build")
}

// processorTime is what this process has used so far.
func processorTime() time.Duration {
	var u syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &u); err != nil {
		panic(err)
	}
	return time.Duration(u.Utime.Nano() + u.Stime.Nano())
}
