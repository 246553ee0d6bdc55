package beside

import (
	"image"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"ogive/geometry/plane"
	"ogive/imaging/photo"
	"ogive/ui/board"
	"ogive/ui/flow"
	"ogive/ui/look"
)

// plate is one photograph with its caption. It opens on the webs: the whole of a
// hand is too small for one arch to be told from another.
type plate struct {
	board  *board.Board
	title  *widget.Label
	object fyne.CanvasObject

	size   image.Point // of the photograph
	zoom   float64     // 0 until the photograph is seen
	seen   bool        // the photograph shown last is on the board
	wanted []plane.PixelPoint
}

func newPlate(open func()) *plate {
	p := &plate{board: board.New(), title: widget.NewLabel("")}
	p.title.TextStyle.Bold, p.title.Truncation = true, fyne.TextTruncateEllipsis
	p.board.OnView = p.follow
	buttons := container.NewHBox(
		button(look.IconFit, lang.L("Whole"), p.board.Fit),
		button(look.IconOpen, lang.L("Open to mark"), open))
	p.object = container.New(captioned{}, p.title, buttons, p.board)
	return p
}

// captioned stands title and buttons above a photograph: beside each other, or
// over each other where it is narrow.
type captioned struct{}

// captionLine is the height of a line above a photograph, and narrow the width
// below which there are two.
const captionLine, narrow = 38, 480

func captionHeight(width float32) float32 {
	if width < narrow {
		return 2*captionLine - 8
	}
	return captionLine
}

func (captioned) MinSize([]fyne.CanvasObject) fyne.Size { return fyne.NewSize(220, 160) }

func (captioned) Layout(parts []fyne.CanvasObject, size fyne.Size) {
	title, buttons, photograph := parts[0], parts[1], parts[2]
	wide, top := buttons.MinSize().Width, captionHeight(size.Width)
	if size.Width < narrow {
		flow.Put(title, 0, 0, size.Width, captionLine)
		flow.Put(buttons, 0, captionLine-8, wide, captionLine)
	} else {
		flow.Put(title, 0, 0, size.Width-wide, captionLine)
		flow.Put(buttons, size.Width-wide, 0, wide, captionLine)
	}
	flow.Put(photograph, 0, top, size.Width, size.Height-top)
}

func button(icon look.IconName, text string, do func()) *widget.Button {
	b := widget.NewButtonWithIcon(text, look.Icon(icon), do)
	b.Importance = widget.LowImportance
	return b
}

// show puts a photograph on the board, bare.
func (p *plate) show(title string, photograph *photo.Photograph) {
	p.title.SetText(title)
	p.board.Draw(board.Scene{})
	p.wanted = nil
	if photograph == nil {
		return
	}
	// A board that already shows a photograph of this size keeps its view.
	p.seen = p.zoom > 0 && p.size == photograph.Size()
	p.size = photograph.Size()
	p.board.ShowPhotograph(photograph)
}

// follow is told the zoom.
func (p *plate) follow(zoom float64) {
	p.zoom = zoom
	if zoom > 0 && !p.seen {
		p.seen = true
		p.frame()
	}
}

// want opens the photograph on those places, now or once it is seen.
func (p *plate) want(places []plane.PixelPoint) {
	p.wanted = places
	if p.seen {
		p.frame()
	}
}

// closest is the largest zoom at which a photograph is opened on a part of it.
const closest = 4

// frame shows the wanted places as large as they fit, in the middle of the board.
func (p *plate) frame() {
	canvas := fyne.CurrentApp().Driver().CanvasForObject(p.board)
	if len(p.wanted) == 0 || canvas == nil {
		return
	}
	low, high := p.wanted[0], p.wanted[0]
	for _, q := range p.wanted {
		low = plane.Pt(min(low.X, q.X), min(low.Y, q.Y))
		high = plane.Pt(max(high.X, q.X), max(high.Y, q.Y))
	}
	const filled = 0.8
	room, px := p.board.Size(), filled*float64(canvas.Scale())
	zoom := min(float64(room.Width)*px/max(float64(high.X-low.X), 1), float64(room.Height)*px/max(float64(high.Y-low.Y), 1), closest)
	p.wanted = nil
	p.board.Fit()
	if zoom <= p.zoom {
		return
	}
	// Far in, what is revealed comes to lie in the middle, and stays there on the
	// way out.
	p.board.ZoomBy(50)
	p.board.Reveal(low.Mid(high))
	p.board.ZoomBy(zoom / p.zoom)
}
