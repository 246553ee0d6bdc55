package photo

import "image"

// chroma reads rows of a picture that holds lightness in full and colour at
// half the resolution, as cameras write JPEG and HEIC. Colour is interpolated
// between its samples, each of which lies in the middle of the pixels it covers:
// repeating it would put a staircase into the border of skin and drape.
type chroma struct {
	m              *image.YCbCr
	halfX, halfY   bool
	cb, cr, column []int32
}

// Colour is kept in sixteenths of a level, as the weights 1/4 and 3/4 of the
// two directions give it.
const chromaOne = 16

// From colour in sixteenths of a level to quarters of a level of red, green and
// blue, times 1<<16 (JFIF 1.02, JPEG File Interchange Format, conversion to RGB).
const (
	crToRed   = 22970 // 1.402 * 65536 / 4
	cbToGreen = 5638  // 0.344136 * 65536 / 4
	crToGreen = 11700 // 0.714136 * 65536 / 4
	cbToBlue  = 29032 // 1.772 * 65536 / 4
)

func newChroma(m *image.YCbCr, n int) *chroma {
	half := m.SubsampleRatio
	return &chroma{
		m:     m,
		halfX: half == image.YCbCrSubsampleRatio420 || half == image.YCbCrSubsampleRatio422,
		halfY: half == image.YCbCrSubsampleRatio420 || half == image.YCbCrSubsampleRatio440,
		cb:    make([]int32, n), cr: make([]int32, n), column: make([]int32, n+2),
	}
}

// canInterpolate tells whether colour samples lie at most two pixels apart.
func canInterpolate(m *image.YCbCr) bool {
	switch m.SubsampleRatio {
	case image.YCbCrSubsampleRatio411, image.YCbCrSubsampleRatio410:
		return false
	}
	return m.Rect.Min.X >= 0 && m.Rect.Min.Y >= 0
}

func (c *chroma) readRow(to row, x, y int) {
	c.spread(c.cb, c.m.Cb, x, y)
	c.spread(c.cr, c.m.Cr, x, y)
	light := linearQuarter()
	n := len(to.r)
	luma := c.m.Y[c.m.YOffset(x, y):][:n]
	cbs, crs := c.cb[:n], c.cr[:n]
	tr, tg, tb := to.r[:n], to.g[:n], to.b[:n]
	for i, v := range luma {
		l := int32(v)<<18 + quarterZero<<16 + 1<<15
		cb, cr := cbs[i]-128*chromaOne, crs[i]-128*chromaOne
		tr[i] = light[uint32(l+cr*crToRed)>>16%quarterSize]
		tg[i] = light[uint32(l-cb*cbToGreen-cr*crToGreen)>>16%quarterSize]
		tb[i] = light[uint32(l+cb*cbToBlue)>>16%quarterSize]
	}
}

// spread interpolates one colour plane along the row, in sixteenths of a level.
func (c *chroma) spread(to []int32, plane []uint8, x, y int) {
	if !c.halfX {
		c.blendRows(to, plane, x, y)
		for i := range to {
			to[i] *= 4
		}
		return
	}
	low, high := c.m.Rect.Min.X/2, (c.m.Rect.Max.X-1)/2
	from, last := max(x/2-1, low), min((x+len(to)-1)/2+1, high)
	column := c.column[:last-from+1]
	c.blendRows(column, plane, 2*from, y)
	for i := range to {
		k := (x + i) / 2
		side := min(max(k-1+2*((x+i)%2), low), high)
		to[i] = 3*column[k-from] + column[side-from]
	}
}

// blendRows is the colour samples from that of pixel (x, y) on, in quarters of
// a level, interpolated between two rows of samples if a row spans two pixels.
func (c *chroma) blendRows(to []int32, plane []uint8, x, y int) {
	near := plane[c.m.COffset(max(x, c.m.Rect.Min.X), y):][:len(to)]
	if !c.halfY {
		for i, v := range near {
			to[i] = 4 * int32(v)
		}
		return
	}
	side := min(max(y-1+2*(y%2), c.m.Rect.Min.Y), c.m.Rect.Max.Y-1)
	far := plane[c.m.COffset(max(x, c.m.Rect.Min.X), side):][:len(to)]
	for i, v := range near {
		to[i] = 3*int32(v) + int32(far[i])
	}
}
