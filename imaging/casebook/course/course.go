// Package course follows the webs of a case through its sittings: the marks that
// were read, the findings beside them, the other hand and the plan.
//
//	read, err := readings.In(book, settings)
//	c, err := course.Of(ctx, book, read, caseID)
//	c.Webs[0].Series                      // for package chart
//	c.Found(c.Webs[0], point.Photograph)  // what was found at that sitting, in words
//
// Photographs taken on the day of a web's operation count as taken after its
// release. Where the same web of the other hand was joined too there is nothing
// to hold it against, and no band.
package course

import (
	"context"

	"ogive/geometry/followup"
	"ogive/geometry/hand"
	"ogive/imaging/appraisal"
	"ogive/imaging/casebook"
	"ogive/imaging/casebook/readings"
)

// Course is a case over time.
type Course struct {
	Case casebook.Case
	// Webs are those that were joined, in the order of the case.
	Webs []Web
	// Unread are marks that could not be read.
	Unread []readings.Item
	// Warnings are sentences on what else could not be used.
	Warnings []string

	ordered     []casebook.Photograph // by sitting
	photographs map[int64]casebook.Photograph
	appraisals  []casebook.Appraised
}

// Web is one web over time.
type Web struct {
	Side   hand.Side
	Web    hand.Web
	Series followup.Series
}

// Of follows the webs of a case. What was not read before is read now, which
// takes as long as opening the photographs.
func Of(ctx context.Context, book *casebook.Casebook, read *readings.Book, caseID int64) (Course, error) {
	var c Course
	var err error
	if c.Case, err = book.Case(caseID); err != nil {
		return c, err
	}
	if c.appraisals, err = book.Appraisals(caseID); err != nil {
		return c, err
	}
	if c.ordered, err = book.Photographs(caseID); err != nil {
		return c, err
	}
	c.photographs = map[int64]casebook.Photograph{}
	for _, p := range c.ordered {
		c.photographs[p.ID] = p
	}
	sittings, err := book.Sittings(caseID)
	if err != nil {
		return c, err
	}
	items, err := read.Case(ctx, caseID, nil)
	if err != nil {
		return c, err
	}
	return c, c.follow(book, sittings, items)
}

// follow makes the series of every joined web.
func (c *Course) follow(book *casebook.Casebook, sittings []casebook.Sitting, items []readings.Item) error {
	early := map[int64]bool{}
	for _, s := range sittings {
		early[s.ID] = s.Stage == casebook.Before
	}
	joined := map[[2]int]bool{}
	for _, j := range c.Case.Joins {
		joined[[2]int{int(j.Hand), int(j.Web)}] = true
	}
	for _, it := range items {
		if it.Err != nil {
			c.Unread = append(c.Unread, it)
		}
	}
	for _, j := range c.Case.Joins {
		h := followup.History{Sittings: c.sittings(j.Hand, j, early, items)}
		if d, err := followup.ParseDay(string(j.Operated)); err == nil {
			h.Operated = d
		}
		if other := j.Hand.Other(); !joined[[2]int{int(other), int(j.Web)}] {
			h.Other = c.sittings(other, j, early, items)
		}
		w := Web{Side: j.Hand, Web: j.Web, Series: followup.Follow(h)}
		var err error
		if w.Series.Plan, err = c.planned(book, j, viewOf(w.Series)); err != nil {
			return err
		}
		c.Webs = append(c.Webs, w)
	}
	return nil
}

// viewOf is the view that a web is followed in.
func viewOf(s followup.Series) hand.View {
	switch {
	case s.Baseline >= 0:
		return s.Points[s.Baseline].View
	case len(s.Points) > 0:
		return s.Points[0].View
	}
	return hand.Dorsal
}

// sittings is every reading of the joined web, or of its fellow on the other
// hand.
func (c *Course) sittings(side hand.Side, j casebook.Join, early map[int64]bool, items []readings.Item) []followup.Sitting {
	var out []followup.Sitting
	for _, it := range items {
		r := it.Kept.Reading
		web, ok := it.Kept.Web(j.Web)
		p, known := c.photographs[it.Photograph]
		day, err := followup.ParseDay(string(p.Date))
		if it.Err != nil || !ok || !known || err != nil || web.Index == nil || r.Side != side {
			continue
		}
		before := early[it.Sitting]
		if j.Operated != "" {
			before = p.Date < j.Operated
		}
		out = append(out, followup.Sitting{
			Photograph: it.Photograph, Day: day, Before: before, Index: *web.Index,
			Method: r.Method, View: r.View, Observer: it.Observer,
			Feel: c.feel(it.Sitting, it.Observer, appraisal.Web(side, j.Web)),
		})
	}
	return out
}

// feel is how the web felt to that observer at that sitting, else to another.
func (c *Course) feel(sitting int64, observer string, at appraisal.Place) followup.Feel {
	found := followup.NotFelt
	for _, a := range c.appraisals {
		g, ok := a.Appraisal.At(appraisal.Feel, at)
		if a.Sitting != sitting || !ok || (found != followup.NotFelt && a.Appraisal.Observer != observer) {
			continue
		}
		switch g.Choice {
		case "soft":
			found = followup.Soft
		case "thickened":
			found = followup.Thickened
		}
	}
	return found
}
