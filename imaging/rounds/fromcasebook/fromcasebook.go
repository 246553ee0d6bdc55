// Package fromcasebook makes teaching rounds out of the photographs of a casebook,
// with the marks of a reference observer for the truth.
//
//	given, err := fromcasebook.Photographs(book, "CD")
//	round, err := rounds.Begin(folder, "AB", rounds.Setup{Kind: rounds.Blind, Photographs: given}, table, now)
//	supply, err := round.Supply(ctx, settings, fromcasebook.Library{Book: book})
//
// Nothing of a case but its photograph reaches the learner, and a round keeps no
// more of it than the photograph's number.
package fromcasebook

import (
	"fmt"
	"math/rand/v2"
	"strconv"

	"ogive/imaging/casebook"
	"ogive/imaging/marksfile"
	"ogive/imaging/photo"
	"ogive/imaging/rounds"
)

// Library gives the photographs of a casebook to a round. It may be used by several
// goroutines while the casebook is open.
type Library struct{ Book *casebook.Casebook }

// Photograph is the photograph of that key.
func (l Library) Photograph(key string) (*photo.Photograph, error) {
	id, err := number(key)
	if err != nil {
		return nil, err
	}
	p, err := l.Book.Photograph(id)
	if err != nil {
		return nil, err
	}
	return photo.Open(l.Book.Path(p))
}

// Marks are an observer's latest marks on the photograph of that key.
func (l Library) Marks(key, observer string) (marksfile.File, error) {
	id, err := number(key)
	if err != nil {
		return marksfile.File{}, err
	}
	f, there, err := l.Book.Marks(id, observer)
	if err == nil && !there {
		err = fmt.Errorf("%s has no marks on it any more; choose another reference observer", observer)
	}
	return f, err
}

func number(key string) (int64, error) {
	id, err := strconv.ParseInt(key, 10, 64)
	if err != nil {
		return 0, fmt.Errorf("%.40q is no photograph of a casebook; begin another round", key)
	}
	return id, nil
}

// Photographs is every photograph of the casebook on which the observer's marks can
// be measured, by case, date and photograph.
func Photographs(book *casebook.Casebook, observer string) ([]rounds.Reference, error) {
	all, err := book.Marked(0, "")
	if err != nil {
		return nil, err
	}
	var list []rounds.Reference
	for _, m := range all {
		if m.Observer != observer {
			continue
		}
		f, there, err := book.Marks(m.Photograph, observer)
		if err != nil {
			return nil, err
		}
		if there && f.Complete() == nil {
			list = append(list, rounds.Reference{Key: strconv.FormatInt(m.Photograph, 10), Observer: observer})
		}
	}
	return list, nil
}

// Drawn is count of the photographs, drawn at random for that seed, so that a round
// is not always the same; all of them if there are no more.
func Drawn(all []rounds.Reference, count int, seed uint64) []rounds.Reference {
	out := append([]rounds.Reference(nil), all...)
	rng := rand.New(rand.NewPCG(seed, 0xca5e))
	rng.Shuffle(len(out), func(i, j int) { out[i], out[j] = out[j], out[i] })
	return out[:min(max(count, 0), len(out), rounds.MaxCount)]
}
