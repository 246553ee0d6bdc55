package casebook

import (
	"strings"

	"ogive/geometry/hand"
)

// Record is everything known of one case save marks and plans.
type Record struct {
	Case        Case
	Sittings    []Sitting    // by date
	Photographs []Photograph // by sitting, then in the order they came in
	Appraisals  []Appraised  // the latest of each observer, by date and observer
}

// Records is the records of all cases by code, read at one go.
func (b *Casebook) Records() ([]Record, error) {
	cases, err := rows(b.db, func(scan func(...any) error) (r Record, err error) {
		return r, scan(&r.Case.ID, &r.Case.Code, &r.Case.Born, &r.Case.Hand, &r.Case.Findings)
	}, "SELECT id,code,born,hand,findings FROM cases ORDER BY key")
	if err != nil {
		return nil, err
	}
	of := map[int64]*Record{}
	for i := range cases {
		of[cases[i].Case.ID] = &cases[i]
	}
	return cases, b.fill(of)
}

// found is a part of a record: its case, and how it is added.
type found struct {
	id  int64
	add func(*Record)
}

func (b *Casebook) fill(of map[int64]*Record) error {
	for _, part := range []struct {
		query string
		read  func(scan func(...any) error) (found, error)
	}{
		{"SELECT case_id,hand,web,extent,kind,operated FROM joins ORDER BY case_id,hand,web", readJoin},
		{"SELECT case_id," + sittingFields + " ORDER BY case_id,date", each(scanSitting, func(r *Record, s Sitting) { r.Sittings = append(r.Sittings, s) })},
		{"SELECT s.case_id," + photographFields + " ORDER BY s.case_id,s.date,p.id", each(scanPhotograph, func(r *Record, p Photograph) { r.Photographs = append(r.Photographs, p) })},
		{strings.Replace(latestAppraisals, "SELECT ", "SELECT s.case_id,", 1) + " ORDER BY s.case_id,s.date,o.key", each(scanAppraised, func(r *Record, a Appraised) { r.Appraisals = append(r.Appraisals, a) })},
	} {
		all, err := rows(b.db, part.read, part.query)
		if err != nil {
			return err
		}
		for _, f := range all {
			r := of[f.id]
			if r == nil {
				return refuse("the casebook's database is damaged (something belongs to no case); put back %s from your last backup", DatabaseName)
			}
			f.add(r)
		}
	}
	return nil
}

func readJoin(scan func(...any) error) (f found, err error) {
	var side string
	var j Join
	if err = scan(&f.id, &side, &j.Web, &j.Extent, &j.Kind, &j.Operated); err != nil {
		return f, err
	}
	f.add = func(r *Record) { r.Case.Joins = append(r.Case.Joins, j) }
	j.Hand, err = hand.ParseSide(side)
	return f, err
}

// each reads rows whose first column is the case.
func each[T any](read func(scan func(...any) error) (T, error), add func(*Record, T)) func(scan func(...any) error) (found, error) {
	return func(scan func(...any) error) (f found, err error) {
		v, err := read(func(rest ...any) error { return scan(append([]any{&f.id}, rest...)...) })
		f.add = func(r *Record) { add(r, v) }
		return f, err
	}
}
