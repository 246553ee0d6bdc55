package main

import (
	"context"
	"errors"

	"github.com/rogpeppe/go-internal/testscript"

	"ogive/geometry/hand"
	"ogive/imaging/appraisal"
	"ogive/imaging/casebook"
	"ogive/imaging/marksfile"
)

// makeCasebook makes a casebook with one case under the given code, photo.png
// and the marks on it, and an appraisal.
func makeCasebook(ts *testscript.TestScript, _ bool, args []string) {
	book, err := casebook.Open(ts.MkAbs(args[0]))
	ts.Check(err)
	id, err := book.AddCase(casebook.Case{Code: args[1], Born: "2023-01", Hand: casebook.RightHand,
		Joins: []casebook.Join{{Hand: hand.Right, Web: hand.ThirdWeb, Kind: casebook.Simple, Operated: "2024-01-10"}}})
	ts.Check(err)
	results, err := book.Import(context.Background(), id, []casebook.Item{{Path: ts.MkAbs("photo.png"), Hand: hand.Right, View: hand.Dorsal, Date: "2024-07-10"}}, nil)
	ts.Check(errors.Join(err, results[0].Err))
	f, err := marksfile.Parse([]byte(ts.ReadFile("marks.json")))
	ts.Check(err)
	f.Marks.Junctions = nil
	ts.Check(book.SaveMarks(results[0].Photograph, "AB", f))
	p, err := book.Photograph(results[0].Photograph)
	ts.Check(err)
	a := appraisal.Appraisal{Observer: "AB", Remarks: "seen with the mother"}
	a.Set(appraisal.Given{Finding: appraisal.Feel, Place: appraisal.Web(hand.Right, hand.ThirdWeb), Choice: "soft"})
	ts.Check(errors.Join(book.SaveAppraisal(p.Sitting, a), book.Close()))
}
