package window

import (
	"fyne.io/fyne/v2"
)

// stand shows one room of the window and hides the others. The bar belongs to
// the photograph's room alone.
func (w *Window) stand(room fyne.CanvasObject) {
	there := false
	for _, r := range w.rooms.Objects {
		show(r, r == room)
		there = there || r == room
	}
	if !there {
		w.rooms.Add(room)
	}
	show(w.bar.row, room == w.room)
	w.frame.Refresh()
	w.title()
	w.refreshMenu()
	w.keyboard.take()
}

// standing is the room that is shown.
func (w *Window) standing() fyne.CanvasObject {
	for _, r := range w.rooms.Objects {
		if r.Visible() {
			return r
		}
	}
	return nil
}

// putAway closes the photograph, whose marks are on the disk, before another
// room is shown; it reports false, and says why, if they are not.
func (w *Window) putAway() bool {
	w.keyboard.take() // a length that is being typed counts
	if !w.safe() {
		return false
	}
	w.turn.Add(1)
	w.finishPlan()
	w.work, w.inCase, w.previewing = nil, nil, false
	w.selected, w.asked = nil, false
	w.asking.panel.Hide()
	w.length.panel.Hide()
	w.notices.closeAll()
	return true
}

func (w *Window) showWelcome() {
	w.welcome.ShowRecents(w.recents(), w.recentCasebooks())
	w.stand(w.welcome.Room())
}

func (w *Window) showRoom() { w.stand(w.room) }

// toStart goes to the start page; a casebook stays open.
func (w *Window) toStart() {
	if w.putAway() {
		w.showWelcome()
	}
}
