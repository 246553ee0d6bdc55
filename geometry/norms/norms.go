// Package norms holds the normal values of a web and the verdicts drawn from
// them.
//
// The values come as JSON (the program's own table is assets.NormalValues; a
// user may give an edited copy), each row with its source and how far it is
// trusted:
//
//	table, err := norms.Parse(data)
//	verdicts := table.JudgeIndex(hand.Dorsal, index)
//	verdicts = append(verdicts, table.JudgeSlope(slope)...)
//
// The sources differ among themselves. A Band is the range that this project
// reads out of several rows; it names them and says why.
//
// A verdict is certain only if the whole 95 per cent interval of the figure
// lies beyond the limit. An uncertain one is to be shown as doubtful.
package norms

import "ogive/geometry/hand"

// Table is the normal values, the bands read out of them and the tolerance for
// spans. Build it with Parse.
type Table struct {
	Rows  []Row
	Bands []Band
	Span  SpanTolerance
}

// Row is one normal value as one source gives it.
type Row struct {
	// ID is the name by which a Band refers to the row.
	ID string
	// Figure is what the value belongs to, in the trade's words.
	Figure string
	// View is the view the row applies to, zero for any.
	View hand.View
	// Webs are the webs the row applies to, empty where the source makes no
	// difference between them.
	Webs []hand.Web
	// Value is the value in words.
	Value string
	// Numbers are the numeric parts of Value, if it has any.
	Numbers []Number
	// Source is where the value comes from, Trust how far it is trusted: "book
	// chapter", "review", "abstract", "common practice, no source".
	Source, Trust string
}

// Number is a numeric part of a normal value: from Low to High in Unit. An open
// side is infinite; a single value has Low and High the same.
type Number struct {
	Of, Unit  string
	Low, High float64
}

// Band is the range within which a figure is taken as normal.
type Band struct {
	// Figure is "index" or "slope".
	Figure string
	// View is the view in which the figure is measured, zero for any.
	View hand.View
	// Low and High are ratios for the index and degrees for the slope.
	Low, High float64
	// Against is what a Verdict says the limit comes from.
	Against string
	// Rows are the ids of the rows that the band was read out of; Reason says
	// how.
	Rows   []string
	Reason string
}

// Row is the row with that id.
func (t Table) Row(id string) (Row, bool) {
	for _, r := range t.Rows {
		if r.ID == id {
			return r, true
		}
	}
	return Row{}, false
}

// Band is the band for a figure in a view. There is none for a figure on which
// nothing is published, such as the palmar index.
func (t Table) Band(figure string, view hand.View) (Band, bool) {
	for _, b := range t.Bands {
		if b.Figure == figure && (b.View == view || b.View == 0) {
			return b, true
		}
	}
	return Band{}, false
}
