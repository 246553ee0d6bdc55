package window

import (
	"math"

	"fyne.io/fyne/v2"
)

// overlay lays panels over the photograph: the first along its top, all others
// above its lower edge, where they hide the least of a hand, unless they stand
// aside of something.
type overlay struct {
	// beside is the column, which stays free while room is shown.
	beside, room fyne.CanvasObject
}

const overlayMargin = 12

// aside is a panel that stands as far as it can from two places on the board.
type aside struct {
	shield
	from func() (a, b fyne.Position) // nil while there are no such places
}

func newAside(ground, edge fyne.ThemeColorName, content fyne.CanvasObject) *aside {
	a := &aside{shield: shield{plate{ground: ground, edge: edge, corner: 8, content: content}}}
	a.ExtendBaseWidget(a)
	return a
}

// MinSize is nothing: panels lie over what is there.
func (overlay) MinSize([]fyne.CanvasObject) fyne.Size { return fyne.Size{} }

// Layout is called by Fyne.
func (o overlay) Layout(panels []fyne.CanvasObject, size fyne.Size) {
	if o.room.Visible() {
		size.Width -= o.beside.MinSize().Width
	}
	top := float32(overlayMargin)
	for i, p := range panels {
		least := p.MinSize()
		width := min(max(least.Width, 520), size.Width-2*overlayMargin)
		if i > 0 {
			width = min(least.Width, size.Width-2*overlayMargin)
		}
		p.Resize(fyne.NewSize(width, p.MinSize().Height))
		least = p.MinSize() // wrapped text knows its height only now
		height := min(least.Height, size.Height-2*overlayMargin)
		p.Resize(fyne.NewSize(width, height))
		at := fyne.NewPos((size.Width-width)/2, overlayMargin)
		if i == 0 && p.Visible() && height > 0 {
			top += height
		}
		if i > 0 {
			at.Y = size.Height - height - 4*overlayMargin
		}
		if a, ok := p.(*aside); ok && a.from != nil {
			at = a.stand(fyne.NewSize(width, height), size, top)
		}
		p.Move(at)
	}
}

// stand is where a panel of that size stands in a room whose upper part is taken:
// at that edge or corner of it, or in the middle, that is farthest from the line
// between the two places.
func (a *aside) stand(panel, room fyne.Size, top float32) fyne.Position {
	from, to := a.from()
	left, right := float32(overlayMargin), room.Width-panel.Width-overlayMargin
	low := room.Height - panel.Height - 4*overlayMargin
	middle := fyne.NewPos((room.Width-panel.Width)/2, (room.Height-panel.Height)/2)
	best, farthest := fyne.NewPos(middle.X, low), float32(-1)
	for _, y := range []float32{low, top, middle.Y} {
		for _, x := range []float32{middle.X, left, right} {
			p := fyne.NewPos(x, y)
			if d := distanceToLine(p, panel, from, to); d > farthest+1 {
				best, farthest = p, d
			}
		}
	}
	return best
}

// distanceToLine is how far a panel at p is from the line between two places.
func distanceToLine(p fyne.Position, panel fyne.Size, from, to fyne.Position) float32 {
	const parts = 32
	least := math.Inf(1)
	for i := range parts + 1 {
		t := float32(i) / parts
		q := fyne.NewPos(from.X+t*(to.X-from.X), from.Y+t*(to.Y-from.Y))
		dx := max(p.X-q.X, q.X-p.X-panel.Width, 0)
		dy := max(p.Y-q.Y, q.Y-p.Y-panel.Height, 0)
		least = min(least, math.Hypot(float64(dx), float64(dy)))
	}
	return float32(least)
}
