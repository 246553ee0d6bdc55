package casebook

import (
	"errors"
	"path/filepath"
	"strings"
	"testing"

	"ogive/geometry/hand"
	"ogive/imaging/appraisal"
)

var thirdWeb = appraisal.Web(hand.Left, hand.ThirdWeb)

func felt(observer, choice, note string) appraisal.Appraisal {
	a := appraisal.Appraisal{Observer: observer}
	a.Set(appraisal.Given{Finding: appraisal.Feel, Place: thirdWeb, Choice: choice, Note: note})
	return a
}

func TestEveryObserversLatestAppraisalIsThereWithWhenItWasGiven(t *testing.T) {
	folder := filepath.Join(t.TempDir(), "book")
	book := opened(t, folder)
	id := addCase(t, book, "S-1")
	sitting, err := book.AddSitting(id, "2024-07-01")
	if err != nil {
		t.Fatal(err)
	}
	for _, a := range []appraisal.Appraisal{felt("CD", "soft", ""), felt("AB", "soft", ""), felt("ab", "thickened", "radial side")} {
		if err := book.SaveAppraisal(sitting, a); err != nil {
			t.Fatal(err)
		}
	}
	closed(t, book)
	book = opened(t, folder)
	defer closed(t, book)
	if err := book.SaveAppraisal(sitting, felt("CD", "thickened", "")); err != nil {
		t.Fatal(err)
	}
	all, err := book.Appraisals(id)
	if err != nil || len(all) != 2 {
		t.Fatalf("%+v %v", all, err)
	}
	for i, who := range []string{"AB", "CD"} {
		a := all[i]
		if g, _ := a.Appraisal.At(appraisal.Feel, thirdWeb); a.Appraisal.Observer != who || g.Choice != "thickened" || a.Date != "2024-07-01" || a.Sitting != sitting || a.Appraisal.Saved.IsZero() {
			t.Errorf("%+v", a)
		}
	}
	if h, err := book.AppraisalHistory(sitting, "CD"); err != nil || len(h) != 2 || !strings.Contains(h[0].Text, "soft") {
		t.Errorf("%+v %v", h, err)
	}
}

func TestAnAppraisalThatTellsWhoThePatientIsOrHasNoPlaceIsRefused(t *testing.T) {
	book := fresh(t)
	sitting, err := book.AddSitting(addCase(t, book, "S-1"), "2024-07-01")
	if err != nil {
		t.Fatal(err)
	}
	for want, err := range map[string]error{
		"full date":      book.SaveAppraisal(sitting, felt("AB", "soft", "born 12.05.2019")),
		"long number":    book.SaveAppraisal(sitting, appraisal.Appraisal{Observer: "AB", Remarks: "number 12345678"}),
		"observer":       book.SaveAppraisal(sitting, felt("", "soft", "")),
		"is no choice":   book.SaveAppraisal(sitting, felt("AB", "hard", "")),
		"not in this ca": book.SaveAppraisal(99, felt("AB", "soft", "")),
	} {
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%v, want a refusal that says %q", err, want)
		}
	}
}

func TestAPlanStaysWithItsPhotographAndEveryPieceOfWorkOnIt(t *testing.T) {
	folder := filepath.Join(t.TempDir(), "book")
	book := opened(t, folder)
	p := importTiny(t, book, addCase(t, book, "S-1"), 1).Photograph
	if _, ok, err := book.Plan(p, "AB"); ok || err != nil {
		t.Errorf("a plan before any: %v %v", ok, err)
	}
	for _, plan := range []string{`{"flap": 1}`, `{"flap": 2}`} {
		if err := book.SavePlan(p, "AB", plan); err != nil {
			t.Fatal(err)
		}
	}
	closed(t, book)
	book = opened(t, folder)
	defer closed(t, book)
	if err := book.SavePlan(p, "AB", `{"flap": 3}`); err != nil {
		t.Fatal(err)
	}
	if plan, ok, err := book.Plan(p, "ab"); plan != `{"flap": 3}` || !ok || err != nil {
		t.Errorf("%q %v %v", plan, ok, err)
	}
	if h, err := book.PlanHistory(p, "AB"); err != nil || len(h) != 2 || h[0].Text != `{"flap": 2}` {
		t.Errorf("%+v %v", h, err)
	}
	if err := book.SavePlan(p, "AB", "{"); err == nil || !strings.Contains(err.Error(), "no JSON") {
		t.Errorf("half a plan: %v", err)
	}
	if err := book.SavePlan(99, "AB", "{}"); err == nil || !strings.Contains(err.Error(), "not in this casebook") {
		t.Errorf("a plan on nothing: %v", err)
	}
}

