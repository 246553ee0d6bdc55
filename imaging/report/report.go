// Package report writes readings for others to use: as JSON for programs, as
// CSV for statistics, as a table for a surgeon.
//
//	err := report.JSON(os.Stdout, report.Entry{Path: "marks.json", Result: result})
//	err := report.CSV(os.Stdout, entries)
//	err := report.Table(os.Stdout, entries)
//
// A figure that can't be computed is left out, never written as a zero or as
// what is no number.
package report

import (
	"math"
	"strconv"

	"ogive/geometry/plane"
	"ogive/imaging/measure"
)

// Entry is the result of one marks file and where that lies.
type Entry struct {
	Path   string
	Result measure.Result
}

// estimate is a figure with its expanded uncertainty at 95 per cent.
type estimate struct {
	Value number `json:"value"`
	U95   number `json:"u95"`
}

// estimated is e in the unit that unit makes of it, or nil where the figure is
// not known.
func estimated[Q plane.Measured](e *plane.Estimate[Q], unit func(Q) float64) *estimate {
	if e == nil {
		return nil
	}
	value, u95 := unit(e.Value), unit(e.U95)
	if !finite(value) || !finite(u95) {
		return nil
	}
	return &estimate{number(value), number(u95)}
}

func plain[Q plane.Measured](q Q) float64 { return float64(q) }

func degrees(a plane.Angle) float64 { return a.Degrees() }

// number is written with six significant digits, more than any figure has, and
// what is smaller than a billionth as zero.
type number float64

func (n number) String() string {
	// Through the number again, so that no digits are left that six do not tell.
	x, err := strconv.ParseFloat(strconv.FormatFloat(float64(n), 'g', 6, 64), 64)
	if err != nil {
		return ""
	}
	if math.Abs(x) < 1e-9 {
		x = 0
	}
	return strconv.FormatFloat(x, 'f', -1, 64)
}

// MarshalJSON is the number with six significant digits.
func (n number) MarshalJSON() ([]byte, error) { return []byte(n.String()), nil }

func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }
