package display

import (
	"image"
	"image/color"
	"math"
	"math/rand/v2"
	"testing"

	"ogive/geometry/plane"
	"ogive/imaging/photo"
)

// turned are the eight ways in which a photograph may be stored.
func turned(p *Pyramid) []*Pyramid {
	var all []*Pyramid
	for way := range 8 {
		q := &Pyramid{stored: p.stored, upright: p.stored, swaps: way&1 != 0, flipX: way&2 != 0, flipY: way&4 != 0}
		if q.swaps {
			q.upright = image.Pt(p.stored.Y, p.stored.X)
		}
		q.levels.Store(p.levels.Load())
		all = append(all, q)
	}
	return all
}

// upright is the stored picture held upright, pixel by pixel.
func upright(p *Pyramid) *image.RGBA {
	out := image.NewRGBA(image.Rectangle{Max: p.upright})
	from := (*p.levels.Load())[0].source
	px := make([]uint8, 4)
	for y := range p.upright.Y {
		for x := range p.upright.X {
			sx, sy := x, y
			if p.swaps {
				sx, sy = y, x
			}
			if p.flipX {
				sx = p.stored.X - 1 - sx
			}
			if p.flipY {
				sy = p.stored.Y - 1 - sy
			}
			from.colours(px, sx, sy)
			copy(out.Pix[out.PixOffset(x, y):], px)
		}
	}
	return out
}

// kinds are small photographs of every kind of pixels, sides odd.
func kinds() map[string]image.Image {
	size := image.Pt(83, 61)
	grey := image.NewGray(image.Rectangle{Max: size})
	r := rand.New(rand.NewPCG(5, 6))
	for i := range grey.Pix {
		grey.Pix[i] = uint8(r.Uint32())
	}
	full := image.NewYCbCr(image.Rectangle{Max: size}, image.YCbCrSubsampleRatio444)
	for i := range full.Y {
		full.Y[i], full.Cb[i], full.Cr[i] = uint8(90+r.Uint32()&63), uint8(112+r.Uint32()&31), uint8(112+r.Uint32()&31)
	}
	return map[string]image.Image{"RGB": noiseRGBA(size), "JPEG": noiseYCbCr(size), "grey": grey, "full colour": full}
}

// meanUnder is the mean of the picture under a rectangle, in the plainest way.
func meanUnder(m *image.RGBA, x0, y0, x1, y1 float64) [3]float64 {
	var sum [3]float64
	var area float64
	for y := int(math.Floor(y0)); float64(y) < y1; y++ {
		for x := int(math.Floor(x0)); float64(x) < x1; x++ {
			w := min(x1, float64(x+1)) - max(x0, float64(x))
			h := min(y1, float64(y+1)) - max(y0, float64(y))
			at := m.PixOffset(min(max(x, 0), m.Rect.Dx()-1), min(max(y, 0), m.Rect.Dy()-1))
			for c := range 3 {
				sum[c] += w * h * float64(m.Pix[at+c])
			}
			area += w * h
		}
	}
	for c := range sum {
		sum[c] /= area
	}
	return sum
}

// close reports whether a pixel is the given mean. Where colour is stored at half
// the resolution, a pixel's colour is the mean over more than the pixel, while
// its lightness is held to the pixel.
func close(kind string, c []uint8, mean [3]float64) bool {
	tolerance, light := 2.6, 0.0
	if kind == "JPEG" {
		tolerance = 16
	}
	for i, share := range [3]float64{0.299, 0.587, 0.114} {
		d := float64(c[i]) - mean[i]
		light += share * d
		if math.Abs(d) > tolerance {
			return false
		}
	}
	return math.Abs(light) < 2
}

