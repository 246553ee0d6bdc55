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

	"ogive/geometry/comparison"
	"ogive/imaging/measure"
)

// ErrNothingRead says that marks on a photograph come to no figure yet.
var ErrNothingRead = errors.New("nothing is marked yet that can be read; mark the scale, the joints and a web")

// Unready says which of two photographs can't be compared yet, and why.
type Unready struct {
	Other bool // the other hand or the earlier sitting
	Err   error
}

func (u Unready) Error() string {
	if u.Other {
		return "the photograph of the other hand: " + u.Err.Error()
	}
	return "the photograph of the operated hand: " + u.Err.Error()
}

// Unwrap is the reason.
func (u Unready) Unwrap() error { return u.Err }

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

// New is two measured photographs with their comparison. The error is an
// Unready where nothing was read of one of them, else that of
// comparison.Compare.
func New(operated, other measure.Result, with measure.Settings) (Pair, error) {
	p := Pair{Operated: operated, Other: other}
	for i, r := range []measure.Result{operated, other} {
		if len(r.Reading.Webs) == 0 {
			return p, Unready{Other: i == 1, Err: ErrNothingRead}
		}
	}
	var err error
	p.Comparison, err = Results(operated, other, with)
	return p, err
}

// Subjects measures two photographs and compares them, with the errors of New.
func Subjects(operated, other measure.Subject, with measure.Settings) (Pair, error) {
	a, err := Measured(operated, with)
	if err != nil {
		return Pair{}, Unready{Err: err}
	}
	b, err := Measured(other, with)
	if err != nil {
		return Pair{}, Unready{Other: true, Err: err}
	}
	return New(a, b, with)
}

// Measured is the subject measured, or ErrNothingRead.
func Measured(s measure.Subject, with measure.Settings) (measure.Result, error) {
	if s.Marks.Reference == nil || len(s.Marks.Marks.Webs) == 0 {
		return measure.Result{}, ErrNothingRead
	}
	return s.Measure(with)
}
