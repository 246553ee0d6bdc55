package rounds

import (
	"reflect"

	"ogive/imaging/measure"
)

// First is the first picture of a round that is not begun yet, made while its
// setup is still being chosen.
type First struct {
	setup   Setup
	limits  Limits
	ready   chan struct{}
	picture *Picture
	err     error
}

// MakeFirst begins to make the first picture of a round of phantoms of that setup
// and returns at once; nil where that can't be done. Give it to the supply of the
// round by Use.
func MakeFirst(s Setup, settings measure.Settings) *First {
	s = s.Filled()
	limits, err := limitsOf(settings.Norms)
	if err != nil || s.Check() != nil || len(s.Photographs) > 0 {
		return nil
	}
	f := &First{setup: s, limits: limits, ready: make(chan struct{})}
	go func() {
		defer close(f.ready)
		drawn, err := cases(s, limits)
		if err != nil {
			f.err = err
			return
		}
		f.picture, f.err = maker{setup: s, limits: limits, cases: drawn, settings: settings}.picture(0)
	}()
	return f
}

// Use lets the supplies of the round take its picture 0 from f, if f was made of
// the same setup and limits; else, and where f is nil, it does nothing.
func (r *Round) Use(f *First) {
	if f != nil && reflect.DeepEqual(f.setup, r.Setup) && f.limits == r.Limits {
		r.first = f
	}
}

// orFirst is the making of pictures, with picture 0 out of f where that came to
// one.
func orFirst(f *First, picture func(int) (*Picture, error)) func(int) (*Picture, error) {
	return func(number int) (*Picture, error) {
		if number == 0 && f != nil {
			if <-f.ready; f.err == nil {
				return f.picture, nil
			}
		}
		return picture(number)
	}
}
