package audit

import (
	"slices"
	"strconv"
	"strings"

	"ogive/geometry/norms"
	"ogive/geometry/plane"
	"ogive/geometry/reading"
)

// column is one column of the table and its line in the dictionary.
type column struct {
	name, meaning, unit, values, source string
	// text says that the cell is free to hold what a user typed.
	text bool
	of   func(*Row) string
}

// columns are all columns, in order. Add a column here and nowhere else.
var columns = slices.Concat(whose(), what(), figures(), followed(), beside(), appraised(), remarks())

const (
	program = "this program"
	user    = "entered by the user"
	yesNo   = "true, false"
	u95Note = "expanded uncertainty at 95 per cent: the truth is expected within the figure and this much either way"
	jcgm    = "JCGM 100:2008; JCGM 101:2008"
)

// estimate is a figure and its uncertainty, in two columns.
func estimate[Q plane.Measured](name, suffix, meaning, unit, source string, in func(Q) float64, of func(*Row) *plane.Estimate[Q]) []column {
	cell := func(pick func(plane.Estimate[Q]) Q) func(*Row) string {
		return func(r *Row) string {
			if e := of(r); e != nil {
				return number(in(pick(*e)))
			}
			return ""
		}
	}
	return []column{
		{name: name + suffix, meaning: meaning, unit: unit, values: "number", source: source, of: cell(func(e plane.Estimate[Q]) Q { return e.Value })},
		{name: name + "_u95" + suffix, meaning: u95Note, unit: unit, values: "number, 0 or more", source: jcgm, of: cell(func(e plane.Estimate[Q]) Q { return e.U95 })},
	}
}

func plain[Q plane.Measured](q Q) float64 { return float64(q) }

func degrees(a plane.Angle) float64 { return a.Degrees() }

// ofWeb is a figure of the web that was read.
func ofWeb[Q plane.Measured](pick func(*reading.Web) *plane.Estimate[Q]) func(*Row) *plane.Estimate[Q] {
	return func(r *Row) *plane.Estimate[Q] {
		if r.Read == nil {
			return nil
		}
		return pick(r.Read)
	}
}

// verdict is the verdict on one figure, in three columns.
func verdict(name, figure, meaning, values string, of func(*Row) []norms.Verdict) []column {
	cell := func(write func(norms.Verdict) string) func(*Row) string {
		return func(r *Row) string {
			for _, v := range of(r) {
				if v.Figure == figure {
					return write(v)
				}
			}
			return ""
		}
	}
	return []column{
		{name: name + "_verdict", meaning: meaning, values: values, source: program, of: cell(func(v norms.Verdict) string { return v.Finding })},
		{name: name + "_verdict_certain", meaning: "true only if the whole 95 per cent interval bears the verdict out; a verdict that is not certain is doubtful", values: yesNo, source: program,
			of: cell(func(v norms.Verdict) string { return strconv.FormatBool(v.Certain) })},
		{name: name + "_limit", meaning: "the limit the figure was judged by, in the unit of the figure", values: "number", source: "normal values of the program or the user's copy of them",
			of: cell(func(v norms.Verdict) string { return number(v.Limit) })},
	}
}

// remarks is what must be known before the figures are relied on.
func remarks() []column {
	return []column{{
		name: "warnings", meaning: "why figures are lacking or not to be relied on; several are parted by \" | \"", values: "text", source: program, text: true,
		of: func(r *Row) string {
			if r.Read == nil {
				return r.Lacking
			}
			return strings.Join(append(slices.Clone(r.Kept.Reading.Warnings), r.Read.Remarks()...), " | ")
		},
	}}
}
