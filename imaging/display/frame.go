package display

import (
	"encoding/binary"
	"image"
	"image/color"

	"ogive/geometry/plane"
)

// Ground is what is seen around a photograph: a middle grey that flatters no
// skin and hides no dark border.
var Ground = color.RGBA{0x4a, 0x4c, 0x4f, 0xff}

// CrispFrom is the zoom from which the photograph's own pixels are seen.
const CrispFrom = 2

// Frame fills the picture with what the view shows. The picture has to be of the
// view's window size; of a larger or smaller one, that much is filled.
func (p *Pyramid) Frame(dst *image.RGBA, v View) {
	size := dst.Rect.Size()
	if size.X <= 0 || size.Y <= 0 {
		return
	}
	if v.Empty() {
		fill(dst, image.Rectangle{Max: size})
		return
	}
	across := newAxis(v.Zoom, float64(v.Corner.X), p.upright.X, size.X, p.flips(false))
	down := newAxis(v.Zoom, float64(v.Corner.Y), p.upright.Y, size.Y, p.flips(true))
	seen := image.Rect(across.first, down.first, across.first+across.n, down.first+down.n)
	if seen.Empty() {
		fill(dst, image.Rectangle{Max: size})
		return
	}
	around(dst, seen)
	if p.swaps {
		p.layColumns(dst, seen, p.liners(v.Zoom, down, across))
	} else {
		p.layRows(dst, seen, p.liners(v.Zoom, across, down))
	}
}

// Loupe fills the picture with the photograph around a place, which comes to
// lie in its middle, zoom screen pixels for one of the photograph.
func (p *Pyramid) Loupe(dst *image.RGBA, at plane.PixelPoint, zoom float64) {
	p.Frame(dst, Around(p.upright, dst.Rect.Size(), at, zoom))
}

// Around is the view with a place in the middle of the frame, wherever on the
// photograph it is.
func Around(photograph, window image.Point, at plane.PixelPoint, zoom float64) View {
	v := View{Photograph: photograph, Window: window, Zoom: zoom}
	v.Corner = at.Add(plane.Vec(plane.Pixel(-float64(window.X)/2/zoom), plane.Pixel(-float64(window.Y)/2/zoom)))
	return v
}

// flips reports whether the stored axis along the frame's width, or its height,
// runs against it.
func (p *Pyramid) flips(height bool) bool {
	if height != p.swaps {
		return p.flipY
	}
	return p.flipX
}

// liners makes what lays the lines of a frame; x and y are along the stored
// rows and columns.
func (p *Pyramid) liners(zoom float64, x, y axis) func() liner {
	if zoom >= CrispFrom && !p.coarse {
		return newCrisp((*p.levels.Load())[0], x, y)
	}
	l := p.levelFor(zoom)
	size := l.size()
	return l.mixer(x.taps(size.X, l.perX), y.taps(size.Y, l.perY),
		func(n int) []tap { return x.taps(n, 2*l.perX) },
		func(n int) []tap { return y.taps(n, 2*l.perY) })
}

func (p *Pyramid) layRows(dst *image.RGBA, seen image.Rectangle, liners func() liner) {
	inParallelBy(seen.Dy(), func() func(from, to int) {
		l := liners()
		return func(from, to int) {
			for v := from; v < to; v++ {
				at := (seen.Min.Y+v)*dst.Stride + 4*seen.Min.X
				l.lay(dst.Pix[at:at+4*seen.Dx()], v)
			}
		}
	})
}

// layColumns is for photographs stored on their side: each line laid is a column
// of the frame. Columns are written a strip at a time, for the sake of the cache.
func (p *Pyramid) layColumns(dst *image.RGBA, seen image.Rectangle, liners func() liner) {
	h := seen.Dy()
	inParallelBy(seen.Dx(), func() func(from, to int) {
		l, lines := liners(), make([]uint8, strip*4*h)
		return func(from, to int) {
			for v := from; v < to; v++ {
				l.lay(lines[(v-from)*4*h:][:4*h], v)
			}
			for y0 := 0; y0 < h; y0 += strip {
				corner := dst.Pix[(seen.Min.Y+y0)*dst.Stride+4*(seen.Min.X+from):]
				turn(corner, dst.Stride, lines[4*y0:], 4*h, to-from, min(strip, h-y0))
			}
		}
	})
}

// turn writes lines of n pixels as columns. Both are walked in small squares, two
// columns at a time.
func turn(to []uint8, stride int, lines []uint8, length, columns, n int) {
	for k := 0; k < columns; k += 2 {
		a := lines[k*length:][:4*n]
		if k+1 == columns {
			for y := range n {
				copy(to[y*stride+4*k:][:4], a[4*y:])
			}
			return
		}
		b := lines[(k+1)*length:][:4*n]
		for at := 4 * k; len(a) >= 4 && len(b) >= 4; at += stride {
			two := uint64(binary.LittleEndian.Uint32(a)) | uint64(binary.LittleEndian.Uint32(b))<<32
			binary.LittleEndian.PutUint64(to[at:], two)
			a, b = a[4:], b[4:]
		}
	}
}

// around paints the ground beside the part in which the photograph is seen.
func around(dst *image.RGBA, seen image.Rectangle) {
	size := dst.Rect.Size()
	fill(dst, image.Rect(0, 0, size.X, seen.Min.Y))
	fill(dst, image.Rect(0, seen.Max.Y, size.X, size.Y))
	fill(dst, image.Rect(0, seen.Min.Y, seen.Min.X, seen.Max.Y))
	fill(dst, image.Rect(seen.Max.X, seen.Min.Y, size.X, seen.Max.Y))
}

func fill(dst *image.RGBA, r image.Rectangle) {
	c := uint32(Ground.R) | uint32(Ground.G)<<8 | uint32(Ground.B)<<16 | uint32(Ground.A)<<24
	for y := r.Min.Y; y < r.Max.Y; y++ {
		row := dst.Pix[y*dst.Stride+4*r.Min.X:][:4*r.Dx()]
		for ; len(row) >= 4; row = row[4:] {
			binary.LittleEndian.PutUint32(row, c)
		}
	}
}

// Blank fills the picture with the ground alone.
func Blank(dst *image.RGBA) { fill(dst, image.Rectangle{Max: dst.Rect.Size()}) }
