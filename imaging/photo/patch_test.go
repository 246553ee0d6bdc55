package photo

import (
	"image"
	"image/color"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// IEC 61966-2-1 worked points: code 0 is black, 255 white, 188 about half the
// light of white, and 10 still lies on the straight part (10/255/12.92).
func TestSRGBCodesBecomeLinearLight(t *testing.T) {
	img := image.NewRGBA(image.Rect(0, 0, 4, 1))
	want := map[int]float64{0: 0, 10: 0.0030353, 188: 0.50289, 255: 1}
	for i, v := range []int{0, 10, 188, 255} {
		img.SetRGBA(i, 0, color.RGBA{uint8(v), uint8(v), uint8(v), 255})
		got := float64(From(img).Patch(image.Rect(i, 0, i+1, 1), 1).G[0])
		if math.Abs(got-want[v]) > 1e-5 {
			t.Errorf("code %d gives %.6f of full light, want %.6f", v, got, want[v])
		}
	}
}

// speckled is a picture of independent random pixels.
func speckled(w, h int) *image.RGBA {
	r := rand.New(rand.NewPCG(7, 7))
	img := image.NewRGBA(image.Rect(0, 0, w, h))
	for i := range img.Pix {
		img.Pix[i] = uint8(r.Uint32())
		if i%4 == 3 {
			img.Pix[i] = 255
		}
	}
	return img
}

func TestSampleIsMeanLightOfItsPixels(t *testing.T) {
	p := From(speckled(40, 30))
	fine, coarse := p.Patch(image.Rect(3, 2, 39, 30), 1), p.Patch(image.Rect(3, 2, 39, 30), 4)
	if coarse.W != 9 || coarse.H != 7 {
		t.Fatalf("36 x 28 pixels shrunk by 4 give %d x %d samples", coarse.W, coarse.H)
	}
	for j := range coarse.H {
		for i := range coarse.W {
			var sum float64
			for y := 4 * j; y < 4*j+4; y++ {
				for x := 4 * i; x < 4*i+4; x++ {
					sum += float64(fine.B[y*fine.W+x])
				}
			}
			if got := float64(coarse.B[j*coarse.W+i]); math.Abs(got-sum/16) > 1e-6 {
				t.Errorf("sample (%d, %d) is %.6f, the mean of its pixels %.6f", i, j, got, sum/16)
			}
		}
	}
}

func TestPatchIsClippedToThePhotographAndToWholeSamples(t *testing.T) {
	p := From(speckled(40, 30))
	for _, c := range []struct {
		ask    image.Rectangle
		shrink int
		want   image.Rectangle
	}{
		{image.Rect(-10, -10, 5, 5), 1, image.Rect(0, 0, 5, 5)},
		{image.Rect(30, 20, 90, 90), 4, image.Rect(30, 20, 38, 28)},
		{image.Rect(100, 100, 110, 110), 1, image.Rect(0, 0, 0, 0)},
		{image.Rect(0, 0, 3, 3), 4, image.Rect(0, 0, 0, 0)},
	} {
		got := p.Patch(c.ask, c.shrink)
		if got.Rect != c.want && !(got.Rect.Empty() && c.want.Empty()) {
			t.Errorf("asked for %v by %d, got %v, want %v", c.ask, c.shrink, got.Rect, c.want)
		}
		if len(got.R) != got.W*got.H || len(got.G) != got.W*got.H || len(got.B) != got.W*got.H {
			t.Errorf("%d x %d samples, but %d reds", got.W, got.H, len(got.R))
		}
	}
}

// Every kind of picture that holds the same colours gives the same light.
func TestLightDoesNotDependOnHowPixelsAreKept(t *testing.T) {
	const w, h = 24, 18
	gray := image.NewGray(image.Rect(5, 3, 5+w, 3+h)) // the corner need not be the origin
	full := image.NewYCbCr(gray.Rect, image.YCbCrSubsampleRatio444)
	half := image.NewYCbCr(gray.Rect, image.YCbCrSubsampleRatio420)
	wide := image.NewYCbCr(gray.Rect, image.YCbCrSubsampleRatio422)
	tall := image.NewYCbCr(gray.Rect, image.YCbCrSubsampleRatio440)
	quarter := image.NewYCbCr(gray.Rect, image.YCbCrSubsampleRatio410)
	rgba, nrgba := image.NewRGBA(gray.Rect), image.NewNRGBA(gray.Rect)
	deep, gray16 := image.NewNRGBA64(gray.Rect), image.NewGray16(gray.Rect)
	palette := image.NewPaletted(gray.Rect, nil)
	for i := range 256 {
		palette.Palette = append(palette.Palette, color.Gray{uint8(i)})
	}
	for _, m := range []*image.YCbCr{full, half, wide, tall, quarter} {
		for i := range m.Cb {
			m.Cb[i], m.Cr[i] = 128, 128
		}
	}
	r := rand.New(rand.NewPCG(1, 1))
	for y := gray.Rect.Min.Y; y < gray.Rect.Max.Y; y++ {
		for x := gray.Rect.Min.X; x < gray.Rect.Max.X; x++ {
			v := color.Gray{uint8(r.Uint32())}
			for _, m := range []*image.YCbCr{full, half, wide, tall, quarter} {
				m.Y[m.YOffset(x, y)] = v.Y
			}
			gray.Set(x, y, v)
			rgba.Set(x, y, v)
			nrgba.Set(x, y, v)
			deep.Set(x, y, v)
			gray16.Set(x, y, v)
			palette.Set(x, y, v)
		}
	}
	want := From(gray).Patch(image.Rect(2, 3, w-1, h), 1)
	for _, img := range []image.Image{full, half, wide, tall, quarter, rgba, nrgba, deep, gray16, palette} {
		got := From(img).Patch(image.Rect(2, 3, w-1, h), 1)
		if diff := cmp.Diff(want, got, cmp.Comparer(closeTo(1e-6))); diff != "" {
			t.Errorf("%T %s", img, diff)
		}
	}
}

func closeTo(tolerance float64) func(a, b float32) bool {
	return func(a, b float32) bool { return math.Abs(float64(a-b)) <= tolerance }
}

func TestTransparentPartsShowWhite(t *testing.T) {
	img := image.NewNRGBA(image.Rect(0, 0, 2, 1))
	img.SetNRGBA(0, 0, color.NRGBA{0, 0, 0, 0})
	img.SetNRGBA(1, 0, color.NRGBA{0, 0, 0, 127}) // half black on white: code 128
	p := From(img).Patch(image.Rect(0, 0, 2, 1), 1)
	if p.R[0] != 1 {
		t.Errorf("a clear pixel gives %.4f of white", p.R[0])
	}
	if want := linearOf(128. / 255); math.Abs(float64(p.R[1])-want) > 1e-4 {
		t.Errorf("a half clear black pixel gives %.4f, want %.4f", p.R[1], want)
	}
	if got := From(img).Picture().RGBAAt(0, 0); got != (color.RGBA{255, 255, 255, 255}) {
		t.Errorf("a clear pixel is drawn as %v", got)
	}
}

// A colour ramp kept at half resolution comes back as a ramp, without steps.
func TestColourBetweenItsSamplesIsInterpolated(t *testing.T) {
	for _, ratio := range []image.YCbCrSubsampleRatio{image.YCbCrSubsampleRatio420, image.YCbCrSubsampleRatio422} {
		m := image.NewYCbCr(image.Rect(0, 0, 64, 8), ratio)
		for i := range m.Y {
			m.Y[i] = 128
		}
		for i := range m.Cr {
			m.Cr[i], m.Cb[i] = uint8(100+i%m.CStride), 128
		}
		p := From(m).Patch(image.Rect(4, 2, 60, 6), 1)
		for i := range p.W {
			cr := 100 + (float64(4+i)+0.5)/2 - 0.5 // the sample k lies at pixel 2k + 1
			want := linearOf((128 + 1.402*(cr-128)) / 255)
			if got := float64(p.R[p.W+i]); math.Abs(got-want) > 0.002 {
				t.Errorf("%v: red at %d is %.4f, on the ramp %.4f", ratio, 4+i, got, want)
			}
		}
	}
}

func BenchmarkPatch600(b *testing.B) {
	m := image.NewYCbCr(image.Rect(0, 0, 6000, 4000), image.YCbCrSubsampleRatio420)
	for _, c := range []struct {
		name   string
		turn   orientation
		shrink int
	}{{"Shrink1", upright, 1}, {"Shrink4", upright, 4}, {"Turned", rightTop, 1}} {
		p := &Photograph{pixels: m, turn: c.turn}
		b.Run(c.name, func(b *testing.B) {
			for b.Loop() {
				p.Patch(image.Rect(1001, 1001, 1601, 1601), c.shrink)
			}
		})
	}
}
