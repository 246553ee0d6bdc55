package propose

import (
	"image"
	"image/color"
	"testing"

	xdraw "golang.org/x/image/draw"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/imaging/phantom"
	"ogive/imaging/photo"
)

// BenchmarkWebs times the proposals on a photograph of 24 megapixels as a JPEG
// decoder leaves it, with the joints marked and without.
func BenchmarkWebs(b *testing.B) {
	p, joints := large(b)
	for _, c := range []struct {
		name string
		m    hand.Marks
	}{
		{"joints", hand.Marks{Side: hand.Right, View: hand.Dorsal, Joints: joints}},
		{"none", hand.Marks{Side: hand.Right, View: hand.Dorsal}},
	} {
		b.Run(c.name, func(b *testing.B) {
			for b.Loop() {
				if got := Webs(p, c.m); len(got) != 3 {
					b.Fatalf("%d webs are proposed, want 3", len(got))
				}
			}
		})
	}
}

// large is a phantom enlarged to 5664 x 4248 pixels, four to one chroma sample.
func large(b *testing.B) (*photo.Photograph, map[hand.Digit]map[hand.Joint]plane.PixelPoint) {
	b.Helper()
	pic, err := phantom.Case{Seed: 3, Width: 944, Height: 708}.Render()
	if err != nil {
		b.Fatal(err)
	}
	const by = 6
	img := image.NewRGBA(image.Rect(0, 0, by*944, by*708))
	xdraw.ApproxBiLinear.Scale(img, img.Rect, pic.Image, pic.Image.Rect, xdraw.Src, nil)
	out := image.NewYCbCr(img.Rect, image.YCbCrSubsampleRatio420)
	for y := range img.Rect.Dy() {
		for x := range img.Rect.Dx() {
			at := img.RGBAAt(x, y)
			out.Y[out.YOffset(x, y)], out.Cb[out.COffset(x, y)], out.Cr[out.COffset(x, y)] = color.RGBToYCbCr(at.R, at.G, at.B)
		}
	}
	joints := map[hand.Digit]map[hand.Joint]plane.PixelPoint{}
	for d, of := range pic.Truth.Joints {
		joints[d] = map[hand.Joint]plane.PixelPoint{}
		for j, q := range of {
			joints[d][j] = plane.Pt(by*q.X, by*q.Y)
		}
	}
	return photo.From(out), joints
}
