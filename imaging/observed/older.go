package observed

import (
	"fmt"

	"ogive/imaging/casebook/readings"
	"ogive/imaging/marksfile"
	"ogive/imaging/measure"
	"ogive/imaging/photo"
)

// revision names marks that never change again.
type revision struct {
	photograph int64
	text       string
}

// older is what an older revision comes to.
type older struct {
	marks marksfile.File
	kept  readings.Kept
}

// measured measures an older revision, which the casebook keeps no reading of; it
// is remembered for as long as the reader lives.
func (r *Reader) measured(photograph int64, text string) (marksfile.File, readings.Kept, error) {
	key := revision{photograph, text}
	r.lock.Lock()
	known, ok := r.older[key]
	r.lock.Unlock()
	if ok {
		return known.marks, known.kept, nil
	}
	marks, kept, err := r.measure(photograph, text)
	if err == nil {
		r.lock.Lock()
		r.older[key] = older{marks, kept}
		r.lock.Unlock()
	}
	return marks, kept, err
}

// measure reads marks on their photograph. A panic, which is a fault of this
// program, is the error of these marks.
func (r *Reader) measure(id int64, text string) (f marksfile.File, k readings.Kept, err error) {
	defer func() {
		if p := recover(); p != nil {
			err = fmt.Errorf("the program failed on these marks (%v); please report it", p)
		}
	}()
	if f, err = marksfile.Parse([]byte(text)); err != nil {
		return f, k, err
	}
	if lack := f.Complete(); lack != nil {
		return f, readings.Kept{Lacking: lack.Error()}, nil
	}
	p, err := r.book.Photograph(id)
	if err != nil {
		return f, k, err
	}
	picture, err := photo.Open(r.book.Path(p))
	if err != nil {
		return f, k, fmt.Errorf("its photograph %w", err)
	}
	if err := f.CheckWithin(picture.Size()); err != nil {
		return f, readings.Kept{Lacking: err.Error()}, nil
	}
	read, err := measure.Subject{Marks: f, Photograph: picture}.Measure(r.with)
	if err != nil {
		return f, readings.Kept{Lacking: err.Error()}, nil
	}
	return f, readings.Of(read), nil
}
