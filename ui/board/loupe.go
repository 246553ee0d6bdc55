package board

import (
	"image"
	"image/color"
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"ogive/geometry/plane"
	"ogive/imaging/display"
	"ogive/imaging/markshapes"
	"ogive/imaging/palette"
)

// The loupe in units of Fyne's: its width, and how far the square around it stays
// away from the pointer and from the spot it shows, its rim ten times as far.
const (
	lensSize = 190
	lensGap  = 4
)

// lens is the loupe: a round window on the photograph's own pixels.
type lens struct {
	board   *Board
	picture *canvas.Raster
	at      plane.PixelPoint
	side    int           // of the pointer on which it stands, of sides
	jumped  fyne.Position // where the pointer was when it came there
	img     *image.RGBA
}

func newLens(b *Board) *lens {
	l := &lens{board: b}
	l.picture = canvas.NewRaster(l.paint)
	l.picture.ScaleMode = canvas.ImageScalePixels
	l.picture.Resize(fyne.NewSquareSize(lensSize))
	l.picture.Hide()
	return l
}

// follow shows the loupe beside the pointer while a point is wanted or dragged,
// and hides it otherwise.
func (l *lens) follow() {
	at, pointer, ok := l.board.inspected()
	if !ok {
		if l.picture.Visible() {
			l.picture.Hide()
		}
		return
	}
	l.at = at
	l.stand(pointer, l.board.position(l.board.view.Screen(at)))
	if !l.picture.Visible() {
		l.picture.Show()
	}
	l.picture.Refresh()
}

// inspected is the place on the photograph that deserves a closer look, and
// where the pointer is.
func (b *Board) inspected() (at plane.PixelPoint, pointer fyne.Position, ok bool) {
	h := b.pointer.hold
	switch {
	case b.shown == nil || !b.pointer.inside:
		return at, pointer, false
	case h.what != ground:
		return h.now, b.pointer.at, true
	case b.scene.Wanted == nil || b.pointer.dragged:
		return at, pointer, false
	}
	at = b.view.On(b.place(b.pointer.at))
	return at, b.pointer.at, b.view.Holds(at)
}

// zoom is how many screen pixels show one of the photograph in the loupe: twice
// what the board shows, but enough to tell pixels apart.
func (l *lens) zoom() float64 {
	return math.Round(min(max(3*l.board.scale, 2*l.board.view.Zoom), 16*l.board.scale))
}

func (l *lens) paint(w, h int) image.Image {
	w, h = max(w, 1), max(h, 1)
	if l.img == nil || l.img.Rect.Dx() != w || l.img.Rect.Dy() != h {
		l.img = image.NewRGBA(image.Rect(0, 0, w, h))
	}
	if l.board.shown == nil {
		display.Blank(l.img)
		return l.img
	}
	l.board.shown.Loupe(l.img, l.at, l.zoom())
	l.cross()
	l.round()
	return l.img
}

// cross draws a fine cross that leaves the middle open.
func (l *lens) cross() {
	p := newPen(l.img, display.View{}, l.board.scale)
	c := xy(float64(l.img.Rect.Dx())/2, float64(l.img.Rect.Dy())/2)
	open := math.Max(4*p.scale, l.zoom())
	for _, line := range markshapes.OpenCross(c, open, 30*p.scale) {
		p.Plain(palette.Ink, 2.6, line)
		p.Plain(palette.Paper, 1, line)
	}
}

// round cuts the picture to a disc with a rim of ink and paper.
func (l *lens) round() {
	w, h := l.img.Rect.Dx(), l.img.Rect.Dy()
	u := l.board.scale
	r := float64(min(w, h)) / 2
	for y := range h {
		for x := range w {
			d := r - math.Hypot(float64(x)+0.5-float64(w)/2, float64(y)+0.5-float64(h)/2)
			if d > 4*u {
				continue
			}
			o := l.img.PixOffset(x, y)
			px := l.img.Pix[o : o+4 : o+4]
			blendOnto(px, palette.Ink, min(max(4*u-d, 0), 1))
			blendOnto(px, palette.Paper, min(max(3*u-d, 0), 1))
			blendOnto(px, palette.Ink, min(max(1.2*u-d, 0), 1))
			blendOnto(px, color.RGBA{}, min(max(1-d, 0), 1))
		}
	}
}

// blendOnto lays so much of a colour over a pixel.
func blendOnto(px []uint8, c color.RGBA, share float64) {
	for i, v := range [4]uint8{c.R, c.G, c.B, c.A} {
		px[i] = uint8(float64(px[i])*(1-share) + float64(v)*share + 0.5)
	}
}
