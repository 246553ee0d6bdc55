package display

import (
	"encoding/binary"
	"image"
)

// planar is a picture of lightness in full and colour in full or at half the
// resolution, as decoders of JPEG leave it. Without colour it is grey.
type planar struct {
	w, h             int
	luma             channel
	cb, cr           channel
	halfX, halfY     bool
	chromaW, chromaH int
	grey             bool
}

// channel is one of the three.
type channel struct {
	pix    []uint8
	stride int
}

func (p channel) row(x0, n, y int) []uint8 { return p.pix[y*p.stride+x0:][:n] }

func greyOf(m *image.Gray) planar {
	return planar{w: m.Rect.Dx(), h: m.Rect.Dy(), luma: channel{m.Pix, m.Stride}, grey: true}
}

func planarOf(m *image.YCbCr) planar {
	p := planar{w: m.Rect.Dx(), h: m.Rect.Dy(),
		luma: channel{m.Y, m.YStride}, cb: channel{m.Cb, m.CStride}, cr: channel{m.Cr, m.CStride},
		halfX: m.SubsampleRatio == image.YCbCrSubsampleRatio420 || m.SubsampleRatio == image.YCbCrSubsampleRatio422,
		halfY: m.SubsampleRatio == image.YCbCrSubsampleRatio420 || m.SubsampleRatio == image.YCbCrSubsampleRatio440,
	}
	p.chromaW, p.chromaH = p.w, p.h
	if p.halfX {
		p.chromaW = (p.w + 1) / 2
	}
	if p.halfY {
		p.chromaH = (p.h + 1) / 2
	}
	return p
}

func (p planar) size() image.Point { return image.Pt(p.w, p.h) }

func (p planar) colours(to []uint8, x0, y int) {
	n := len(to) / 4
	if p.grey {
		for i, v := range p.luma.row(x0, n, y) {
			binary.LittleEndian.PutUint32(to[4*i:], greyPixel(v))
		}
		return
	}
	near, far := nearAndFar(y, p.halfY, p.chromaH)
	for i, v := range p.luma.row(x0, n, y) {
		l, r := nearAndFar(x0+i, p.halfX, p.chromaW)
		cb := chromaAt(p.cb, l, r, near, far)
		cr := chromaAt(p.cr, l, r, near, far)
		binary.LittleEndian.PutUint32(to[4*i:], pixel(v, cb, cr))
	}
}

// nearAndFar are the colour sample that covers pixel i and the next one on the
// pixel's side of it. Samples lie in the middle of the pixels they cover.
func nearAndFar(i int, half bool, n int) (near, far int) {
	if !half {
		return i, i
	}
	return i / 2, min(max(i/2-1+2*(i%2), 0), n-1)
}

// chromaAt interpolates between four colour samples.
func chromaAt(p channel, nearX, farX, nearY, farY int) uint8 {
	a, b := p.pix[nearY*p.stride:], p.pix[farY*p.stride:]
	v := 9*uint32(a[nearX]) + 3*uint32(a[farX]) + 3*uint32(b[nearX]) + uint32(b[farX])
	return uint8((v + 8) >> 4)
}

func greyPixel(v uint8) uint32 { return uint32(v)*0x010101 | 0xff000000 }

// pixel is the red, green, blue, alpha of a lightness and a colour.
func pixel(y, cb, cr uint8) uint32 {
	red, green, blue := channels(uint32(y)<<8, uint32(cb)<<8, uint32(cr)<<8)
	if uint32(red|green|blue) >= 1<<30 {
		return clamped(red, green, blue)
	}
	return within(red, green, blue)
}

// channels are red, green and blue times 1<<22 of a lightness and a colour in
// 256ths of a level (JFIF 1.02, JPEG File Interchange Format, conversion to RGB).
func channels(y, cb, cr uint32) (red, green, blue int32) {
	l, b, r := int32(y)<<14+1<<21, int32(cb)-128<<8, int32(cr)-128<<8
	return l + 22970*r, l - 5638*b - 11700*r, l + 29032*b
}

// within is a pixel whose channels are known to be levels, clamped one whose
// channels may lie outside.
func within(red, green, blue int32) uint32 {
	return uint32(red)>>22 | uint32(green)>>14&0xff00 | uint32(blue)>>6&0xff0000 | 0xff000000
}

func clamped(red, green, blue int32) uint32 {
	level := func(v int32) uint32 { return uint32(min(max(v>>22, 0), 255)) }
	return level(red) | level(green)<<8 | level(blue)<<16 | 0xff000000
}

