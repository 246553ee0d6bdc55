package plan

import (
	"reflect"

	"fyne.io/fyne/v2/lang"

	"ogive/geometry/hand"
	"ogive/imaging/planfile"
)

// history is the steps that can be undone and redone, without limit.
type history struct {
	done, undone []step
	// run is the grip whose nudges the last step gathers, "" for none.
	run string
}

// step is one finished gesture.
type step struct {
	name          string
	before, after planfile.File
}

// Change is one named step that can be undone, by a panel or by the room: the
// plan is changed, reckoned, shown and kept.
func (r *Room) Change(name string, by func(*planfile.File)) {
	r.drop()
	before := cloned(r.file)
	by(&r.file)
	r.history.run = ""
	r.finish(name, before)
}

// finish takes the plan as it is now as the end of a step that began with before.
func (r *Room) finish(name string, before planfile.File) {
	if reflect.DeepEqual(before, r.file) {
		r.refresh()
		return
	}
	r.history.done = append(r.history.done, step{name, before, cloned(r.file)})
	r.history.undone = nil
	r.settle()
}

// settle reckons, keeps and shows the plan after a step.
func (r *Room) settle() {
	r.reckon()
	r.clamp()
	r.keep()
	r.refresh()
	r.tellChanged()
}

// UndoName names the step that Undo takes back, "" if there is none.
func (r *Room) UndoName() string {
	if n := len(r.history.done); n > 0 {
		return r.history.done[n-1].name
	}
	return ""
}

// RedoName names the step that Redo makes again, "" if there is none.
func (r *Room) RedoName() string {
	if n := len(r.history.undone); n > 0 {
		return r.history.undone[n-1].name
	}
	return ""
}

// Undo goes back before the last step.
func (r *Room) Undo() {
	r.drop()
	n := len(r.history.done)
	if n == 0 {
		return
	}
	last := r.history.done[n-1]
	r.history.done, r.history.undone = r.history.done[:n-1], append(r.history.undone, last)
	r.travel(last.before)
	r.head.say(lang.L("Undone: {{.Step}}", map[string]any{"Step": last.name}))
}

// Redo makes the step undone last again.
func (r *Room) Redo() {
	r.drop()
	n := len(r.history.undone)
	if n == 0 {
		return
	}
	last := r.history.undone[n-1]
	r.history.undone, r.history.done = r.history.undone[:n-1], append(r.history.done, last)
	r.travel(last.after)
	r.head.say(lang.L("Done again: {{.Step}}", map[string]any{"Step": last.name}))
}

// travel makes the plan what it was, and takes in hand what that changes, so that
// nothing changes unseen.
func (r *Room) travel(to planfile.File) {
	was := r.file
	r.file = cloned(to)
	r.history.run = ""
	web, alternative := differing(was, r.file)
	if web != 0 && web != r.web {
		r.hold(web)
	}
	if web != 0 && alternative >= 0 {
		r.alternative = alternative
	}
	r.settle()
}

// differing is the first web that is otherwise in now than it was, and the first
// alternative of it, -1 for none.
func differing(was, now planfile.File) (web hand.Web, alternative int) {
	for i := range now.Webs {
		w, old := now.Webs[i], was.Web(now.Webs[i].Web)
		if old == nil {
			return w.Web, -1
		}
		if reflect.DeepEqual(*old, w) {
			continue
		}
		for k, a := range w.Alternatives {
			if k >= len(old.Alternatives) || !reflect.DeepEqual(old.Alternatives[k], a) {
				return w.Web, k
			}
		}
		return w.Web, -1
	}
	return 0, -1
}

// clamp keeps what is in hand within the plan.
func (r *Room) clamp() {
	switch w := r.kept(); {
	case w == nil && len(r.file.Webs) > 0:
		r.hold(r.file.Webs[0].Web)
	case w == nil:
		r.web, r.alternative = 0, 0
	default:
		r.alternative = max(min(r.alternative, len(w.Alternatives)-1), 0)
	}
	if _, ok := r.grip(r.selected); !ok {
		r.selected = ""
	}
}
