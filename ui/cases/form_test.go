package cases

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2/test"

	"ogive/geometry/hand"
	"ogive/imaging/casebook"
)

func TestWhatTheFormRefusesIsSaidAtItsField(t *testing.T) {
	s := newScene(t, opened(t))
	f := newForm(casebook.Case{})
	s.writeCase("New case", f, func(b *casebook.Casebook, c casebook.Case) (int64, error) { return b.AddCase(c) })
	f.code.SetText("Anna Berger")
	if !f.wrongCode.Visible() || !strings.Contains(f.wrongCode.Text, "looks like a name") {
		t.Errorf("at the code it says %q", f.wrongCode.Text)
	}
	f.born.SetText("2021-07-14")
	if !f.wrongBorn.Visible() || !strings.Contains(f.wrongBorn.Text, "give the month, 2021-07") {
		t.Errorf("at the month of birth it says %q", f.wrongBorn.Text)
	}
	test.Tap(f.save)
	if !f.wrongHands.Visible() {
		t.Error("nothing is said of the missing hand")
	}
	s.settle()
	if found, _ := s.book.Cases(""); len(found) != 0 {
		t.Errorf("it was kept: %v", found)
	}
	f.code.SetText("S-9")
	f.born.SetText("2021-07")
	f.hands.Choose(0)
	if f.wrongCode.Visible() || f.wrongBorn.Visible() || f.wrongHands.Visible() {
		t.Error("what has been mended is still called wrong")
	}
	web := f.joins[1]
	web.joined.SetChecked(true)
	web.kind.Choose(1)
	web.day.SetText("14.3.2023")
	if !web.wrong.Visible() {
		t.Error("nothing is said of the date")
	}
	web.day.SetText("2023-03-14")
	test.Tap(f.save)
	s.until("the case is shown", func() bool { return s.page.shown.about.Code == "S-9" })
	want := casebook.Join{Hand: hand.Left, Web: hand.SecondWeb, Kind: casebook.Complex, Operated: "2023-03-14"}
	if got := s.page.shown.about.Joins; len(got) != 1 || got[0] != want {
		t.Errorf("kept %+v", got)
	}
}

func TestEditingACaseLosesNothing(t *testing.T) {
	s, _ := withCase(t)
	c, ok := newForm(s.page.shown.about).read()
	was := s.page.shown.about
	if !ok || c.Code != was.Code || c.Born != was.Born || c.Hand != was.Hand || c.Findings != was.Findings || len(c.Joins) != 1 || c.Joins[0] != was.Joins[0] {
		t.Errorf("the form makes %+v of %+v", c, was)
	}
}
