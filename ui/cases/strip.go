package cases

import (
	"cmp"
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ogive/geometry/hand"
	"ogive/imaging/casebook"
	"ogive/ui/flow"
	"ogive/ui/look"
)

// strip is one sitting on the thread of time: when it was and what it was at the
// left, its photographs at the right.
type strip struct {
	widget.BaseWidget
	first, last bool // of the thread
	stage       casebook.Stage

	thread *canvas.Line
	knot   *canvas.Circle
	left   *fyne.Container
	thumbs []*thumb
}

const (
	threadAt   = 13  // from the left edge
	knotAt     = 27  // from the top
	gutter     = 214 // the width of what stands at the left
	stripBelow = 22  // the space to the next sitting
)

func newStrip(stage casebook.Stage, left *fyne.Container, thumbs []*thumb) *strip {
	s := &strip{stage: stage, left: left, thumbs: thumbs, thread: canvas.NewLine(nil), knot: canvas.NewCircle(nil)}
	s.ExtendBaseWidget(s)
	s.colour()
	return s
}

// colour takes the colours of the theme. Each stage has a knot of its own: open
// before the operation, large at it, full after it.
func (s *strip) colour() {
	s.thread.StrokeColor, s.thread.StrokeWidth = look.Colour(look.Hairline), 2
	s.knot.StrokeColor, s.knot.StrokeWidth = look.Colour(look.SecondInk), 2
	switch s.stage {
	case casebook.Before:
		s.knot.FillColor = look.Colour(theme.ColorNameBackground)
	case casebook.AtOperation:
		s.knot.FillColor, s.knot.StrokeColor = look.Colour(look.Accent), look.Colour(look.Accent)
	default:
		s.knot.FillColor = look.Colour(look.SecondInk)
	}
}

// HeightAt places everything for that width.
func (s *strip) HeightAt(width float32) float32 {
	const top = 10
	s.left.Resize(fyne.NewSize(gutter-2*threadAt, s.left.Size().Height))
	left := s.left.MinSize().Height
	flow.Put(s.left, 2*threadAt, top, gutter-2*threadAt, left)
	x, y, line := float32(gutter), float32(top), float32(0)
	for _, t := range s.thumbs {
		size := t.sizeAmong(width - gutter)
		if x > gutter && x+size.Width > width {
			x, y = gutter, y+line+8
		}
		flow.Put(t, x, y, size.Width, size.Height)
		x, line = x+size.Width+8, size.Height
	}
	height := max(top+left, y+line) + stripBelow
	s.drawThread(height)
	return height
}

func (s *strip) drawThread(height float32) {
	from, to := float32(0), height
	if s.first {
		from = knotAt
	}
	if s.last {
		to = knotAt
	}
	s.thread.Position1, s.thread.Position2 = fyne.NewPos(threadAt, from), fyne.NewPos(threadAt, to)
	flow.Visible(s.thread, to > from)
	half := float32(6)
	if s.stage == casebook.AtOperation {
		half = 9
	}
	flow.Put(s.knot, threadAt-half, knotAt-half, 2*half, 2*half)
}

// CreateRenderer is called by Fyne.
func (s *strip) CreateRenderer() fyne.WidgetRenderer { return stripRenderer{s} }

type stripRenderer struct{ s *strip }

func (r stripRenderer) MinSize() fyne.Size    { return fyne.NewSize(gutter+thumbWidth, knotAt) }
func (r stripRenderer) Layout(size fyne.Size) { r.s.HeightAt(size.Width) }
func (r stripRenderer) Destroy()              {}
func (r stripRenderer) Refresh() {
	r.s.colour()
	for _, o := range r.Objects() {
		o.Refresh()
	}
}

func (r stripRenderer) Objects() []fyne.CanvasObject {
	all := []fyne.CanvasObject{r.s.thread, r.s.knot, r.s.left}
	for _, t := range r.s.thumbs {
		all = append(all, t)
	}
	return all
}

// byViewAndHand orders the photographs of a sitting: back, palm, into the web,
// each with the left hand first, and last those of which it is not said.
func byViewAndHand(photographs []casebook.Photograph) []casebook.Photograph {
	out := slices.Clone(photographs)
	rank := func(p casebook.Photograph) int {
		side, view := sideOf(p), viewOf(p)
		if side == 0 || view == 0 {
			return 100
		}
		return int(view)*2 + int(side-hand.Left)
	}
	slices.SortStableFunc(out, func(a, b casebook.Photograph) int { return cmp.Compare(rank(a), rank(b)) })
	return out
}

// menuAt opens a menu under a button.
func (r *Room) menuAt(under fyne.CanvasObject, items ...*fyne.MenuItem) {
	menu := widget.NewPopUpMenu(fyne.NewMenu("", items...), r.win.Canvas())
	menu.ShowAtRelativePosition(fyne.NewPos(0, under.Size().Height), under)
	r.win.Canvas().Focus(menu)
}
