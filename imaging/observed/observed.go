// Package observed gathers from a casebook what several observers read on the
// same photographs, and what one observer read on the same photographs at several
// occasions.
//
//	reader, err := observed.In(casebook, settings) // keep it: it remembers older revisions
//	found, err := reader.Read(ctx, 0, progress)    // all cases; else the ID of one
//	found.Between                                  // observers against each other: the latest marks of each
//	found.Within                                   // occasions of one observer, numbered from 1
//	found.Passed                                   // what could not be read, and why
//
// Package observations sorts both into tables whose agreement can be told. A
// target is one web on one photograph, named by the case's code and never by a
// file or a person.
//
// An occasion is a piece of work in which the points were placed anew. Marks that
// were opened again and corrected keep most of their points, and two readings of
// the same points say nothing about how well an observer repeats herself: such a
// revision takes the place of the one that it corrects.
package observed

import (
	"context"
	"fmt"
	"sync"

	"ogive/imaging/casebook"
	"ogive/imaging/casebook/readings"
	"ogive/imaging/measure"
	"ogive/imaging/observations"
)

// Found is what observers read.
type Found struct {
	// Between is the latest readings on photographs that two or more marked. It
	// knows no occasions.
	Between []observations.Observation
	// Within is the readings of observers who placed the points of a web anew at
	// another occasion.
	Within []observations.Observation
	// Photographs is how many photographs either rests on.
	Photographs int
	// Corrected is how many revisions were corrections of the one before.
	Corrected int
	// Shared is how many webs two observers marked with the very same points, as
	// where both accepted what the program proposed: there they agree without
	// having judged apart.
	Shared int
	// Passed says what was passed over, and why.
	Passed []string
}

// Reader reads what was observed. Its methods may be called by several
// goroutines.
type Reader struct {
	book *casebook.Casebook
	kept *readings.Book
	with measure.Settings

	lock  sync.Mutex
	older map[revision]older
}

// In reads the marks of the casebook with those settings.
func In(book *casebook.Casebook, with measure.Settings) (*Reader, error) {
	kept, err := readings.In(book, with)
	if err != nil {
		return nil, err
	}
	return &Reader{book: book, kept: kept, with: with, older: map[revision]older{}}, nil
}

// photograph is one that was marked more than once.
type photograph struct {
	id        int64
	name      string // as a target is named, without the web
	observers []marker
}

// marker is an observer with all marks made on a photograph.
type marker struct {
	name      string
	revisions []casebook.Revision
}

// Read gathers what was observed in one case, or for 0 in all. It takes as long
// as opening every photograph whose readings are not kept; after each,
// progress (which may be nil) is called with how many of how many are done. It
// fails if the casebook can't be read or ctx ends.
func (r *Reader) Read(ctx context.Context, caseID int64, progress func(done, all int)) (Found, error) {
	all, err := r.marked(ctx, caseID)
	if err != nil {
		return Found{}, err
	}
	parts := make([]Found, len(all))
	var done int
	var one sync.Mutex
	spread(len(all), func(i int) {
		if ctx.Err() != nil {
			return
		}
		parts[i] = r.read(all[i])
		one.Lock()
		defer one.Unlock()
		if done++; progress != nil {
			progress(done, len(all))
		}
	})
	if err := ctx.Err(); err != nil {
		return Found{}, err
	}
	var out Found
	for _, p := range parts {
		out.Between, out.Within = append(out.Between, p.Between...), append(out.Within, p.Within...)
		out.Passed = append(out.Passed, p.Passed...)
		out.Photographs += p.Photographs
		out.Corrected += p.Corrected
		out.Shared += p.Shared
	}
	return out, nil
}

// marked is the photographs that were marked by several or at several times.
func (r *Reader) marked(ctx context.Context, caseID int64) ([]photograph, error) {
	list, err := r.book.Marked(caseID, "")
	if err != nil {
		return nil, err
	}
	var out []photograph
	names := map[int64]string{}
	for from := 0; from < len(list); {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		to := from
		p := photograph{id: list[from].Photograph}
		for ; to < len(list) && list[to].Photograph == p.id; to++ {
			history, err := r.book.History(p.id, list[to].Observer)
			if err != nil {
				return nil, err
			}
			p.observers = append(p.observers, marker{list[to].Observer, history})
		}
		if len(p.observers) > 1 || len(p.observers[0].revisions) > 1 {
			if p.name, err = r.name(list[from].Case, p.id, names); err != nil {
				return nil, err
			}
			out = append(out, p)
		}
		from = to
	}
	return out, nil
}

// name is the case's code and the photograph's number within it; names remembers
// those of a case.
func (r *Reader) name(caseID, id int64, names map[int64]string) (string, error) {
	if known, ok := names[id]; ok {
		return known, nil
	}
	of, err := r.book.Case(caseID)
	if err != nil {
		return "", err
	}
	photographs, err := r.book.Photographs(caseID)
	if err != nil {
		return "", err
	}
	for i, p := range photographs {
		names[p.ID] = fmt.Sprintf("%s photograph %d", of.Code, i+1)
	}
	return names[id], nil
}
