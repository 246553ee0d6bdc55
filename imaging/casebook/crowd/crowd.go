// Package crowd fills a casebook with many invented cases and tiny photographs,
// to see how it bears years of use.
//
//	err := crowd.Fill(folder, 1000, 10000)
package crowd

import (
	"bytes"
	"context"
	"fmt"
	"image"
	"image/color"
	"image/jpeg"
	"os"
	"path/filepath"
	"time"

	"ogive/geometry/hand"
	"ogive/imaging/casebook"
)

// Fill makes a casebook in folder with that many cases, and so many photographs
// spread evenly over them, on up to five days each. The same numbers give the
// same casebook.
func Fill(folder string, cases, photographs int) error {
	book, err := casebook.Open(folder)
	if err != nil {
		return err
	}
	originals, err := os.MkdirTemp("", "crowd")
	if err != nil {
		return err
	}
	defer func() { _ = os.RemoveAll(originals) }() // a temporary folder
	for i := range cases {
		if err := addCase(book, originals, i, photographs*i/cases, photographs*(i+1)/cases); err != nil {
			return err
		}
	}
	return book.Close()
}

func addCase(book *casebook.Casebook, originals string, i, from, to int) error {
	first := time.Date(2012, 1, 1, 0, 0, 0, 0, time.UTC).AddDate(0, 0, i*4)
	side := hand.Left
	hands := casebook.LeftHand
	if i%2 == 1 {
		side, hands = hand.Right, casebook.RightHand
	}
	id, err := book.AddCase(casebook.Case{
		Code: fmt.Sprintf("C-%04d", i), Hand: hands, Findings: []string{"", "missing middle phalanx", "nail joined"}[i%3],
		Joins: []casebook.Join{{Hand: side, Web: hand.Web(2 + i%3), Kind: casebook.Simple, Extent: casebook.Complete, Operated: casebook.DateOf(first)}},
	})
	if err != nil {
		return err
	}
	var items []casebook.Item
	for n := from; n < to; n++ {
		path := filepath.Join(originals, fmt.Sprintf("%d.jpg", n))
		if err := os.WriteFile(path, tiny(n), 0o666); err != nil {
			return err
		}
		items = append(items, casebook.Item{Path: path, Hand: side, View: hand.Dorsal, Date: casebook.DateOf(first.AddDate(0, 6*(n%5), 0))})
	}
	results, err := book.Import(context.Background(), id, items, nil)
	if err != nil {
		return err
	}
	for _, r := range results {
		if r.Err != nil {
			return r.Err
		}
	}
	return nil
}

// tiny is a photograph whose squares spell its number.
func tiny(n int) []byte {
	m := image.NewRGBA(image.Rect(0, 0, 32, 32))
	for i := range 16 {
		if n>>i&1 == 1 {
			for k := range 64 {
				m.SetRGBA(i%4*8+k%8, i/4*8+k/8, color.RGBA{230, 200, 180, 255})
			}
		}
	}
	var out bytes.Buffer
	if err := jpeg.Encode(&out, m, nil); err != nil {
		panic(err) // a buffer takes all
	}
	return out.Bytes()
}
