// Package audit makes a tidy table of a whole casebook for a statistics package:
// one row for every web that an observer has marked on a photograph, and one for
// every web that was appraised without a photograph.
//
//	a, err := audit.Of(ctx, book, settings, progress)
//	err = a.CSV(out)
//	for _, fault := range a.Faults { ... } // photographs that can't be read
//	err = audit.Dictionary(out)            // what every column means
//
// It holds codes, ages and times since an operation, and no name, no date, no
// free text and no path. What is not known is an empty cell.
package audit

import (
	"context"
	"fmt"
	"slices"

	"ogive/geometry/followup"
	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/geometry/reading"
	"ogive/imaging/appraisal"
	"ogive/imaging/casebook"
	"ogive/imaging/casebook/readings"
	"ogive/imaging/measure"
)

// Audit is the table.
type Audit struct {
	Rows []*Row
	// Faults are the marks that could not be read, each with its mend.
	Faults []error
}

// Row is one web at one sitting, in one view, by one observer. A part that is
// not known is nil or zero.
type Row struct {
	Case    *casebook.Case
	Sitting casebook.Sitting
	Number  int // of the sitting, from 1, by date
	Hand    hand.Side
	Web     hand.Web
	Join    *casebook.Join // nil where the web was not joined

	View       string
	Observer   string
	Photograph *casebook.Photograph // empty where there is none
	Kept       *readings.Kept       // empty where nothing was read
	Read       *reading.Web
	// Lacking says why nothing was read.
	Lacking string

	Follow   *followup.Point // as seen from the operation and the baseline
	Baseline *followup.Point
	Other    *Difference

	Appraised *casebook.Appraised
}

// Of reads all of the casebook. Readings that are not kept yet are computed,
// which takes a second or so for every photograph, and kept; after each of them
// progress (which may be nil) is called.
func Of(ctx context.Context, book *casebook.Casebook, with measure.Settings, progress func(done, all int)) (Audit, error) {
	read, err := readings.In(book, with)
	if err != nil {
		return Audit{}, err
	}
	items, err := read.All(ctx, progress)
	if err != nil {
		return Audit{}, err
	}
	records, err := book.Records()
	if err != nil {
		return Audit{}, err
	}
	of := map[int64][]readings.Item{}
	for _, it := range items {
		of[it.Case] = append(of[it.Case], it)
	}
	charts := make([]*chart, len(records))
	spread(len(records), func(i int) {
		charts[i] = collect(&records[i], of[records[i].Case.ID])
		charts[i].follow()
		charts[i].compare(with.Norms.Span)
		charts[i].sort()
	})
	var a Audit
	for _, c := range charts {
		a.Rows = append(a.Rows, c.rows...)
		a.Faults = append(a.Faults, c.faults...)
	}
	return a, nil
}

// chart is the rows of one case while they are being put together.
type chart struct {
	record *casebook.Record
	rows   []*Row
	faults []error
}

func collect(r *casebook.Record, items []readings.Item) *chart {
	c := &chart{record: r}
	photographs := map[int64]*casebook.Photograph{}
	for i := range r.Photographs {
		photographs[r.Photographs[i].ID] = &r.Photographs[i]
	}
	for i := range items {
		it := &items[i]
		p := photographs[it.Photograph]
		if p == nil {
			continue // added a moment ago by the window
		}
		if it.Err != nil {
			c.faults = append(c.faults, fmt.Errorf("case %s, %s, marks of %s: %w", r.Case.Code, p.File(), it.Observer, it.Err))
			continue
		}
		c.read(p, it)
	}
	c.appraise()
	return c
}

// read adds a row for every web that was read, or one that says why none was.
func (c *chart) read(p *casebook.Photograph, it *readings.Item) {
	side, err := hand.ParseSide(p.Hand)
	if err != nil {
		side = 0
	}
	webs := it.Kept.Reading.Webs
	if len(webs) == 0 {
		row := c.row(it.Sitting, side, 0)
		row.View, row.Observer, row.Photograph, row.Lacking = p.View, it.Observer, p, it.Kept.Lacking
		if row.Lacking == "" {
			row.Lacking = "no web is marked"
		}
		return
	}
	for i := range webs {
		row := c.row(it.Sitting, side, webs[i].Web)
		row.View, row.Observer, row.Photograph, row.Kept, row.Read = p.View, it.Observer, p, &it.Kept, &webs[i]
	}
}

// row adds a row.
func (c *chart) row(sitting int64, side hand.Side, web hand.Web) *Row {
	r := &Row{Case: &c.record.Case, Hand: side, Web: web, Photograph: &casebook.Photograph{}, Kept: &readings.Kept{}}
	for i, s := range c.record.Sittings {
		if s.ID == sitting {
			r.Sitting, r.Number = s, i+1
		}
	}
	for i, j := range c.record.Case.Joins {
		if j.Hand == side && j.Web == web {
			r.Join = &c.record.Case.Joins[i]
		}
	}
	c.rows = append(c.rows, r)
	return r
}

// appraise adds to every row what was found at its sitting: by the same
// observer, else by the one who wrote last. What no row shows then gets a row of
// its own.
func (c *chart) appraise() {
	for _, r := range c.rows {
		r.Appraised = c.appraisedAt(r.Sitting.ID, r.Observer)
	}
	for i := range c.record.Appraisals {
		a := &c.record.Appraisals[i]
		for _, p := range websOf(a.Appraisal) {
			if !c.shows(a, p) {
				r := c.row(a.Sitting, p.Hand, p.Web)
				r.Observer, r.Appraised = a.Appraisal.Observer, a
			}
		}
	}
}

func (c *chart) appraisedAt(sitting int64, observer string) *casebook.Appraised {
	var out *casebook.Appraised
	for i := range c.record.Appraisals {
		a := &c.record.Appraisals[i]
		switch {
		case a.Sitting != sitting:
		case a.Appraisal.Observer == observer:
			return a
		case out == nil || a.Appraisal.Saved.After(out.Appraisal.Saved):
			out = a
		}
	}
	return out
}

// websOf is the webs that something was found on, in the order of the appraisal.
func websOf(a appraisal.Appraisal) []appraisal.Place {
	var out []appraisal.Place
	seen := map[appraisal.Place]bool{}
	for _, g := range a.Findings {
		if g.Place.Web.Valid() && !seen[g.Place] {
			seen[g.Place] = true
			out = append(out, g.Place)
		}
	}
	return out
}

// shows reports whether a row of that web holds the appraisal.
func (c *chart) shows(a *casebook.Appraised, p appraisal.Place) bool {
	return slices.ContainsFunc(c.rows, func(r *Row) bool { return r.Appraised == a && r.Hand == p.Hand && r.Web == p.Web })
}

// index is the index of the row, nil if there is none.
func (r *Row) index() *plane.Estimate[plane.Ratio] {
	if r.Read == nil {
		return nil
	}
	return r.Read.Index
}
