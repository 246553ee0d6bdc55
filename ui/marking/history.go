package marking

// history is the steps that can be undone and redone, without limit.
type history struct{ done, undone []step }

// step is one gesture.
type step struct {
	name          string
	before, after State
}

func (h *history) push(s step) {
	h.done = append(h.done, s)
	h.undone = nil
}

func (h *history) lastDone() string {
	if len(h.done) == 0 || len(h.undone) > 0 {
		return ""
	}
	return h.done[len(h.done)-1].name
}

// UndoName names the gesture that Undo takes back, "" if there is none.
func (w *Work) UndoName() string {
	if n := len(w.history.done); n > 0 {
		return w.history.done[n-1].name
	}
	return ""
}

// RedoName names the gesture that Redo makes again, "" if there is none.
func (w *Work) RedoName() string {
	if n := len(w.history.undone); n > 0 {
		return w.history.undone[n-1].name
	}
	return ""
}

// Undo goes back before the last gesture.
func (w *Work) Undo() error {
	n := len(w.history.done)
	if n == 0 || w.drag != nil {
		return nil
	}
	last := w.history.done[n-1]
	w.history.done = w.history.done[:n-1]
	w.history.undone = append(w.history.undone, step{last.name, last.before, w.state})
	w.state = last.before
	return w.save()
}

// Redo makes the gesture undone last again.
func (w *Work) Redo() error {
	n := len(w.history.undone)
	if n == 0 || w.drag != nil {
		return nil
	}
	last := w.history.undone[n-1]
	w.history.undone = w.history.undone[:n-1]
	w.history.done = append(w.history.done, last)
	w.state = last.after
	return w.save()
}
