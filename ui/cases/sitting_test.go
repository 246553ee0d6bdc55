package cases

import (
	"testing"

	"ogive/geometry/hand"
	"ogive/imaging/appraisal"
	"ogive/imaging/casebook"
)

func TestAnAppraisalIsKeptInTheCasebookAtOnce(t *testing.T) {
	s, id := withCase(t)
	s.Observer = func() string { return "AB" }
	last := s.page.shown.sittings[4]
	s.appraise(last)
	s.until("the page is open", s.appraising.object.Visible)
	if s.rooms.Visible() || s.appraising.title.Text != "S-012, appraisal on 30 Mar 2026" {
		t.Errorf("it is called %q", s.appraising.title.Text)
	}
	var a appraisal.Appraisal
	a.Observer = "AB"
	a.Set(appraisal.Given{Finding: appraisal.Feel, Place: appraisal.Web(hand.Left, hand.ThirdWeb), Choice: "thickened"})
	if err := s.appraising.form.OnSave(a); err != nil {
		t.Fatal(err)
	}
	s.press("Back to the case")
	s.until("the case tells of it", func() bool { return len(s.page.shown.appraised[last.ID]) == 1 })
	all, err := s.book.Appraisals(id)
	if err != nil || len(all) != 1 || all[0].Sitting != last.ID || all[0].Appraisal.Observer != "AB" || !s.rooms.Visible() {
		t.Errorf("kept %+v (%v)", all, err)
	}
}

func TestASittingBearsANoteAndCanBeCorrected(t *testing.T) {
	s, id := withCase(t)
	last := s.page.shown.sittings[4]
	s.writeNote(last)
	for _, letter := range "splint at night" {
		s.at.Canvas().Focused().TypedRune(letter)
	}
	s.press("Keep")
	s.until("the note is shown", func() bool { return s.page.shown.sittings[4].Note == "splint at night" })
	for _, item := range s.page.ofSitting(last) {
		if item.Label == "This is: at operation" {
			item.Action()
		}
	}
	s.until("the stage is shown", func() bool { return s.page.shown.sittings[4].Stage == casebook.AtOperation })
	s.newSitting()
	for _, letter := range "2026-06-01" {
		s.at.Canvas().Focused().TypedRune(letter)
	}
	s.press("Keep")
	s.until("there is another sitting", func() bool { return len(s.page.shown.sittings) == 6 })
	if all, err := s.book.Sittings(id); err != nil || all[5].Date != "2026-06-01" {
		t.Errorf("kept %+v (%v)", all, err)
	}
}
