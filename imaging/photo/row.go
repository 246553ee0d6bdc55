package photo

import (
	"image"
	"image/color"
)

// row is linear light along a part of a stored row.
type row struct{ r, g, b []float32 }

func newRow(n int) row { return row{make([]float32, n), make([]float32, n), make([]float32, n)} }

func (to row) clear() {
	clear(to.r)
	clear(to.g)
	clear(to.b)
}

// rowReader fills a row from the pixels at (x, y) of a picture and to the right
// of it, in the picture's own coordinates.
type rowReader func(to row, x, y int)

// readerOf is a reader for rows of up to n pixels. It is not for use by several
// goroutines at a time.
func readerOf(img image.Image, n int) rowReader {
	switch m := img.(type) {
	case *image.YCbCr:
		if canInterpolate(m) {
			return newChroma(m, n).readRow
		}
	case *image.Gray:
		return grayRows(m)
	case *image.RGBA:
		return opaqueRows(m, m.Pix, m.Stride)
	case *image.NRGBA:
		return opaqueRows(m, m.Pix, m.Stride)
	case *image.Paletted:
		return palettedRows(m)
	case image.RGBA64Image:
		return anyRows(m)
	}
	return anyRows(convert64{img})
}

func grayRows(m *image.Gray) rowReader {
	light := linear8()
	return func(to row, x, y int) {
		for i, v := range m.Pix[m.PixOffset(x, y):][:len(to.r)] {
			l := light[v]
			to.r[i], to.g[i], to.b[i] = l, l, l
		}
	}
}

// opaqueRows reads 8-bit red, green, blue, alpha; anyRows has to see to pixels
// that are not opaque.
func opaqueRows(m image.RGBA64Image, pix []uint8, stride int) rowReader {
	light, mixed := linear8(), anyRows(m)
	min := m.Bounds().Min
	return func(to row, x, y int) {
		px := pix[(y-min.Y)*stride+4*(x-min.X):][:4*len(to.r)]
		for i := range to.r {
			p := px[4*i : 4*i+4 : 4*i+4]
			if p[3] != 0xff {
				mixed(row{to.r[i : i+1], to.g[i : i+1], to.b[i : i+1]}, x+i, y)
				continue
			}
			to.r[i], to.g[i], to.b[i] = light[p[0]], light[p[1]], light[p[2]]
		}
	}
}

func palettedRows(m *image.Paletted) rowReader {
	var light [256][3]float32
	for i, c := range m.Palette[:min(256, len(m.Palette))] {
		r, g, b, a := c.RGBA()
		light[i] = onWhite(r, g, b, a)
	}
	return func(to row, x, y int) {
		for i, v := range m.Pix[m.PixOffset(x, y):][:len(to.r)] {
			to.r[i], to.g[i], to.b[i] = light[v][0], light[v][1], light[v][2]
		}
	}
}

func anyRows(m image.RGBA64Image) rowReader {
	return func(to row, x, y int) {
		for i := range to.r {
			c := m.RGBA64At(x+i, y)
			l := onWhite(uint32(c.R), uint32(c.G), uint32(c.B), uint32(c.A))
			to.r[i], to.g[i], to.b[i] = l[0], l[1], l[2]
		}
	}
}

// onWhite is the linear light of a colour, its channels multiplied by alpha,
// laid on white as a viewer would.
func onWhite(r, g, b, a uint32) [3]float32 {
	light, rest := linear16(), 0xffff-a
	return [3]float32{light[uint16(r+rest)], light[uint16(g+rest)], light[uint16(b+rest)]}
}

// convert64 lets any picture be read as 16-bit colours.
type convert64 struct{ image.Image }

func (c convert64) RGBA64At(x, y int) color.RGBA64 {
	return color.RGBA64Model.Convert(c.At(x, y)).(color.RGBA64)
}
