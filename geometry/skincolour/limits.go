package skincolour

import (
	"errors"
	"fmt"

	"ogive/geometry/norms"
	"ogive/geometry/plane"
)

// LimitsRow is the id of the row of normal values that holds the limits.
const LimitsRow = "colour-difference"

// Limits are the colour differences on hand skin that are seen and that are
// still accepted, in CIELAB.
type Limits struct {
	SeenFair, AcceptedFair, SeenDark, AcceptedDark float64
	// Source is where they come from.
	Source string
}

// LimitsOf reads the limits out of a table of normal values.
func LimitsOf(t norms.Table) (Limits, error) {
	row, ok := t.Row(LimitsRow)
	if !ok {
		return Limits{}, fmt.Errorf("the table of normal values has no row %q; take it over from the program's own table", LimitsRow)
	}
	l := Limits{Source: row.Source}
	var faults []error
	for _, part := range []struct {
		of string
		to *float64
	}{
		{"seen, fair skin", &l.SeenFair}, {"accepted, fair skin", &l.AcceptedFair},
		{"seen, dark skin", &l.SeenDark}, {"accepted, dark skin", &l.AcceptedDark},
	} {
		x, ok := number(row, part.of)
		if !ok {
			faults = append(faults, fmt.Errorf("row %q has no number of %q; take it over from the program's own table", LimitsRow, part.of))
		}
		*part.to = x
	}
	return l, errors.Join(faults...)
}

func number(row norms.Row, of string) (float64, bool) {
	for _, n := range row.Numbers {
		if n.Of == of {
			return n.High, true
		}
	}
	return 0, false
}

// Findings on a colour difference.
const (
	NotSeen     = "too small to be seen"
	Accepted    = "seen, but accepted"
	NotAccepted = "seen and not accepted"
)

// Judge is the verdict on a difference, by the limits for fair or for dark skin
// as the fairer of the two samples has it. Fair limits are the stricter ones.
// The limits come from hand prostheses and not from living skin, and are
// published in CIELAB: that is the difference judged here.
func (l Limits) Judge(c Comparison) norms.Verdict {
	seen, accepted := l.SeenDark, l.AcceptedDark
	if ToneOf(max(c.First.Colour.ITA(), c.Second.Colour.ITA())).Fair() {
		seen, accepted = l.SeenFair, l.AcceptedFair
	}
	v := norms.Verdict{Figure: "colour difference", Against: "published values"}
	d := c.CIELAB
	switch {
	case d.Value > accepted:
		v.Finding, v.Limit, v.Certain = NotAccepted, accepted, d.Low() > accepted
	case d.Value > seen:
		v.Finding, v.Limit, v.Certain = Accepted, nearer(d.Value, seen, accepted), within(d, seen, accepted)
	default:
		v.Finding, v.Limit, v.Certain = NotSeen, seen, d.High() <= seen
	}
	return v
}

func within(d plane.Estimate[float64], low, high float64) bool {
	return d.Low() > low && d.High() <= high
}

func nearer(x, a, b float64) float64 {
	if x-a <= b-x {
		return a
	}
	return b
}