func TestAPixelOfAFrameIsTheMeanOfWhatItCovers(t *testing.T) {
	window := image.Pt(70, 50)
	for name, img := range kinds() {
		for way, p := range turned(New(photo.From(img))) {
			want := upright(p)
			for _, zoom := range []float64{0.53, 0.75, 1, 1.37, 1.9} {
				v := View{Photograph: p.upright, Window: window, Zoom: zoom, Corner: plane.Pt[plane.Pixel](-3.3, 4.7)}
				if zoom == 1 {
					v.Corner = plane.Pt[plane.Pixel](-3, 5)
				}
				got := image.NewRGBA(image.Rectangle{Max: window})
				p.Frame(got, v)
				side := max(1, 1/zoom)
				for y := range window.Y {
					for x := range window.X {
						q := v.On(Place{float64(x) + 0.5, float64(y) + 0.5})
						if !v.Holds(q) {
							if c := got.RGBAAt(x, y); c != Ground {
								t.Fatalf("%s, way %d, zoom %g: beside the photograph at (%d, %d) is %v, not the ground", name, way, zoom, x, y, c)
							}
							continue
						}
						mean := meanUnder(want, float64(q.X)-side/2, float64(q.Y)-side/2, float64(q.X)+side/2, float64(q.Y)+side/2)
						if c := got.RGBAAt(x, y); !close(name, []uint8{c.R, c.G, c.B}, mean) {
							t.Fatalf("%s, way %d, zoom %g: pixel (%d, %d) is %v, the mean under it %.1f", name, way, zoom, x, y, c, mean)
						}
					}
				}
			}
		}
	}
}

func TestFromTwoOnThePhotographsOwnPixelsAreSeen(t *testing.T) {
	window := image.Pt(90, 70)
	for name, img := range kinds() {
		for way, p := range turned(New(photo.From(img))) {
			want := upright(p)
			for _, zoom := range []float64{2, 3.7, 8} {
				v := View{Photograph: p.upright, Window: window, Zoom: zoom, Corner: plane.Pt[plane.Pixel](20.3, 31.8)}
				got := image.NewRGBA(image.Rectangle{Max: window})
				p.Frame(got, v)
				for y := range window.Y {
					for x := range window.X {
						q := v.On(Place{float64(x) + 0.5, float64(y) + 0.5})
						if !v.Holds(q) {
							continue
						}
						if have, own := got.RGBAAt(x, y), want.RGBAAt(int(q.X), int(q.Y)); have != own {
							t.Fatalf("%s, way %d, zoom %g: pixel (%d, %d) is %v, the photograph's own %v", name, way, zoom, x, y, have, own)
						}
					}
				}
			}
		}
	}
}

func TestOneToOneOnAWholePixelIsThePhotograph(t *testing.T) {
	for name, img := range kinds() {
		p := New(photo.From(img))
		v := Fit(p.Size(), image.Pt(200, 200)).ZoomedTo(1, Place{100, 100})
		got := image.NewRGBA(image.Rect(0, 0, 200, 200))
		p.Frame(got, v)
		want := upright(p)
		at := v.Screen(plane.PixelPoint{})
		for y := range p.upright.Y {
			for x := range p.upright.X {
				have, own := got.RGBAAt(int(at.X)+x, int(at.Y)+y), want.RGBAAt(x, y)
				if !alike(have, own, 2) {
					t.Fatalf("%s: pixel (%d, %d) is %v, the photograph's own %v", name, x, y, have, own)
				}
			}
		}
	}
}

func alike(a, b color.RGBA, by int) bool {
	near := func(x, y uint8) bool { return int(x)-int(y) <= by && int(y)-int(x) <= by }
	return near(a.R, b.R) && near(a.G, b.G) && near(a.B, b.B) && a.A == b.A
}