func TestASittingCanBeMovedToAnotherDayButNotOntoAnotherSitting(t *testing.T) {
	book := fresh(t)
	id := addCase(t, book, "S-1") // operated on 2024-01-10
	importTiny(t, book, id, 1)    // on 2024-05-01
	first, err := book.AddSitting(id, "2024-07-01")
	if err != nil {
		t.Fatal(err)
	}
	if err := book.SetSittingNote(first, "splint at night"); err != nil {
		t.Fatal(err)
	}
	if err := book.SetSittingDate(first, "2024-05-01"); err == nil || !strings.Contains(err.Error(), "the two would become one") {
		t.Errorf("onto another sitting: %v", err)
	}
	if err := book.SetSittingDate(first, "2023-11-30"); err != nil {
		t.Fatal(err)
	}
	s, err := book.Sittings(id)
	if err != nil || len(s) != 2 || s[0] != (Sitting{first, "2023-11-30", Before, "splint at night"}) {
		t.Errorf("%+v %v", s, err)
	}
	if err := book.SetStage(first, FollowUp); err != nil {
		t.Fatal(err)
	}
	if err := book.SetSittingDate(first, "2023-12-01"); err != nil {
		t.Fatal(err)
	}
	if s, err := book.Sitting(first); err != nil || s.Stage != FollowUp {
		t.Errorf("a stage set by hand became %v, %v", s.Stage, err)
	}
	if err := book.RemoveSitting(s[1].ID); err == nil || !strings.Contains(err.Error(), "holds photographs") {
		t.Errorf("removing a sitting with photographs: %v", err)
	}
	if err := book.RemoveSitting(first); err != nil {
		t.Error(err)
	}
	for want, err := range map[string]error{
		"no date":      book.SetSittingDate(s[1].ID, ""),
		"is no date":   book.SetSittingDate(s[1].ID, "1.5.2024"),
		"full date":    book.SetSittingNote(s[1].ID, "born 2019-05-12"),
		"not in this ": book.SetSittingNote(first, "gone"),
	} {
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%v, want a refusal that says %q", err, want)
		}
	}
}

func TestAReadingIsForgottenWhenItsMarksAreChangedByWhateverHand(t *testing.T) {
	book := fresh(t)
	p := importTiny(t, book, addCase(t, book, "S-1"), 1).Photograph
	keep := func() {
		t.Helper()
		if err := book.SaveMarks(p, "AB", marksAt(4)); err != nil {
			t.Fatal(err)
		}
		text, _, err := book.MarksText(p, "AB")
		if err != nil {
			t.Fatal(err)
		}
		if err := book.KeepReadings("way", NewReading{Photograph: p, Observer: "AB", Marks: text, Text: "{}"}, NewReading{Photograph: p, Observer: "AB", Marks: "others", Text: "no"}); err != nil {
			t.Fatal(err)
		}
		if err := book.Check(t.Context()); err != nil {
			t.Fatal(err)
		}
		if kept, ok, err := book.KeptReading(p, "ab", "way"); kept != "{}" || !ok || err != nil {
			t.Fatalf("%q %v %v", kept, ok, err)
		}
	}
	for _, c := range []struct {
		name   string
		change func() error
	}{
		{"new marks", func() error { return book.SaveMarks(p, "AB", marksAt(5)) }},
		{"marks changed in the database", func() error {
			_, err := book.db.Exec("UPDATE marks SET text='{}'")
			return err
		}},
		{"marks changed behind the database's back", func() error { // last: it takes the trigger away
			_, err := book.db.Exec("DROP TRIGGER reading_outdated_by_changed_marks; UPDATE marks SET text='{}'")
			return errors.Join(err, book.Check(t.Context()))
		}},
	} {
		t.Run(c.name, func(t *testing.T) {
			keep()
			if err := c.change(); err != nil {
				t.Fatal(err)
			}
			if kept, ok, err := book.KeptReading(p, "AB", "way"); ok || err != nil {
				t.Errorf("%q is still there, %v", kept, err)
			}
		})
	}
	keep()
	if _, ok, err := book.KeptReading(p, "AB", "another way"); ok || err != nil {
		t.Errorf("a reading by another way: %v %v", ok, err)
	}
}
