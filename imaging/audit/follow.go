package audit

import (
	"cmp"
	"slices"

	"ogive/geometry/followup"
	"ogive/geometry/hand"
	"ogive/imaging/appraisal"
	"ogive/imaging/casebook"
)

// thread is what can be followed: a web of an operated hand in one view.
type thread struct {
	side hand.Side
	web  hand.Web
	view string
}

// follow tells the creep of every web that was joined.
func (c *chart) follow() {
	threads := map[thread][]*Row{}
	for _, r := range c.rows {
		if r.Join != nil && r.index() != nil {
			t := thread{r.Hand, r.Web, r.View}
			threads[t] = append(threads[t], r)
		}
	}
	for _, rows := range threads { // each by itself: their order plays no part
		slices.SortStableFunc(rows, func(a, b *Row) int { return cmp.Compare(a.Sitting.Date, b.Sitting.Date) })
		followThread(rows)
	}
}

// followThread measures each observer's readings against the observer's own
// baseline, if that is of the day of the first one, else against the first one.
func followThread(rows []*Row) {
	first := slices.IndexFunc(rows, func(r *Row) bool { return !r.before() })
	seen := map[string]bool{}
	for _, r := range rows {
		if seen[r.Observer] {
			continue
		}
		seen[r.Observer] = true
		own := slices.DeleteFunc(slices.Clone(rows), func(o *Row) bool { return o.Observer != r.Observer })
		hasFirst := slices.ContainsFunc(own, func(o *Row) bool { return first >= 0 && !o.before() && o.Sitting.ID == rows[first].Sitting.ID })
		series := own
		if first >= 0 && !hasFirst {
			series = append([]*Row{rows[first]}, own...)
		}
		tell(own, series)
	}
}

// tell puts what the series says into the rows of one observer.
func tell(own, series []*Row) {
	h := followup.History{}
	if d, err := followup.ParseDay(string(own[0].Join.Operated)); err == nil {
		h.Operated = d
	}
	for _, r := range series {
		h.Sittings = append(h.Sittings, r.sitting())
	}
	s := followup.Follow(h)
	for _, r := range own {
		for i := range s.Points {
			if p := s.Points[i]; p.Photograph == r.Photograph.ID && p.Observer == r.Observer {
				r.Follow = &p
			}
		}
		if s.Baseline >= 0 {
			r.Baseline = &s.Points[s.Baseline]
		}
	}
}

func (r *Row) sitting() followup.Sitting {
	day, err := followup.ParseDay(string(r.Sitting.Date))
	if err != nil {
		day = followup.Day{} // without a day it is left out
	}
	view, err := hand.ParseView(r.View)
	if err != nil {
		view = 0
	}
	return followup.Sitting{
		Photograph: r.Photograph.ID, Day: day, Before: r.before(), Index: *r.index(),
		Method: r.Kept.Reading.Method, View: view, Observer: r.Observer, Feel: r.feel(),
	}
}

// before reports whether the web had not been released yet: by the day of its
// operation, and where that is not known by the stage of the sitting.
func (r *Row) before() bool {
	if r.Join != nil && r.Join.Operated != "" {
		return r.Sitting.Date < r.Join.Operated
	}
	return r.Sitting.Stage == casebook.Before
}

func (r *Row) feel() followup.Feel {
	if r.Appraised == nil {
		return followup.NotFelt
	}
	g, _ := r.Appraised.Appraisal.At(appraisal.Feel, appraisal.Web(r.Hand, r.Web)) // without one no choice fits
	switch g.Choice {
	case "soft":
		return followup.Soft
	case "thickened":
		return followup.Thickened
	}
	return followup.NotFelt
}
