package example

import (
	"context"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"runtime"

	"ogive/geometry/hand"
	"ogive/imaging/casebook"
	"ogive/imaging/casebook/readings"
	"ogive/imaging/marksfile"
	"ogive/imaging/measure"
)

// shot is one photograph and what its observer clicked.
type shot struct {
	path  string
	side  hand.Side
	date  casebook.Date
	marks marksfile.File
}

// photograph draws both hands at every visit, several at a time.
func photograph(ctx context.Context, folder string, did func()) ([]shot, error) {
	type drawn struct {
		at   int
		shot shot
		err  error
	}
	n := 2 * len(visits)
	done, turns := make(chan drawn, n), make(chan struct{}, runtime.GOMAXPROCS(0))
	for i := range n {
		go func() {
			turns <- struct{}{}
			defer func() { <-turns }()
			if err := ctx.Err(); err != nil {
				done <- drawn{err: err}
				return
			}
			s, err := draw(folder, i)
			done <- drawn{i, s, err}
		}()
	}
	shots := make([]shot, n)
	var failed error
	// All are waited for, so that none writes into a folder that is being removed.
	for range n {
		d := <-done
		if d.err != nil {
			failed = d.err
			continue
		}
		shots[d.at] = d.shot
		did()
	}
	return shots, failed
}

// draw draws the photograph i: of visit i/2, the operated hand first.
func draw(folder string, i int) (shot, error) {
	v, side, seed := visits[i/2], operatedHand, uint64(101+i)
	if i%2 == 1 {
		side = operatedHand.Other()
	}
	picture, err := v.picture(side, seed).Render()
	if err != nil {
		return shot{}, err
	}
	s := shot{path: filepath.Join(folder, fmt.Sprintf("%s-%s.jpg", v.date, side)), side: side, date: v.date}
	s.marks.Marks, s.marks.Reference = picture.Truth.Marks(hand.DefaultClickSD, rand.New(rand.NewPCG(seed, 2)))
	return s, os.WriteFile(s.path, picture.JPEG, 0o600)
}

// bring imports the photographs with their marks, and the plan of the operation.
func bring(ctx context.Context, book *casebook.Casebook, id int64, shots []shot, did func()) error {
	var items []casebook.Item
	for _, s := range shots {
		items = append(items, casebook.Item{Path: s.path, Hand: s.side, View: hand.Dorsal, Date: s.date})
	}
	results, err := book.Import(ctx, id, items, func(int, int, casebook.Result) { did() })
	if err != nil {
		return err
	}
	for i, r := range results {
		if r.Err != nil {
			return r.Err
		}
		if err := book.SaveMarks(r.Photograph, Observer, shots[i].marks); err != nil {
			return err
		}
		if s := shots[i]; s.date < operated && s.side == operatedHand {
			if err := intend(book, r.Photograph, s); err != nil {
				return err
			}
		}
	}
	return nil
}

// read computes every reading, so that chart and comparison open at once.
func read(ctx context.Context, book *casebook.Casebook, id int64, did func()) error {
	settings, err := measure.Defaults()
	if err != nil {
		return err
	}
	read, err := readings.In(book, settings)
	if err != nil {
		return err
	}
	items, err := read.Case(ctx, id, func(int, int) { did() })
	if err != nil {
		return err
	}
	for _, it := range items {
		if it.Err != nil {
			return it.Err
		}
	}
	return nil
}
