package board

import (
	"image"

	"fyne.io/fyne/v2"

	"ogive/imaging/display"
)

// frame is the picture on the screen: the photograph, and a copy of it with the
// marks painted in. Dragging a mark needs only the copy made anew.
type frame struct {
	bare, marked *image.RGBA
	stale        bool // bare has to be made anew
	unmarked     bool // marked has to be made anew
}

// paint is the picture of the board, w by h screen pixels.
func (b *Board) paint(w, h int) image.Image {
	if w <= 0 || h <= 0 {
		return image.NewRGBA(image.Rect(0, 0, 1, 1))
	}
	size := image.Pt(w, h)
	if width := b.Size().Width; width > 0 {
		b.scale = float64(w) / float64(width)
	}
	b.fitWindow(size)
	f := &b.frame
	if f.bare == nil || f.bare.Rect.Size() != size {
		f.bare, f.marked = image.NewRGBA(image.Rectangle{Max: size}), image.NewRGBA(image.Rectangle{Max: size})
		f.stale = true
	}
	if f.stale {
		b.paintPhotograph()
		f.stale, f.unmarked = false, true
	}
	if f.unmarked {
		copy(f.marked.Pix, f.bare.Pix)
		if b.shown != nil {
			b.paintMarks(f.marked)
		}
		f.unmarked = false
	}
	return f.marked
}

func (b *Board) paintPhotograph() {
	if b.shown == nil {
		display.Blank(b.frame.bare)
		return
	}
	b.shown.Frame(b.frame.bare, b.view)
}

// redraw shows photograph and marks anew, remark the marks alone.
func (b *Board) redraw() {
	b.frame.stale = true
	b.picture.Refresh()
}

func (b *Board) remark() {
	b.frame.unmarked = true
	b.picture.Refresh()
}

// CreateRenderer is for Fyne.
func (b *Board) CreateRenderer() fyne.WidgetRenderer { return &renderer{b} }

type renderer struct{ b *Board }

var _ fyne.WidgetRenderer = (*renderer)(nil)

func (r *renderer) Layout(size fyne.Size) {
	b := r.b
	if c := fyne.CurrentApp().Driver().CanvasForObject(b); c != nil {
		b.scale = float64(c.Scale())
	}
	b.picture.Resize(size)
	b.fitWindow(b.window())
	b.lens.follow()
}

func (r *renderer) MinSize() fyne.Size { return fyne.NewSize(240, 180) }

func (r *renderer) Refresh() {
	r.b.redraw()
	r.b.lens.picture.Refresh()
}

func (r *renderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.b.picture, r.b.lens.picture}
}

func (r *renderer) Destroy() {}

var _ fyne.Widget = (*Board)(nil)
