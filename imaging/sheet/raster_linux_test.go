package sheet

import (
	"bytes"
	"fmt"
	"image"
	_ "image/png" // what rsvg-convert writes
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
)

// dpi is how finely sheets are looked at: 0.042 mm to a pixel.
const dpi = 600

// raster is a page as a printer would lay it down, in shades of grey.
type raster struct {
	w, h int
	pix  []uint8
}

// page is a page of a PDF, as poppler sees it.
func page(t *testing.T, pdf []byte, number int) raster {
	t.Helper()
	path := filepath.Join(t.TempDir(), "sheet.pdf")
	if err := os.WriteFile(path, pdf, 0o666); err != nil {
		t.Fatal(err)
	}
	n := fmt.Sprint(number)
	out := seen(t, "pdftoppm", "-r", fmt.Sprint(dpi), "-gray", "-f", n, "-l", n, path)
	var r raster
	var depth int
	if _, err := fmt.Sscanf(string(out[:min(len(out), 40)]), "P5\n%d %d\n%d\n", &r.w, &r.h, &depth); err != nil || depth != 255 {
		t.Fatalf("pdftoppm wrote no grey picture: %v", err)
	}
	r.pix = out[len(out)-r.w*r.h:]
	return r
}

// drawing is an SVG as librsvg sees it.
func drawing(t *testing.T, svg []byte) raster {
	t.Helper()
	path := filepath.Join(t.TempDir(), "outlines.svg")
	if err := os.WriteFile(path, svg, 0o666); err != nil {
		t.Fatal(err)
	}
	out := seen(t, "rsvg-convert", "-d", fmt.Sprint(dpi), "-p", fmt.Sprint(dpi), "-b", "white", path)
	img, _, err := image.Decode(bytes.NewReader(out))
	if err != nil {
		t.Fatal(err)
	}
	b := img.Bounds()
	r := raster{b.Dx(), b.Dy(), make([]uint8, b.Dx()*b.Dy())}
	for y := range r.h {
		for x := range r.w {
			_, g, _, _ := img.At(b.Min.X+x, b.Min.Y+y).RGBA()
			r.pix[y*r.w+x] = uint8(g >> 8)
		}
	}
	return r
}

// seen is what a program of poppler or librsvg writes.
func seen(t *testing.T, program string, args ...string) []byte {
	t.Helper()
	out, err := exec.Command(program, args...).Output()
	if err != nil {
		t.Fatalf("%s: %v; install poppler-utils and librsvg2-bin", program, err)
	}
	return out
}

// dark is how dark the page is at a place in millimetres, 0 to 1.
func (r raster) dark(x, y float64) float64 {
	const perMM = dpi / 25.4
	x, y = x*perMM-0.5, y*perMM-0.5
	i, j := int(math.Floor(x)), int(math.Floor(y))
	if i < 0 || j < 0 || i+1 >= r.w || j+1 >= r.h {
		return 0
	}
	u, v := x-float64(i), y-float64(j)
	at := func(i, j int) float64 { return 1 - float64(r.pix[j*r.w+i])/255 }
	return (at(i, j)*(1-u)+at(i+1, j)*u)*(1-v) + (at(i, j+1)*(1-u)+at(i+1, j+1)*u)*v
}

// line is how far the middle of the ink lies from a place, along a direction;
// false where there is none within reach.
func (r raster) line(x, y, dx, dy, reach float64) (float64, bool) {
	sum, moment := 0.0, 0.0
	for s := -reach; s <= reach; s += 0.01 {
		d := r.dark(x+s*dx, y+s*dy)
		sum, moment = sum+d, moment+s*d
	}
	if sum*0.01 < 0.03 {
		return 0, false
	}
	return moment / sum, true
}

// misses is how far the ink of an outline lies from where it should, over all
// its length but its corners: the largest and the number of places.
func (r raster) misses(o Outline, x, y float64) (worst float64, n int) {
	points := o.Points
	if o.Closed {
		points = append(points[:len(points):len(points)], points[0])
	}
	for i := 1; i < len(points); i++ {
		p, q := points[i-1], points[i]
		v := q.Sub(p)
		length := float64(v.Norm())
		dx, dy := float64(v.Y)/length, -float64(v.X)/length
		from, to := min(1, length/2), max(length-1, length/2)
		for s := from; s <= to; s += 0.5 {
			m := p.Towards(q, s/length)
			if miss, ok := r.line(x+float64(m.X), y+float64(m.Y), dx, dy, 0.6); ok {
				worst, n = math.Max(worst, math.Abs(miss)), n+1
			}
		}
	}
	return worst, n
}

// enclosed is the white area in square millimetres that ink encloses around a
// place.
func (r raster) enclosed(x, y float64) float64 {
	const perMM = dpi / 25.4
	start := int(y*perMM)*r.w + int(x*perMM)
	known := map[int]bool{start: true}
	queue, white := []int{start}, 0.0
	for len(queue) > 0 && len(queue) < 1e6 {
		k := queue[0]
		queue = queue[1:]
		white++
		for _, next := range []int{k - 1, k + 1, k - r.w, k + r.w} {
			if next < 0 || next >= len(r.pix) || known[next] {
				continue
			}
			known[next] = true
			if r.pix[next] > 200 {
				queue = append(queue, next)
			}
		}
	}
	return white / (perMM * perMM)
}
