package window

import (
	"fyne.io/fyne/v2/lang"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/geometry/scale"
	"ogive/imaging/wording"
	"ogive/ui/marking"
)

// done ends a gesture: it says whether the marks are on the disk and brings the
// screen up to date.
func (w *Window) done(err error) {
	w.notices.passOver()
	w.saved(err)
	w.refresh()
	w.keyboard.take()
}

// ready reports whether gestures on the photograph have something to act on.
func (w *Window) ready() bool { return w.work != nil && !w.previewing }

func (w *Window) tellHand(side hand.Side, view hand.View) {
	if !w.ready() {
		return
	}
	s := w.work.State()
	w.asked = true
	if s.Side == side && s.View == view {
		w.done(nil)
		return
	}
	w.step, w.selected = 0, nil
	if w.inCase != nil {
		if err := w.inCase.tell(side, view); err != nil {
			w.notices.show(notice{about: aboutHand, text: sentence(plain(err))})
			w.keyboard.take()
			return
		}
	}
	w.done(w.work.SetHand(side, view))
}

func (w *Window) tellLength(length plane.Millimetre) {
	if !w.ready() || length == w.work.State().Length {
		w.keyboard.take()
		return
	}
	w.done(w.work.SetLength(length))
}

func (w *Window) tellMethod(m scale.Method, card marking.CardSize) {
	if !w.ready() {
		return
	}
	if s := w.work.State(); s.Method == m && s.Card == card {
		w.keyboard.take()
		return
	}
	w.step, w.selected = marking.Scale, nil
	w.done(w.work.SetMethod(m, card))
}

func (w *Window) place(at plane.PixelPoint) {
	if !w.ready() || w.work.State().Side == 0 {
		return
	}
	spot, more := w.wanted()
	if !more {
		w.deselect()
		return
	}
	w.placed = append(w.placed, spot)
	w.selected = &spot
	w.done(w.work.Place(spot, at))
	w.leaveFinishedStep()
}

// leaveFinishedStep goes on with the next step when the chosen one is done.
func (w *Window) leaveFinishedStep() {
	if w.step == 0 {
		return
	}
	if _, more := w.work.State().NextIn(w.step); !more {
		w.step = 0
		w.refresh()
	}
}

func (w *Window) chooseStep(step marking.Step) {
	if !w.ready() {
		return
	}
	w.step = step
	w.done(nil)
}

func (w *Window) skip() {
	if !w.ready() || w.work.State().Side == 0 {
		return
	}
	spot, more := w.wanted()
	if !more {
		return
	}
	if w.work.State().Skipped[spot] {
		w.step = 0
		w.refresh()
		return
	}
	w.done(w.work.Skip(spot))
	w.leaveFinishedStep()
}

func (w *Window) selectSpot(spot marking.Spot) {
	if !w.ready() {
		return
	}
	w.selected = &spot
	w.draw()
	w.foot.showSelected(wording.Sentence(spot.Name(w.work.State().View)))
	w.refreshMenu()
	w.keyboard.take()
}

func (w *Window) deselect() {
	w.selected = nil
	w.draw()
	w.refreshMenu()
	if w.work != nil {
		w.foot.showGesture(w.work.UndoName(), w.unsaved)
	}
}

// selectWeb brings a web into sight.
func (w *Window) selectWeb(web hand.Web) {
	if !w.ready() {
		return
	}
	crown := marking.Spot{Kind: marking.SeedPoint, Web: web, N: 1}
	if at, placed := w.work.State().Points[crown]; placed {
		w.selectSpot(crown)
		w.board.Reveal(at)
		return
	}
	for _, r := range w.reading.Webs {
		if r.Web == web && len(r.Edge) > 0 {
			w.board.Reveal(r.Edge[len(r.Edge)/2])
		}
	}
}

