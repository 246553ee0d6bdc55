package photo

import "image"

// Stored is a photograph's pixels as they lie in memory, for a reader that has
// to be fast: an *image.YCbCr, an *image.Gray or an opaque *image.RGBA whose
// upper left corner is at (0, 0). It shares its memory with the photograph
// wherever that can be, and must not be written to.
type Stored struct {
	Pixels image.Image
	// Swaps says that the stored rows are columns of the upright photograph,
	// FlipX and FlipY that the stored axis runs against the upright one.
	Swaps, FlipX, FlipY bool
}

// Stored is the photograph's pixels as they lie in memory. Pixels of a kind not
// named in Stored are converted, transparent ones laid on white.
func (p *Photograph) Stored() Stored {
	s := Stored{Pixels: plain(p.pixels), Swaps: p.turn.swaps()}
	s.FlipX, s.FlipY = p.turn.flips()
	return s
}

func plain(img image.Image) image.Image {
	corner, size := img.Bounds().Min, img.Bounds().Size()
	whole := image.Rectangle{Max: size}
	switch m := img.(type) {
	case *image.YCbCr:
		if even := corner.X%2 == 0 && corner.Y%2 == 0; even && canInterpolate(m) && !size.Eq(image.Point{}) {
			y, c := m.YOffset(corner.X, corner.Y), m.COffset(corner.X, corner.Y)
			return &image.YCbCr{Y: m.Y[y:], Cb: m.Cb[c:], Cr: m.Cr[c:], YStride: m.YStride, CStride: m.CStride,
				SubsampleRatio: m.SubsampleRatio, Rect: whole}
		}
	case *image.Gray:
		return &image.Gray{Pix: m.Pix[m.PixOffset(corner.X, corner.Y):], Stride: m.Stride, Rect: whole}
	case *image.RGBA:
		if m.Opaque() {
			return &image.RGBA{Pix: m.Pix[m.PixOffset(corner.X, corner.Y):], Stride: m.Stride, Rect: whole}
		}
	case *image.NRGBA:
		if m.Opaque() {
			return &image.RGBA{Pix: m.Pix[m.PixOffset(corner.X, corner.Y):], Stride: m.Stride, Rect: whole}
		}
	}
	out := image.NewRGBA(whole)
	onto(out, img, corner)
	return out
}
