package phantom

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"image/jpeg"
	"math"
	"testing"

	"ogive/geometry/plane"
)

func rendered(t *testing.T, c Case) Picture {
	t.Helper()
	p, err := c.Render()
	if err != nil {
		t.Fatalf("seed %d: %v", c.Seed, err)
	}
	return p
}

// The half-way level between flat skin and flat cloth must lie on the true
// border: that is what every border measured on these pictures is held to.
func TestTheDrawnBorderLiesOnTheTrueBorder(t *testing.T) {
	for seed := range uint64(4) {
		c := Random(seed)
		c.FocalPx *= 0.5
		c.Width, c.Height = c.Width/2, c.Height/2
		c.Plain, c.NoiseSD, c.BlurSD, c.Skin, c.Drape = true, 0, 1, VeryFair, DarkTeal
		st, err := c.stage()
		if err != nil {
			t.Fatal(err)
		}
		pic, err := st.paint()
		if err != nil {
			t.Fatal(err)
		}
		truth := st.truth
		green := func(x, y float64) float64 {
			fx, fy := math.Floor(x-0.5), math.Floor(y-0.5)
			u, v := x-0.5-fx, y-0.5-fy
			px := func(i, j float64) float64 { return pic.rgb[3*(int(j)*c.Width+int(i))+1] }
			return (px(fx, fy)*(1-u)+px(fx+1, fy)*u)*(1-v) + (px(fx, fy+1)*(1-u)+px(fx+1, fy+1)*u)*v
		}
		for _, w := range truth.Webs {
			mid, worst, n := 0.0, 0.0, 0
			for _, i := range clearOfTheArch(w) {
				along := w.Border[i+1].Sub(w.Border[i-1]).Direction()
				miss, ok := halfWay(green, w.Border[i], along.Left())
				if !ok {
					t.Fatalf("seed %d, %v: no edge at %v", seed, w.Web, w.Border[i])
				}
				mid += miss
				worst = math.Max(worst, math.Abs(miss))
				n++
			}
			if n == 0 {
				t.Fatalf("seed %d, %v: nothing compared", seed, w.Web)
			}
			within(t, seed, "mean distance of the drawn border, px", mid/float64(n), 0, 0.01)
			within(t, seed, "largest distance of the drawn border, px", worst, 0, 0.05)
		}
	}
}

// clearOfTheArch lists the border points beyond the springings by 4 px and more
// where the opening is wider than the blur reaches: elsewhere light from both
// sides moves the half-way level.
func clearOfTheArch(w WebTruth) []int {
	var out []int
	n := len(w.Border)
	for i := 1; i < n-1; i++ {
		p := w.Border[i]
		if p.Distance(w.Springing[0]) < 4 || p.Distance(w.Springing[1]) < 4 || p.Distance(w.Crown) < w.Springing[0].Distance(w.Crown) || p.Distance(w.Crown) < w.Springing[1].Distance(w.Crown) {
			continue
		}
		if nearestAcross(w, i) > 9 {
			out = append(out, i)
		}
	}
	return out
}

// nearestAcross is the distance to the other finger's border.
func nearestAcross(w WebTruth, i int) plane.Pixel {
	crown := nearest(w.Border, w.Crown)
	other := w.Border[crown:]
	if i > crown {
		other = w.Border[:crown]
	}
	return w.Border[i].Distance(other[nearest(other, w.Border[i])])
}

// halfWay is where along the normal the light is half way between both sides.
func halfWay(light func(x, y float64) float64, p plane.PixelPoint, normal plane.Vector[plane.Pixel]) (float64, bool) {
	at := func(s float64) float64 {
		q := p.Add(normal.Scale(s))
		return light(float64(q.X), float64(q.Y))
	}
	half := (at(-4.5) + at(4.5)) / 2
	const step = 0.02
	for s := -3.0; s < 3; s += step {
		a, b := at(s)-half, at(s+step)-half
		if (a < 0) != (b < 0) {
			return s + step*a/(a-b), true
		}
	}
	return 0, false
}

func TestCoverageIsTheAreaOfTheShape(t *testing.T) {
	triangle := []plane.PixelPoint{{X: 3.3, Y: 2.1}, {X: 25.7, Y: 9.4}, {X: 8.2, Y: 28.6}}
	sum := 0.0
	for _, part := range cover(32, 32, triangle).part {
		sum += part
	}
	a, b := triangle[1].Sub(triangle[0]), triangle[2].Sub(triangle[0])
	within(t, 0, "area of a triangle", sum, float64(a.Cross(b))/2, 1e-9)

	beyond := []plane.PixelPoint{{X: -10, Y: -5}, {X: 40, Y: -5}, {X: 40, Y: 16.5}, {X: -10, Y: 16.5}}
	sum = 0
	for _, part := range cover(32, 32, beyond).part {
		sum += part
	}
	within(t, 0, "area of a shape cut by the frame", sum, 32*16.5, 1e-9)
}

// Three pictures, made small: their
// pixels must be the same on every machine.
func TestTheSameSeedGivesTheSamePicture(t *testing.T) {
	for name, golden := range map[string]struct {
		c    Case
		want string
	}{
		"hand": {Random(5), "9cc90d4889f3cff8"},
		"palm": {Random(1), "56102d888e6ed9a8"},
		"web":  {RandomWebView(2), "84a1b162e8b0a100"},
	} {
		c := golden.c
		c.FocalPx *= plane.Pixel(400 / float64(c.Width))
		c.Width, c.Height = 400, 300
		p := rendered(t, c)
		sum := sha256.Sum256(p.Image.Pix)
		if got := hex.EncodeToString(sum[:8]); got != golden.want {
			t.Errorf("%s: the pixels' hash is %s, want %s", name, got, golden.want)
		}
	}
}

func TestTheJPEGIsThePicture(t *testing.T) {
	c := Random(6)
	c.FocalPx *= plane.Pixel(400 / float64(c.Width))
	c.Width, c.Height, c.JPEGQuality = 400, 300, 95
	p := rendered(t, c)
	img, err := jpeg.Decode(bytes.NewReader(p.JPEG))
	if err != nil {
		t.Fatal(err)
	}
	if img.Bounds() != p.Image.Bounds() {
		t.Fatalf("the JPEG measures %v, the picture %v", img.Bounds(), p.Image.Bounds())
	}
	sum := 0.0
	for y := range c.Height {
		for x := range c.Width {
			_, g, _, _ := img.At(x, y).RGBA()
			sum += math.Abs(float64(g>>8) - float64(p.Image.RGBAAt(x, y).G))
		}
	}
	within(t, 6, "mean difference of green", sum/float64(c.Width*c.Height), 0, 3)
}

func TestEveryExampleCanBeRendered(t *testing.T) {
	names := map[string]bool{}
	for _, e := range Examples() {
		if names[e.Name] || e.Title == "" {
			t.Errorf("%q is named twice or has no title", e.Name)
		}
		names[e.Name] = true
		c := e.Case
		c.Width, c.Height = 240, 180
		rendered(t, c)
	}
}
