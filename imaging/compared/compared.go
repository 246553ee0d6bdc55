// Package compared holds two measured photographs against each other, the
// operated hand first, and makes what of it can leave the program: a picture and
// a table.
//
//	c, err := compared.Results(operated, other, settings)
//	picture := compared.Picture(photograph, operated, c, titles)
//	text := compared.Table(c, titles)
//
// A window that has photographs and marks only may start from those:
//
//	pair, err := compared.Subjects(operated, other, settings)
package compared

import (
	"errors"
	"fmt"

	"ogive/geometry/comparison"
	"ogive/imaging/measure"
)

// ErrNothingRead says that marks on a photograph come to no figure yet.
var ErrNothingRead = errors.New("nothing is marked that can be read")

// Of is a measured photograph, ready to be compared.
func Of(r measure.Result) comparison.Photograph {
	return comparison.Photograph{Marks: r.Marks.Marks, Scale: r.Scale, Reading: r.Reading}
}

// Results compares two measured photographs, the operated hand or the later
// sitting first.
func Results(operated, other measure.Result, with measure.Settings) (comparison.Comparison, error) {
	return comparison.Compare(Of(operated), Of(other), with.Norms.Span)
}

// Pair is two measured photographs and what they say together.
type Pair struct {
	Operated, Other measure.Result
	Comparison      comparison.Comparison
}

// Subjects measures two photographs and compares them. The error says which of
// them can't be measured, and the mend.
func Subjects(operated, other measure.Subject, with measure.Settings) (Pair, error) {
	var p Pair
	var err error
	if p.Operated, err = measured(operated, with); err != nil {
		return p, fmt.Errorf("the photograph of the operated hand: %w", err)
	}
	if p.Other, err = measured(other, with); err != nil {
		return p, fmt.Errorf("the photograph beside it: %w", err)
	}
	p.Comparison, err = Results(p.Operated, p.Other, with)
	return p, err
}

func measured(s measure.Subject, with measure.Settings) (measure.Result, error) {
	if s.Marks.Reference == nil || len(s.Marks.Marks.Webs) == 0 {
		return measure.Result{}, ErrNothingRead
	}
	return s.Measure(with)
}
