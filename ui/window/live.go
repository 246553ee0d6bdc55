package window

import (
	"slices"

	"ogive/ui/marking"
)

// live is the reading of the marks, which follows every gesture.
type live struct {
	reading   marking.Reading
	measuring bool // a reading is under way
	again     bool // the state has changed since it began
	dragging  bool
}

// measure reads the marks beside the window. While one reading is under way all
// later wishes become one: the latest state counts.
func (w *Window) measure() {
	if w.work == nil {
		return
	}
	if w.measuring {
		w.again = true
		return
	}
	w.measuring = true
	work, state := w.work, w.work.State()
	measure := work.Measure
	if w.dragging {
		measure = work.MeasureDragged
	}
	w.background(func() func() {
		r := measure(state)
		return func() { w.measured(work, r) }
	})
}

func (w *Window) measured(work *marking.Work, r marking.Reading) {
	w.measuring = false
	if w.work == work {
		if whose := w.whoseClick(); whose != "" {
			r.Usual = append(slices.Clone(r.Usual), whose)
		}
		w.reading = r
		w.cards.Show(r, work.State())
		w.arrangeSide()
		w.draw()
	}
	if w.again {
		w.again = false
		w.measure()
	}
}
