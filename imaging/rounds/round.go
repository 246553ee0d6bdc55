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
	first  *First // made ahead, or nil
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
// order, kept beside r. Each further time the order is another one.
func (r *Round) Again(at time.Time) (*Round, error) {
	first := r.ID
	if r.Repeats != "" {
		first = r.Repeats
	}
	again := &Round{
		Observer: r.Observer, Begun: at, Setup: r.Setup, Limits: r.Limits,
		Repeats: first, Order: slices.Sorted(slices.Values(r.Order)), folder: r.folder, drawn: r.drawn,
	}
	rng := rand.New(rand.NewPCG(r.Setup.Seed, uint64(r.repeatsOf(first)+1)))
	for len(r.Order) > 1 {
		rng.Shuffle(len(again.Order), func(i, j int) { again.Order[i], again.Order[j] = again.Order[j], again.Order[i] })
		if !slices.Equal(again.Order, r.Order) {
			break
		}
	}
	return again, again.keepNew()
}

// repeatsOf is how many rounds in the folder repeat the first one.
func (r *Round) repeatsOf(first string) int {
	n := 0
	all, _ := List(r.folder) // one that can't be read counts for nothing here
	for _, other := range all {
		if other.Repeats == first {
			n++
		}
	}
	return n
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
