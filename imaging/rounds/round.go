package rounds

import (
	"fmt"
	"math/rand/v2"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"time"

	"ogive/geometry/norms"
	"ogive/imaging/phantom"
)

// Round is one round of one observer. Its exported fields are what is kept on the
// disk; change it only through its methods, of which one may run at a time.
type Round struct {
	ID       string
	Observer string
	Begun    time.Time
	Setup    Setup
	Limits   Limits
	// Repeats is the ID of the round whose pictures these are in another order,
	// empty for a round of its own.
	Repeats string
	// Order lists the numbers of the drawn pictures, from 0, in the order in which
	// they are shown.
	Order   []int
	Results []Result // of the pictures answered so far, in that order

	folder string
	drawn  []phantom.Case
	draft  sync.Mutex
}

// Begin is a new round, kept in the folder, which is made if it is not there. Its
// phantoms are drawn, but none is painted yet.
func Begin(folder, observer string, s Setup, table norms.Table, at time.Time) (*Round, error) {
	s = s.Filled()
	if err := s.Check(); err != nil {
		return nil, err
	}
	limits, err := limitsOf(table)
	if err != nil {
		return nil, err
	}
	r := &Round{Observer: strings.TrimSpace(observer), Begun: at, Setup: s, Limits: limits, folder: folder}
	for i := range s.Count {
		r.Order = append(r.Order, i)
	}
	if r.drawn, err = r.cases(); err != nil {
		return nil, err
	}
	return r, r.keepNew()
}

// Again is a new round of the same observer with the same pictures in another
// order, kept beside r.
func (r *Round) Again(at time.Time) (*Round, error) {
	again := &Round{
		Observer: r.Observer, Begun: at, Setup: r.Setup, Limits: r.Limits,
		Repeats: r.ID, Order: slices.Clone(r.Order), folder: r.folder, drawn: r.drawn,
	}
	rng := rand.New(rand.NewPCG(r.Setup.Seed, uint64(at.UnixNano())))
	for len(r.Order) > 1 && slices.Equal(again.Order, r.Order) {
		rng.Shuffle(len(again.Order), func(i, j int) { again.Order[i], again.Order[j] = again.Order[j], again.Order[i] })
	}
	return again, again.keepNew()
}

// Done reports whether every picture is answered.
func (r *Round) Done() bool { return len(r.Results) >= len(r.Order) }

// Progress is how many pictures are answered, of how many.
func (r *Round) Progress() (done, of int) { return len(r.Results), len(r.Order) }

// Path is the file in which the round is kept.
func (r *Round) Path() string { return filepath.Join(r.folder, r.ID+fileEnd) }

// cases are the round's phantoms by number; none for photographs.
func (r *Round) cases() ([]phantom.Case, error) {
	if r.drawn == nil && len(r.Setup.Photographs) == 0 {
		drawn, err := cases(r.Setup, r.Limits)
		if err != nil {
			return nil, fmt.Errorf("the round can't be drawn: %w", err)
		}
		r.drawn = drawn
	}
	return r.drawn, nil
}

// FreshSeed is a seed that none of the rounds has, so that a new one shows other
// pictures.
func FreshSeed(rounds []*Round) uint64 {
	seed := uint64(1)
	for _, r := range rounds {
		if r.Setup.Seed >= seed && r.Setup.Seed < 1<<40 {
			seed = r.Setup.Seed + 1
		}
	}
	return seed
}
