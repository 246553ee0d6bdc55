package rounds

import (
	"context"
	"errors"

	"ogive/imaging/measure"
)

// ahead is how many finished pictures wait at most, so that memory stays bounded;
// one more is in the making.
const ahead = 2

// Supply makes the pictures of a round ahead, in the order in which they are
// asked for, while the learner thinks. It serves one goroutine at a time.
type Supply struct {
	pictures <-chan made
	stop     context.CancelFunc
	last     *made
}

type made struct {
	picture *Picture
	err     error
}

// ErrNoMore says that the round has no further picture.
var ErrNoMore = errors.New("the round has no further picture")

// Supply begins to make the pictures that are not answered yet. Library is where
// the photographs of a casebook come from, nil for phantoms. Close it when the
// round is left.
func (r *Round) Supply(ctx context.Context, settings measure.Settings, library Library) (*Supply, error) {
	drawn, err := r.cases()
	if err != nil {
		return nil, err
	}
	m := maker{r.Setup, r.Limits, drawn, settings, library}
	wanted := append([]int(nil), r.Order[len(r.Results):]...)
	ctx, stop := context.WithCancel(ctx)
	waiting := ahead
	if len(r.Setup.Photographs) > 0 {
		waiting = 1 // they may be ten times as large
	}
	pictures := make(chan made, waiting)
	go produce(ctx, wanted, orFirst(r.first, m.picture), pictures)
	return &Supply{pictures: pictures, stop: stop}, nil
}

// produce makes the wanted pictures in order, as fast as they are taken.
func produce(ctx context.Context, wanted []int, picture func(number int) (*Picture, error), into chan<- made) {
	defer close(into)
	for _, number := range wanted {
		if ctx.Err() != nil {
			return
		}
		p, err := picture(number)
		select {
		case into <- made{p, err}:
		case <-ctx.Done():
			return
		}
		if err != nil {
			return
		}
	}
}

// Next is the next picture; it waits until it is made. The error is ErrNoMore after
// the last one, and the context's if that ends first.
func (s *Supply) Next(ctx context.Context) (*Picture, error) {
	if s.last != nil {
		return nil, s.last.err
	}
	select {
	case m, open := <-s.pictures:
		if !open {
			m.err = ErrNoMore
		}
		if m.err != nil {
			s.last = &m
		}
		return m.picture, m.err
	case <-ctx.Done():
		return nil, ctx.Err()
	}
}

// Close stops the making; it does not wait for the picture in hand.
func (s *Supply) Close() { s.stop() }
