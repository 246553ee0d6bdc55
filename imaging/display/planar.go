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

// Red, green and blue are added up in lanes of 21 bits of one word, in 1024ths of
// a level above -256, so that no lane runs into the next one: 0 to 255 stand
// where the three uppermost bits of a lane are 001.
const (
	threeOnes = 4 * (1 | 1<<21 | 1<<42) // a 256th of a level in each lane
	outside   = 7<<18 | 7<<39 | 7<<60
	inside    = 1<<18 | 1<<39 | 1<<60
)

// lanesOf is a number in each lane, negative ones too.
func lanesOf(red, green, blue int) uint64 {
	return uint64(int64(red) + int64(green)<<21 + int64(blue)<<42)
}

// cbAdds and crAdds are what each colour value adds to red, green and blue, in
// quarters of a level, to be multiplied by shares of 256 (JFIF 1.02, JPEG File
// Interchange Format, conversion to RGB). That of cr brings the 256 levels and
// the half that rounds.
var cbAdds, crAdds = func() (cb, cr [256]uint64) {
	quarters := func(v, millionths int) int { return (4*(v-128)*millionths + 500_000*sign(v-128)) / 1_000_000 }
	for v := range 256 {
		cb[v] = lanesOf(0, -quarters(v, 344_136), quarters(v, 1_772_000))
		cr[v] = lanesOf(quarters(v, 1_402_000), -quarters(v, 714_136), 0) + lanesOf(1026, 1026, 1026)
	}
	return cb, cr
}()

func sign(v int) int {
	if v < 0 {
		return -1
	}
	return 1
}

// addOf is what colours add to red, green and blue.
func addOf(to []uint64, cb, cr []uint8) {
	to, cr = to[:len(cb)], cr[:len(cb)]
	for i, v := range cb {
		to[i] = cbAdds[v] + crAdds[cr[i]]
	}
}

// clamped brings each lane to levels from 0 to 255.
func clamped(sum uint64) uint64 {
	var out uint64
	for shift := 0; shift < 63; shift += 21 {
		v := sum >> shift & (1<<21 - 1)
		out |= min(max(v, 256<<10), 512<<10-1) << shift
	}
	return out
}

// pixel is the red, green, blue, alpha of a lightness and a colour.
func pixel(y, cb, cr uint8) uint32 {
	sum := (cbAdds[cb]+crAdds[cr])<<8 + uint64(y)<<8*threeOnes
	if sum&outside != inside {
		sum = clamped(sum)
	}
	return uint32(sum>>10)&0xff | uint32(sum>>23)&0xff00 | uint32(sum>>36)&0xff0000 | 0xff000000
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
			cb: make([]uint8, chromaN), cr: make([]uint8, chromaN), chroma: make([]uint64, chromaN+3)}
	}
}

// planarLiner mixes lines channel by channel: first down, then across.
type planarLiner struct {
	from                planar
	x, y, cx, cy        []tap
	left, n             int
	chromaLeft, chromaN int
	luma, cb, cr        []uint8
	chroma              []uint64 // what the colours add to red, green and blue
}

func (m *planarLiner) lay(to []uint8, v int) {
	m.down(m.luma[:m.n], m.from.luma, m.left, m.from.h, m.y[v])
	m.down(m.cb[:m.chromaN], m.from.cb, m.chromaLeft, m.from.chromaH, m.cy[v])
	m.down(m.cr[:m.chromaN], m.from.cr, m.chromaLeft, m.from.chromaH, m.cy[v])
	addOf(m.chroma, m.cb[:m.chromaN], m.cr)
	luma, chroma := m.luma, m.chroma
	cx := m.cx[:len(m.x)]
	for i := range m.x {
		t, c := &m.x[i], &cx[i]
		y := t.mixed(binary.LittleEndian.Uint32(luma[t.at:]))
		k := chroma[c.at:]
		k = k[:3:3]
		sum := k[0]*uint64(c.w0) + k[1]*uint64(c.w1) + y*threeOnes
		if c.w2 != 0 {
			sum += k[2] * uint64(c.w2)
		}
		if sum&outside != inside {
			sum = clamped(sum)
		}
		binary.LittleEndian.PutUint32(to[4*i:], uint32(sum>>10)&0xff|uint32(sum>>23)&0xff00|uint32(sum>>36)&0xff0000|0xff000000)
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
		y := t.mixed(binary.LittleEndian.Uint32(m.luma[t.at:]))
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
