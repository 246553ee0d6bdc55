package rounds

import (
	"fmt"
	"time"

	"ogive/geometry/plane"
	"ogive/imaging/marksfile"
	"ogive/imaging/measure"
)

// Answer is what the learner says of one picture. By eye it has Choices, and
// Crown where it was asked for; blind it has Marks. What is left out counts as
// wrong.
type Answer struct {
	Choices map[Asked]string
	Crown   *plane.PixelPoint
	Marks   *marksfile.File
}

// Answer scores the answer to the next picture and keeps it: it is on the disk
// when Answer returns. Marks are measured on the picture, which takes some tenths
// of a second.
//
// It fails if the picture is not the next one, if marks lack something, and if the
// round can't be written; then the answer does not count and may be given again.
func (r *Round) Answer(p *Picture, a Answer, settings measure.Settings, at time.Time) (Feedback, error) {
	if r.Done() || p.Number != r.Order[len(r.Results)] {
		return Feedback{}, fmt.Errorf("this picture is not the one to be answered next; take the next one from the round's supply")
	}
	result := Result{Picture: p.Number, At: at, Web: p.Web}
	var seen marked
	var err error
	if r.Setup.Kind == ByEye {
		result.judgeByEye(p, a, r.Limits)
	} else if seen, err = result.scoreMarks(p, a, r.Limits, settings); err != nil {
		return Feedback{}, err
	}
	if err := result.check(); err != nil {
		return Feedback{}, err
	}
	if err := r.keep(result); err != nil {
		return Feedback{}, err
	}
	r.dropDraft(len(r.Results))
	return feedback(p, result, r.Limits, seen), nil
}

// keep adds the result and writes the round; if that fails the result is let go.
func (r *Round) keep(result Result) error {
	r.draft.Lock()
	defer r.draft.Unlock()
	r.Results = append(r.Results, result)
	err := r.Save()
	if err != nil {
		r.Results = r.Results[:len(r.Results)-1]
	}
	return err
}
