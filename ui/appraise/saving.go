package appraise

import (
	"slices"
	"strings"

	"fyne.io/fyne/v2/lang"

	"ogive/imaging/appraisal"
	"ogive/imaging/wording"
)

// changed keeps the appraisal as it is now. While one state is being written the
// next waits, and of those that wait only the latest is written.
func (f *Form) changed() {
	if f.OnSave == nil {
		return
	}
	now := f.given
	now.Findings = slices.Clone(f.given.Findings)
	f.lock.Lock()
	defer f.lock.Unlock()
	f.next = &now
	if f.busy {
		return
	}
	f.busy = true
	f.saving.Add(1)
	go f.save()
}

func (f *Form) save() {
	defer f.saving.Done()
	for {
		now := f.takeNext()
		if now == nil {
			return
		}
		err := f.OnSave(*now)
		f.do(func() {
			if err != nil {
				f.say(lang.L("Not kept: {{.Problem}}", map[string]any{"Problem": strings.TrimRight(err.Error(), ".") + "."}), true)
				return
			}
			f.say("✓ "+wording.Sentence(lang.L("kept, with everything so far")), false)
		})
	}
}

func (f *Form) takeNext() *appraisal.Appraisal {
	f.lock.Lock()
	defer f.lock.Unlock()
	now := f.next
	f.next, f.busy = nil, now != nil
	return now
}

// Finish waits until the last change has been kept, or could not be.
func (f *Form) Finish() { f.saving.Wait() }
