package display

import (
	"encoding/binary"
	"image"
)

// packed is an opaque picture of red, green, blue, alpha.
type packed struct {
	w, h, stride int
	pix          []uint8
}

func packedOf(m *image.RGBA) packed {
	size := m.Rect.Size()
	return packed{w: size.X, h: size.Y, stride: m.Stride, pix: m.Pix}
}

func newPacked(w, h int) packed { return packed{w: w, h: h, stride: 4 * w, pix: make([]uint8, 4*w*h)} }

func (p packed) size() image.Point { return image.Pt(p.w, p.h) }

// row is the part of a row from x0 on, n pixels long.
func (p packed) row(x0, n, y int) []uint8 { return p.pix[y*p.stride+4*x0:][:4*n] }

func (p packed) colours(to []uint8, x0, y int) { copy(to, p.row(x0, len(to)/4, y)) }

func (p packed) mixer(x, y []tap, _, _ func(n int) []tap) func() liner {
	left, n := span(x, p.w)
	return func() liner {
		return &packedLiner{from: p, x: x, y: y, left: left, n: n,
			words: make([]uint64, n+4)}
	}
}

// packedLiner mixes lines of packed pixels: first down, then across.
type packedLiner struct {
	from    packed
	x, y    []tap
	left, n int
	words   []uint64
}

func (m *packedLiner) lay(to []uint8, v int) {
	t := m.y[v]
	blendPixels(m.words, m.row(t.at), m.row(t.at+1), m.row(t.at+2), t)
	words := m.words
	for i := range m.x {
		t := &m.x[i]
		w := words[t.at:]
		w = w[:3:3]
		binary.LittleEndian.PutUint32(to[4*i:], gathered(w[0], w[1], w[2], t))
	}
}

// row is a row of the samples needed; beyond the last one, that again.
func (m *packedLiner) row(y int32) []uint8 {
	return m.from.row(m.left, m.n, min(int(y), m.from.h-1))
}

// halved is the picture reduced by two, each pixel the mean of up to four.
func (p packed) halved(rows func(n int, work func(from, to int))) packed {
	out := newPacked((p.w+1)/2, (p.h+1)/2)
	rows(out.h, func(from, to int) {
		for y := from; y < to; y++ {
			a, b := p.row(0, p.w, 2*y), p.row(0, p.w, min(2*y+1, p.h-1))
			halve(out.row(0, out.w, y), a, b)
		}
	})
	return out
}

// halve is the mean over two by two pixels of two rows; a last column without a
// partner stands for both.
func halve(to, a, b []uint8) {
	for len(a) >= 8 && len(b) >= 8 && len(to) >= 4 {
		p, q := binary.LittleEndian.Uint64(a), binary.LittleEndian.Uint64(b)
		even, odd := p&lanes+q&lanes, p>>8&lanes+q>>8&lanes
		binary.LittleEndian.PutUint32(to, quarter(even, odd))
		to, a, b = to[4:], a[8:], b[8:]
	}
	if len(a) >= 4 && len(b) >= 4 && len(to) >= 4 {
		p, q := uint64(binary.LittleEndian.Uint32(a)), uint64(binary.LittleEndian.Uint32(b))
		even, odd := p&lanes+q&lanes, p>>8&lanes+q>>8&lanes
		binary.LittleEndian.PutUint32(to, quarter(even|even<<32, odd|odd<<32))
	}
}

// quarter adds the two pixels in the halves of each word and divides by four.
func quarter(even, odd uint64) uint32 {
	const halfs = 0x00020002
	e := (uint32(even) + uint32(even>>32) + halfs) >> 2 & 0x00ff00ff
	o := (uint32(odd) + uint32(odd>>32) + halfs) >> 2 & 0x00ff00ff
	return e | o<<8
}
