package trace

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"ogive/geometry/plane"
	"ogive/imaging/phantom"
	"ogive/imaging/photo"
)

// trial traces every web of a phantom from clicks that are 2 pixels off, and
// tells each border's distance from the true one.
func trial(t testing.TB, c phantom.Case, tell func(w phantom.WebTruth, f figures)) {
	t.Helper()
	picture, err := c.Render()
	if err != nil {
		t.Fatal(err)
	}
	p, err := photo.Decode(picture.JPEG)
	if err != nil {
		t.Fatal(err)
	}
	marks, _ := picture.Truth.Marks(2, rand.New(rand.NewPCG(c.Seed, 1)))
	for i, w := range picture.Truth.Webs {
		b, err := Web(p, [3]point(marks.Webs[i].Seeds))
		if err != nil {
			tell(w, figures{failed: 1})
			continue
		}
		var off, abs []float64
		for _, q := range b.Points {
			d := distanceTo(w.Border, q, 4)
			abs = append(abs, d)
			if !surrounds(w.Border, q) {
				d = -d
			}
			off = append(off, d)
		}
		tell(w, figures{off: []float64{median(abs)}, bias: []float64{median(off)}, worst: []float64{quantile(abs, 0.95)}})
	}
}

// surrounds reports whether q lies within a border closed across the gap.
func surrounds(border []point, q point) bool {
	in := false
	for i, b := len(border)-1, 0; b < len(border); i, b = b, b+1 {
		p, r := border[i], border[b]
		if (p.Y > q.Y) != (r.Y > q.Y) && q.X < (r.X-p.X)*(q.Y-p.Y)/(r.Y-p.Y)+p.X {
			in = !in
		}
	}
	return in
}

func (f *figures) join(g figures) {
	f.off = append(f.off, g.off...)
	f.bias = append(f.bias, g.bias...)
	f.worst = append(f.worst, g.worst...)
	f.failed += g.failed
}

func TestPhantomWebsLieWithinAPixelOfTheTruth(t *testing.T) {
	var all figures
	for seed := range uint64(8) {
		c := phantom.Random(seed)
		c.FocalPx *= plane.Pixel(960 / float64(c.Width))
		c.Width, c.Height = 960, 720
		trial(t, c, func(_ phantom.WebTruth, f figures) { all.join(f) })
	}
	t.Log(all)
	if all.failed > 0 || median(all.off) > 0.3 || math.Abs(median(all.bias)) > 0.15 || quantile(all.worst, 0.9) > 1.5 {
		t.Errorf("too far off: %v", all)
	}
}

// BenchmarkPhantoms prints, on demand, how far borders traced on full-size
// phantoms lie off the true ones, by skin, drape and shape.
func BenchmarkPhantoms(b *testing.B) {
	for b.Loop() {
		by := map[string]*figures{}
		var order []string
		for seed := uint64(1000); seed < 1040; seed++ {
			c := phantom.Random(seed)
			trial(b, c, func(w phantom.WebTruth, f figures) {
				for _, name := range []string{"all", fmt.Sprintf("skin %v", c.Skin), fmt.Sprintf("drape %v", c.Drape), w.Shape.String()} {
					if by[name] == nil {
						by[name] = &figures{}
						order = append(order, name)
					}
					by[name].join(f)
				}
			})
		}
		for _, name := range order {
			fmt.Printf("%-12s %s\n", name, by[name])
		}
	}
}
