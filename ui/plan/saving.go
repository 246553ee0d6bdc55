package plan

import (
	"strings"

	"fyne.io/fyne/v2/lang"

	"ogive/imaging/planfile"
)

// pending is a state of the plan on its way to where it is kept.
type pending struct {
	file planfile.File
	save func(planfile.File) error
}

// keep keeps the plan as it is now. While one state is being kept the next waits,
// and of those that wait only the latest is kept.
func (r *Room) keep() {
	if r.OnSave == nil {
		return
	}
	r.lock.Lock()
	defer r.lock.Unlock()
	r.next = &pending{cloned(r.file), r.OnSave}
	if r.busy {
		return
	}
	r.busy = true
	r.saving.Add(1)
	go r.save()
}

func (r *Room) save() {
	defer r.saving.Done()
	for {
		now := r.takeNext()
		if now == nil {
			return
		}
		err := now.save(now.file)
		r.do(func() { r.head.keptOrNot(err) })
	}
}

func (r *Room) takeNext() *pending {
	r.lock.Lock()
	defer r.lock.Unlock()
	now := r.next
	r.next, r.busy = nil, now != nil
	return now
}

// Finish waits until the last change has been kept, or could not be.
func (r *Room) Finish() { r.saving.Wait() }

// keptOrNot says whether the plan is kept.
func (h *head) keptOrNot(err error) {
	h.problem = err != nil
	if err != nil {
		h.say(lang.L("Not kept: {{.Problem}}", map[string]any{"Problem": strings.TrimRight(err.Error(), ".") + "."}))
		return
	}
	h.kept.SetText("✓ " + lang.L("kept"))
}
