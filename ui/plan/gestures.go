package plan

import (
	"fyne.io/fyne/v2"

	"ogive/geometry/plane"
	"ogive/imaging/planfile"
	"ogive/ui/board"
)

// grip is a handle on the board with what it does.
type grip struct {
	board.Handle
	// name is what stands beside it while it is selected.
	name string
	// gesture names the step of dragging it.
	gesture string
	// move brings it to a place. It is given what was there when the drag began.
	move func(w *planfile.Web, a *planfile.Alternative, to plane.PixelPoint)
	// remove takes the point away, adds makes a new one here; nil where it can't.
	remove func(a *planfile.Alternative)
	adds   *addition
}

// addition is a place between two points where another can be put.
type addition struct {
	name string
	as   string // the ID of the point that is added
}

// drag is a handle in the user's hand.
type drag struct {
	before planfile.File
	id     string
	grip   grip
}

// grips are the handles that belong to what is shown.
func (r *Room) grips() []grip {
	a, kept := r.now(), r.kept()
	if a == nil || kept == nil || r.alternative >= len(kept.Alternatives) {
		return nil
	}
	switch r.column.tab {
	case archTab:
		return r.archGrips(*a)
	case flapTab:
		return r.flapGrips(*a)
	case zigzagTab:
		return r.zigzagGrips(*a)
	}
	return nil
}

func (r *Room) grip(id string) (grip, bool) {
	if id == "" {
		return grip{}, false
	}
	for _, g := range r.grips() {
		if g.ID == id {
			return g, true
		}
	}
	return grip{}, false
}

// dragged follows the handle; dropped ends the drag as one step.
func (r *Room) dragged(id string, to plane.PixelPoint) {
	if p := r.column.panel(); p != nil {
		if p.OnDragHandle != nil {
			p.OnDragHandle(id, to)
		}
		return
	}
	if r.drag == nil || r.drag.id != id {
		r.drop()
		g, ok := r.grip(id)
		if !ok {
			return
		}
		r.drag = &drag{before: cloned(r.file), id: id, grip: g}
		r.selected = id
		if g.adds != nil {
			r.selected = g.adds.as
		}
	}
	r.moved(r.drag.before, r.drag.grip, to)
	r.reckonHeld()
	r.column.showLive()
	r.draw()
}

// moved is the web in hand as it was before, with one of its grips brought to a
// place.
func (r *Room) moved(before planfile.File, g grip, to plane.PixelPoint) {
	w := clonedWeb(*before.Web(r.web))
	g.move(&w, &w.Alternatives[r.alternative], to)
	*r.file.Web(r.web) = w
}

func (r *Room) dropped(id string) {
	if p := r.column.panel(); p != nil {
		if p.OnDropHandle != nil {
			p.OnDropHandle(id)
		}
		return
	}
	r.drop()
}

// drop ends a drag, if one is under way.
func (r *Room) drop() {
	d := r.drag
	if d == nil {
		return
	}
	r.drag = nil
	name := d.grip.gesture
	if d.grip.adds != nil {
		name = d.grip.adds.name
	}
	r.history.run = ""
	r.finish(name, d.before)
}

// pressed is a click on the board: a handle is selected, a plus adds its point,
// anywhere else lets go.
func (r *Room) pressed(p fyne.Position) {
	r.keyboard.take()
	if r.column.panel() != nil {
		return
	}
	g, ok := r.plate.under(p, r.grips())
	switch {
	case !ok:
		r.choose("")
	case g.adds != nil:
		before := cloned(r.file)
		r.moved(before, g, g.At)
		r.selected, r.history.run = g.adds.as, ""
		r.finish(g.adds.name, before)
	default:
		r.choose(g.ID)
	}
}

func (r *Room) choose(id string) {
	if r.selected == id {
		return
	}
	r.selected = id
	r.draw()
	r.column.showLive()
}

// nudge moves the selected handle by so many pixels; a run of nudges of one
// handle is one step.
func (r *Room) nudge(by plane.Vector[plane.Pixel]) {
	g, ok := r.grip(r.selected)
	if !ok || r.column.panel() != nil {
		return
	}
	before := cloned(r.file)
	r.moved(before, g, r.plate.within(g.At.Add(by)))
	if n := len(r.history.done); r.history.run == g.ID && n > 0 && len(r.history.undone) == 0 {
		r.history.done[n-1].after = cloned(r.file)
		r.settle()
		return
	}
	r.finish(g.gesture, before)
	r.history.run = g.ID
}

// walk selects the next handle that is no plus, or the one before.
func (r *Room) walk(by int) {
	var ids []string
	at := -1
	for _, g := range r.grips() {
		if g.adds != nil {
			continue
		}
		if g.ID == r.selected {
			at = len(ids)
		}
		ids = append(ids, g.ID)
	}
	if len(ids) == 0 {
		return
	}
	if at < 0 && by < 0 {
		at = 0
	}
	r.choose(ids[(at+by+len(ids))%len(ids)])
}

// removeSelected takes the selected point away, if it can be.
func (r *Room) removeSelected() {
	g, ok := r.grip(r.selected)
	if !ok || g.remove == nil {
		return
	}
	r.alter(removing(), func(_ *planfile.Web, a *planfile.Alternative) { g.remove(a) })
}

// alter is one step on the alternative in hand.
func (r *Room) alter(name string, by func(w *planfile.Web, a *planfile.Alternative)) {
	if w := r.kept(); w == nil || r.alternative >= len(w.Alternatives) {
		return
	}
	r.Change(name, func(f *planfile.File) {
		w := f.Web(r.web)
		by(w, &w.Alternatives[r.alternative])
	})
}