// A drawing of four quarters, each of one colour, stays that at every size.
func TestEveryZoomShowsThePhotographInItsPlace(t *testing.T) {
	quarters := image.NewRGBA(image.Rect(0, 0, 3000, 2000))
	colours := [2][2]color.RGBA{{{200, 30, 40, 255}, {30, 200, 40, 255}}, {{30, 40, 200, 255}, {220, 220, 30, 255}}}
	for y := range 2000 {
		for x := range 3000 {
			quarters.SetRGBA(x, y, colours[y/1000][x/1500])
		}
	}
	p := New(photo.From(quarters))
	window := image.Pt(320, 200)
	got := image.NewRGBA(image.Rectangle{Max: window})
	for built := range 2 {
		for zoom := 0.1; zoom <= MostZoom; zoom *= 1.21 {
			v := Around(p.Size(), window, plane.Pt[plane.Pixel](1500.25, 999.5), zoom)
			p.Frame(got, v)
			for y := range window.Y {
				for x := range window.X {
					q := v.On(Place{float64(x) + 0.5, float64(y) + 0.5})
					border := max(1/zoom, 1) // a pixel here may see both sides
					if !v.Holds(q) || math.Abs(float64(q.X)-1500) < border || math.Abs(float64(q.Y)-1000) < border {
						continue
					}
					if c, want := got.RGBAAt(x, y), colours[int(q.Y)/1000][int(q.X)/1500]; c != want {
						t.Fatalf("built %d, zoom %.2f: pixel (%d, %d), at %v of the photograph, is %v, not %v", built, zoom, x, y, q, c, want)
					}
				}
			}
		}
		p.Build()
	}
}

func TestAReducedCopyKeepsTheMeanOfThePhotograph(t *testing.T) {
	for name, img := range kinds() {
		p := New(photo.From(img))
		own := (*p.levels.Load())[0].source
		small := own.halved(inParallel)
		want := upright(p)
		for y := range small.h {
			for x := range small.w {
				c := small.row(x, 1, y)
				mean := meanUnder(want, float64(2*x), float64(2*y), float64(2*x+2), float64(2*y+2))
				if !close(name, c, mean) {
					t.Fatalf("%s: sample (%d, %d) is %v, the mean of its four pixels %.1f", name, x, y, c, mean)
				}
			}
		}
	}
}

func TestTheLoupeHasThePlaceInItsMiddle(t *testing.T) {
	img := noiseRGBA(image.Pt(40, 30))
	img.SetRGBA(17, 12, color.RGBA{255, 255, 255, 255})
	got := image.NewRGBA(image.Rect(0, 0, 64, 64))
	New(photo.From(img)).Loupe(got, plane.Pt[plane.Pixel](17.5, 12.5), 8)
	for _, q := range []image.Point{{28, 28}, {35, 35}, {32, 32}} {
		if c := got.RGBAAt(q.X, q.Y); c != (color.RGBA{255, 255, 255, 255}) {
			t.Errorf("the loupe shows %v at %v, not the white pixel it is held over", c, q)
		}
	}
	if c := got.RGBAAt(36, 32); c == (color.RGBA{255, 255, 255, 255}) {
		t.Error("the white pixel is more than eight wide in the loupe")
	}
}

func TestAPreviewFillsThePlaceOfThePhotograph(t *testing.T) {
	small := image.NewRGBA(image.Rect(0, 0, 16, 12))
	for i := range small.Pix {
		small.Pix[i] = 255
	}
	p := Preview(small, image.Pt(4000, 3000))
	v := Fit(p.Size(), image.Pt(400, 400))
	got := image.NewRGBA(image.Rect(0, 0, 400, 400))
	p.Frame(got, v)
	white := 0
	for y := range 400 {
		for x := range 400 {
			if got.RGBAAt(x, y) == (color.RGBA{255, 255, 255, 255}) {
				white++
			}
		}
	}
	if white != 400*300 {
		t.Errorf("the preview covers %d pixels, not the photograph's 120000", white)
	}
}

func TestTinyPhotographsCanBeSeen(t *testing.T) {
	for _, size := range []image.Point{{1, 1}, {2, 1}, {1, 5}, {3, 2}, {300, 1}} {
		for _, img := range []image.Image{noiseRGBA(size), noiseYCbCr(size)} {
			for _, p := range turned(New(photo.From(img))) {
				p.Build()
				for _, zoom := range []float64{0.3, 0.7, 1, 1.5, 8} {
					p.Frame(image.NewRGBA(image.Rect(0, 0, 30, 20)), Around(p.Size(), image.Pt(30, 20), plane.Pt[plane.Pixel](0.5, 0.5), zoom))
				}
			}
		}
	}
}
