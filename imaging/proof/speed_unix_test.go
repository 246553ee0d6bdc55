//go:build unix

package proof

import (
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"syscall"
	"testing"
	"time"

	"ogive/geometry/plane"
	"ogive/imaging/marksfile"
	"ogive/imaging/phantom"
)

// BenchmarkEndToEnd24Megapixels measures the marks on a 24-megapixel JPEG with
// the built program, from its start to its end, beside libvips (Debian's
// libvips-tools) decoding and shrinking the same file. Peak memory is that of
// the whole process; the decoded picture is counted at 3 bytes a pixel.
func BenchmarkEndToEnd24Megapixels(b *testing.B) {
	folder := b.TempDir()
	program := filepath.Join(folder, "ogive-batch")
	build := exec.Command("go", "build", "-o", program, "../../cmd/ogive-batch")
	build.Env = append(os.Environ(), "CGO_ENABLED=0")
	if out, err := build.CombinedOutput(); err != nil {
		b.Fatalf("%v\n%s", err, out)
	}
	marks, jpeg := largeHand(b, folder)
	ours := []string{program, "measure", marks, "--json"}
	vips := map[string][]string{
		"vips shrink":   {"vips", "shrink", jpeg, filepath.Join(folder, "small.jpg"), "4", "4"},
		"vipsthumbnail": {"vipsthumbnail", jpeg, "-s", "1500", "-o", filepath.Join(folder, "thumbnail.jpg")},
	}
	var own, peak []float64
	theirs := map[string][]float64{}
	for b.Loop() {
		t, kb := run(b, ours)
		own, peak = append(own, t), append(peak, kb)
		for name, line := range vips {
			if _, err := exec.LookPath(line[0]); err == nil {
				t, _ := run(b, line)
				theirs[name] = append(theirs[name], t)
			}
		}
	}
	b.ReportMetric(0, "ns/op")
	fmt.Printf("\n24 megapixels end to end: median %.0f ms over %d runs, peak memory %.0f MB, %.2f times the decoded pixels (target 2.5)\n",
		1000*quantile(own, 0.5), len(own), slices.Max(peak)/1024, slices.Max(peak)*1024/(6000*4000*3))
	for _, name := range []string{"vips shrink", "vipsthumbnail"} {
		if ts := theirs[name]; len(ts) > 0 {
			fmt.Printf("%s: median %.0f ms; ours takes %.2f times as long (target 2)\n", name, 1000*quantile(ts, 0.5), quantile(own, 0.5)/quantile(ts, 0.5))
		}
	}
}

// run is the wall time in seconds and the peak memory in kilobytes of a command.
func run(b *testing.B, line []string) (seconds, kilobytes float64) {
	start := time.Now()
	cmd := exec.Command(line[0], line[1:]...)
	if out, err := cmd.CombinedOutput(); err != nil {
		b.Fatalf("%v: %v\n%s", line, err, out)
	}
	usage := cmd.ProcessState.SysUsage().(*syscall.Rusage)
	return time.Since(start).Seconds(), float64(usage.Maxrss)
}

// largeHand has another process write a phantom of 6000 by 4000 pixels and its
// marks. The system counts the memory of a process towards the peak of those it
// starts, so this one must stay small.
func largeHand(b *testing.B, folder string) (marks, jpeg string) {
	painter := exec.Command(os.Args[0], "-test.run=^$")
	painter.Env = append(os.Environ(), painterFolder+"="+folder)
	if out, err := painter.CombinedOutput(); err != nil {
		b.Fatalf("%v\n%s", err, out)
	}
	return filepath.Join(folder, "hand.json"), filepath.Join(folder, "hand.jpg")
}

const painterFolder = "OGIVE_PROOF_PAINTS_INTO"

func TestMain(m *testing.M) {
	if folder := os.Getenv(painterFolder); folder != "" {
		if err := paintLargeHand(folder); err != nil {
			fmt.Fprintln(os.Stderr, err)
			os.Exit(1)
		}
		return
	}
	os.Exit(m.Run())
}

func paintLargeHand(folder string) error {
	c := phantom.Random(24)
	enlarged := float64(6000) / float64(c.Width)
	c.Width, c.Height = 6000, 4000
	c.FocalPx *= plane.Pixel(enlarged)
	picture, err := c.Render()
	if err != nil {
		return err
	}
	placed, reference := picture.Truth.Marks(2, rand.New(rand.NewPCG(1, 2)))
	f := marksfile.File{Photograph: "hand.jpg", Marks: placed, Reference: reference}
	if err := f.Save(filepath.Join(folder, "hand.json")); err != nil {
		return err
	}
	return os.WriteFile(filepath.Join(folder, "hand.jpg"), picture.JPEG, 0o644)
}