func (w *Window) drag(spot marking.Spot, to plane.PixelPoint) {
	if !w.ready() {
		return
	}
	w.dragging = true
	w.selected = &spot
	w.work.Drag(spot, to)
	w.draw()
	w.measure()
}

func (w *Window) drop(spot marking.Spot) {
	if !w.ready() {
		return
	}
	w.dragging = false
	w.done(w.work.DropSpot(spot))
	w.takeHeld()
}

func (w *Window) dragEdge(web hand.Web, from, to plane.PixelPoint) {
	if !w.ready() {
		return
	}
	edge, begun := w.pulled[web]
	if !begun {
		if edge = w.reading.Edges[web]; len(edge) == 0 {
			return
		}
		w.pulled[web] = edge
	}
	w.dragging = true
	w.work.DragEdge(web, edge, from, to)
	w.draw()
	w.measure()
}

func (w *Window) dropEdge(web hand.Web) {
	delete(w.pulled, web)
	if !w.ready() {
		return
	}
	w.dragging = false
	w.done(w.work.DropEdge(web))
	w.takeHeld()
}

// nudge moves the selected point.
func (w *Window) nudge(by plane.Vector[plane.Pixel]) {
	if !w.ready() || w.selected == nil || w.dragging {
		return
	}
	w.done(w.work.Nudge(*w.selected, by))
	if at, ok := w.work.State().Points[*w.selected]; ok {
		w.board.Reveal(at)
	}
}

// walk selects the next placed point, or the one before.
func (w *Window) walk(by int) {
	if !w.ready() {
		return
	}
	list := w.work.State().Placed()
	if len(list) == 0 {
		return
	}
	at := -1
	for i, p := range list {
		if w.selected != nil && p.Spot == *w.selected {
			at = i
		}
	}
	if at < 0 && by < 0 {
		at = 0
	}
	next := list[(at+by+len(list))%len(list)]
	w.selectSpot(next.Spot)
	w.board.Reveal(next.At)
}

// takeBack removes the point placed last.
func (w *Window) takeBack() {
	if !w.ready() || w.dragging {
		return
	}
	points := w.work.State().Points
	for n := len(w.placed) - 1; n >= 0; n-- {
		spot := w.placed[n]
		w.placed = w.placed[:n]
		if _, there := points[spot]; there {
			w.remove(spot)
			return
		}
	}
	if list := w.work.State().Placed(); len(list) > 0 {
		w.remove(list[len(list)-1].Spot)
	}
}

func (w *Window) removeSelected() {
	if w.ready() && w.selected != nil && !w.dragging {
		w.remove(*w.selected)
	}
}

func (w *Window) remove(spot marking.Spot) {
	w.selected = nil
	w.done(w.work.Remove(spot))
}

func (w *Window) clearAll() {
	if w.ready() && !w.dragging {
		w.selected, w.placed, w.step = nil, nil, 0
		w.done(w.work.Clear())
	}
}

func (w *Window) undo() {
	if w.ready() {
		w.afterJump(w.work.Undo())
	}
}

func (w *Window) redo() {
	if w.ready() {
		w.afterJump(w.work.Redo())
	}
}

// afterJump ends undo and redo, after which the selected point may be gone.
func (w *Window) afterJump(err error) {
	if w.selected != nil {
		if _, there := w.work.State().Points[*w.selected]; !there {
			w.selected = nil
		}
	}
	w.done(err)
}

// saved tells the user when marks could not be written, until they can be again.
func (w *Window) saved(err error) {
	w.unsaved = err != nil
	if err == nil {
		w.notices.close(aboutSaving)
		w.sayKeptAside()
		return
	}
	w.notices.show(notice{
		about: aboutSaving, lasting: true,
		text:    lang.L("The marks are not on the disk: {{.Problem}}. They are kept here and written again at your next gesture.", map[string]any{"Problem": within(w.work.Path, plain(err))}),
		choices: []choiceOf{{lang.L("Try again"), func() { w.done(w.work.Save()) }}},
	})
}
