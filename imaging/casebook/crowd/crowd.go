// Package crowd fills a casebook with many invented cases, to see how it bears
// years of use.
//
//	err := crowd.Fill(folder, 1000, 10000, nil)
//
// Every case has a joined web that is released and followed, both hands
// photographed and marked on each day, and an appraisal. The first case has
// forty photographs. The same numbers give the same casebook.
package crowd

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"time"

	"ogive/geometry/hand"
	"ogive/imaging/appraisal"
	"ogive/imaging/casebook"
	"ogive/imaging/casebook/readings"
)

// largeCase is how many photographs the first case has, if there are enough.
const largeCase = 40

// Fill makes a casebook in folder with that many cases, and so many photographs
// spread evenly over them, two on a day. After each case progress (which may be
// nil) is called.
func Fill(folder string, cases, photographs int, progress func(done, all int)) (err error) {
	book, err := casebook.Open(folder)
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, book.Close()) }()
	originals, err := os.MkdirTemp("", "crowd")
	if err != nil {
		return err
	}
	defer func() { _ = os.RemoveAll(originals) }() // a temporary folder
	hands, err := hands()
	if err != nil {
		return err
	}
	f := filling{book: book, originals: originals, hands: hands}
	if f.readings, err = readings.In(book, f.hands.with); err != nil {
		return err
	}
	first := 0
	if photographs >= 10*largeCase && cases > 1 {
		first = largeCase
	}
	for i := range cases {
		from, to := 0, first
		if first == 0 || i > 0 {
			from, to = share(i, cases, photographs, first)
		}
		if err := f.addCase(i, from, to); err != nil {
			return err
		}
		if progress != nil {
			progress(i+1, cases)
		}
	}
	return nil
}

// share is which photographs belong to a case.
func share(i, cases, photographs, first int) (from, to int) {
	if first > 0 {
		i, cases = i-1, cases-1
	}
	rest := photographs - first
	return first + rest*i/cases, first + rest*(i+1)/cases
}

type filling struct {
	book      *casebook.Casebook
	readings  *readings.Book
	originals string
	hands     *palette
}

func (f filling) addCase(i, from, to int) error {
	operated := time.Date(2012, 1, 1, 0, 0, 0, 0, time.UTC).AddDate(0, 0, i*4)
	side, hands := hand.Left, casebook.LeftHand
	if i%2 == 1 {
		side, hands = hand.Right, casebook.RightHand
	}
	id, err := f.book.AddCase(casebook.Case{
		Code: fmt.Sprintf("C-%04d", i), Hand: hands, Born: casebook.Month(operated.AddDate(-2, 0, 0).Format("2006-01")),
		Findings: []string{"", "missing middle phalanx", "nail joined"}[i%3],
		Joins:    []casebook.Join{{Hand: side, Web: hand.ThirdWeb, Kind: casebook.Simple, Extent: casebook.Complete, Operated: casebook.DateOf(operated)}},
	})
	if err != nil {
		return err
	}
	for n := from; n < to; n++ {
		day := casebook.DateOf(operated.AddDate(0, 6*((n-from)/2), 0))
		on := side
		if (n-from)%2 == 1 {
			on = side.Other()
		}
		if err := f.addPhotograph(id, n, on, day); err != nil {
			return err
		}
	}
	return f.appraise(id, side)
}

func (f filling) addPhotograph(id int64, n int, side hand.Side, day casebook.Date) error {
	path := filepath.Join(f.originals, fmt.Sprintf("%d.jpg", n))
	if err := os.WriteFile(path, f.hands.picture(n), 0o666); err != nil {
		return err
	}
	results, err := f.book.Import(context.Background(), id, []casebook.Item{{Path: path, Hand: side, View: hand.Dorsal, Date: day}}, nil)
	if err != nil {
		return err
	}
	if results[0].Err != nil {
		return results[0].Err
	}
	h, r, err := f.hands.hand(n, side)
	if err != nil {
		return err
	}
	if err := f.book.SaveMarks(results[0].Photograph, "AB", h); err != nil {
		return err
	}
	return errors.Join(os.Remove(path), f.readings.Keep(results[0].Photograph, "AB", h, r))
}

func (f filling) appraise(id int64, side hand.Side) error {
	sittings, err := f.book.Sittings(id)
	if err != nil {
		return err
	}
	web := appraisal.Web(side, hand.ThirdWeb)
	for i, s := range sittings {
		a := appraisal.Appraisal{Observer: "AB"}
		for _, k := range append([]appraisal.Key{appraisal.Look, appraisal.Feel}, appraisal.ScarScale...) {
			found, _ := appraisal.Find(k)
			a.Set(appraisal.Given{Finding: k, Place: web, Choice: found.Choices[i%len(found.Choices)].Key})
		}
		if err := f.book.SaveAppraisal(s.ID, a); err != nil {
			return err
		}
	}
	return nil
}