func (p planar) mixer(x, y []tap, coarseX, coarseY func(n int) []tap) func() liner {
	left, n := span(x, p.w)
	if p.grey {
		return func() liner {
			return &greyLiner{planarLiner{from: p, x: x, y: y, left: left, n: n, luma: make([]uint8, n+4)}}
		}
	}
	cx, cy, chromaLeft, chromaN := x, y, left, n
	if p.halfX {
		cx = coarseX(p.chromaW)
		chromaLeft, chromaN = span(cx, p.chromaW)
	}
	if p.halfY {
		cy = coarseY(p.chromaH)
	}
	return func() liner {
		return &planarLiner{from: p, x: x, y: y, left: left, n: n, luma: make([]uint8, n+4),
			cx: cx, cy: cy, chromaLeft: chromaLeft, chromaN: chromaN,
			cb: make([]uint8, chromaN), cr: make([]uint8, chromaN), chroma: make([]uint32, chromaN+3)}
	}
}

// planarLiner mixes lines channel by channel: first down, then across.
type planarLiner struct {
	from                planar
	x, y, cx, cy        []tap
	left, n             int
	chromaLeft, chromaN int
	luma, cb, cr        []uint8
	chroma              []uint32
}

func (m *planarLiner) lay(to []uint8, v int) {
	m.down(m.luma[:m.n], m.from.luma, m.left, m.from.h, m.y[v])
	m.down(m.cb[:m.chromaN], m.from.cb, m.chromaLeft, m.from.chromaH, m.cy[v])
	m.down(m.cr[:m.chromaN], m.from.cr, m.chromaLeft, m.from.chromaH, m.cy[v])
	pair(m.chroma, m.cb[:m.chromaN], m.cr)
	luma, chroma := m.luma, m.chroma
	cx := m.cx[:len(m.x)]
	for i := range m.x {
		t, c := &m.x[i], &cx[i]
		l := binary.LittleEndian.Uint32(luma[t.at:])
		k := chroma[c.at:]
		k = k[:3:3]
		y := l&0xff*uint32(t.w0) + l>>8&0xff*uint32(t.w1) + l>>16&0xff*uint32(t.w2)
		both := k[0]*uint32(c.w0) + k[1]*uint32(c.w1) + k[2]*uint32(c.w2)
		red, green, blue := channels(y, both&0xffff, both>>16)
		if uint32(red|green|blue) >= 1<<30 {
			binary.LittleEndian.PutUint32(to[4*i:], clamped(red, green, blue))
			continue
		}
		binary.LittleEndian.PutUint32(to[4*i:], within(red, green, blue))
	}
}

// pair puts two bytes into the halves of a word, so that both are mixed at once.
func pair(to []uint32, a, b []uint8) {
	to, b = to[:len(a)], b[:len(a)]
	for i, v := range a {
		to[i] = uint32(v) | uint32(b[i])<<16
	}
}

// down mixes three rows; beyond the last one, that again.
func (m *planarLiner) down(to []uint8, p channel, left, h int, t tap) {
	row := func(y int32) []uint8 { return p.row(left, len(to), min(int(y), h-1)) }
	blend(to, row(t.at), row(t.at+1), row(t.at+2), t)
}

type greyLiner struct{ planarLiner }

func (m *greyLiner) lay(to []uint8, v int) {
	m.down(m.luma[:m.n], m.from.luma, m.left, m.from.h, m.y[v])
	for i := range m.x {
		t := &m.x[i]
		l := binary.LittleEndian.Uint32(m.luma[t.at:])
		y := l&0xff*uint32(t.w0) + l>>8&0xff*uint32(t.w1) + l>>16&0xff*uint32(t.w2)
		binary.LittleEndian.PutUint32(to[4*i:], greyPixel(uint8((y+128)>>8)))
	}
}

func (p planar) halved(rows func(n int, work func(from, to int))) packed {
	out := newPacked((p.w+1)/2, (p.h+1)/2)
	rows(out.h, func(from, to int) {
		for y := from; y < to; y++ {
			p.halve(out.row(0, out.w, y), y)
		}
	})
	return out
}

// halve is row y of the picture reduced by two. Where colour is at half the
// resolution already, it is taken as it is.
func (p planar) halve(to []uint8, y int) {
	next := min(2*y+1, p.h-1)
	a, b := p.luma.row(0, p.w, 2*y), p.luma.row(0, p.w, next)
	for i := range len(to) / 4 {
		j := min(2*i+1, p.w-1)
		v := uint8((uint32(a[2*i]) + uint32(a[j]) + uint32(b[2*i]) + uint32(b[j]) + 2) >> 2)
		if p.grey {
			binary.LittleEndian.PutUint32(to[4*i:], greyPixel(v))
			continue
		}
		x0, x1, y0, y1 := 2*i, j, 2*y, next
		if p.halfX {
			x0, x1 = i, i
		}
		if p.halfY {
			y0, y1 = y, y
		}
		binary.LittleEndian.PutUint32(to[4*i:], pixel(v, p.cb.mean(x0, x1, y0, y1), p.cr.mean(x0, x1, y0, y1)))
	}
}

func (p channel) mean(x0, x1, y0, y1 int) uint8 {
	a, b := p.pix[y0*p.stride:], p.pix[y1*p.stride:]
	return uint8((uint32(a[x0]) + uint32(a[x1]) + uint32(b[x0]) + uint32(b[x1]) + 2) >> 2)
}
