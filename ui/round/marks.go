package round

import (
	"fyne.io/fyne/v2/lang"

	"ogive/geometry/plane"
	"ogive/ui/marking"
)

func (b *blind) place(at plane.PixelPoint) {
	if !b.inHand() {
		return
	}
	spot, more := b.wanted()
	if !more {
		b.choose(nil)
		return
	}
	b.placed = append(b.placed, spot)
	b.selected = &spot
	b.finished(b.work().Place(spot, at))
}

func (b *blind) skip() {
	if !b.inHand() {
		return
	}
	spot, more := b.wanted()
	switch {
	case more && spot.Kind == marking.ScalePoint:
		b.room.table.say(lang.L("The scale can't be left out: without it no mark can be held against the truth in millimetres."))
	case more:
		b.finished(b.work().Skip(spot))
	}
	b.room.keyboard.take()
}

func (b *blind) drag(spot marking.Spot, to plane.PixelPoint) {
	if b.inHand() {
		b.dragging, b.selected = true, &spot
		b.work().Drag(spot, to)
		b.draw()
	}
}

func (b *blind) drop(spot marking.Spot) {
	if b.inHand() {
		b.dragging = false
		b.finished(b.work().DropSpot(spot))
	}
}

func (b *blind) nudge(by plane.Vector[plane.Pixel]) {
	if !b.inHand() || b.selected == nil || b.dragging {
		return
	}
	b.finished(b.work().Nudge(*b.selected, by))
	if at, ok := b.work().State().Points[*b.selected]; ok {
		b.room.table.board.Reveal(at)
	}
}

// walk selects the next mark, or the one before.
func (b *blind) walk(by int) {
	if !b.inHand() {
		return
	}
	list := b.work().State().Placed()
	if len(list) == 0 {
		return
	}
	at := -1
	for i, p := range list {
		if b.selected != nil && p.Spot == *b.selected {
			at = i
		}
	}
	if at < 0 && by < 0 {
		at = 0
	}
	next := list[(at+by+len(list))%len(list)]
	b.choose(&next.Spot)
	b.room.table.board.Reveal(next.At)
}

// takeBack removes the mark placed last.
func (b *blind) takeBack() {
	if !b.inHand() || b.dragging {
		return
	}
	points := b.work().State().Points
	for n := len(b.placed) - 1; n >= 0; n-- {
		spot := b.placed[n]
		b.placed = b.placed[:n]
		if _, there := points[spot]; there {
			b.remove(spot)
			return
		}
	}
	if list := b.work().State().Placed(); len(list) > 0 {
		b.remove(list[len(list)-1].Spot)
	}
}

func (b *blind) removeSelected() {
	if b.inHand() && b.selected != nil && !b.dragging {
		b.remove(*b.selected)
	}
}

func (b *blind) remove(spot marking.Spot) {
	b.selected = nil
	b.finished(b.work().Remove(spot))
}

func (b *blind) undo() { b.jump((*marking.Work).Undo) }
func (b *blind) redo() { b.jump((*marking.Work).Redo) }

func (b *blind) jump(how func(*marking.Work) error) {
	if !b.inHand() || b.dragging {
		return
	}
	err := how(b.work())
	if b.selected != nil {
		if _, there := b.work().State().Points[*b.selected]; !there {
			b.selected = nil
		}
	}
	b.finished(err)
	b.room.keyboard.take()
}

func (b *blind) escape() {
	b.step = 0
	b.choose(nil)
}

func (b *blind) choose(spot *marking.Spot) {
	b.selected = spot
	b.show()
}
