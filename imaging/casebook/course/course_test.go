package course

import (
	"errors"
	"slices"
	"testing"

	"ogive/geometry/followup"
	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/geometry/reading"
	"ogive/geometry/scale"
	"ogive/imaging/appraisal"
	"ogive/imaging/casebook"
	"ogive/imaging/casebook/readings"
)

// read is the reading of one photograph on which every web has the same index.
func read(photograph, sitting int64, side hand.Side, observer string, index plane.Ratio) readings.Item {
	it := readings.Item{Photograph: photograph, Sitting: sitting, Observer: observer}
	it.Kept.Reading = reading.Reading{Side: side, View: hand.Dorsal, Method: scale.ByRuler}
	for _, w := range hand.Webs {
		it.Kept.Reading.Webs = append(it.Kept.Reading.Webs, reading.Web{Web: w, Index: &plane.Estimate[plane.Ratio]{Value: index, U95: 0.02}})
	}
	return it
}

// case of a left hand on which the third web was released in March and the
// fourth in September, with sittings before, at and after.
func staged() (Course, []casebook.Sitting, []readings.Item) {
	c := Course{Case: casebook.Case{Hand: casebook.LeftHand, Joins: []casebook.Join{
		{Hand: hand.Left, Web: hand.ThirdWeb, Operated: "2023-03-01"},
		{Hand: hand.Left, Web: hand.FourthWeb, Operated: "2023-09-01"},
	}}, photographs: map[int64]casebook.Photograph{}}
	var sittings []casebook.Sitting
	for i, d := range []casebook.Date{"2023-02-01", "2023-03-01", "2023-09-01", "2024-09-01"} {
		id := int64(i + 1)
		stage := casebook.FollowUp
		if i == 0 {
			stage = casebook.Before
		}
		sittings = append(sittings, casebook.Sitting{ID: id, Date: d, Stage: stage})
		for _, p := range []int64{id, id + 10} {
			c.photographs[p] = casebook.Photograph{ID: p, Sitting: id, Date: d}
		}
	}
	items := []readings.Item{
		read(1, 1, hand.Left, "A", 0.9), read(2, 2, hand.Left, "A", 0.5), read(3, 3, hand.Left, "A", 0.5), read(4, 4, hand.Left, "A", 0.6),
		read(11, 1, hand.Right, "A", 0.49), read(14, 4, hand.Right, "A", 0.48),
	}
	return c, sittings, items
}

func follow(t *testing.T, c *Course, sittings []casebook.Sitting, items []readings.Item) {
	t.Helper()
	book, err := casebook.Open(t.TempDir())
	if err != nil {
		t.Fatal(err)
	}
	defer book.Close()
	if err := c.follow(book, sittings, items); err != nil {
		t.Fatal(err)
	}
}

func TestEachWebIsFollowedFromItsOwnOperation(t *testing.T) {
	c, sittings, items := staged()
	follow(t, &c, sittings, items)
	if len(c.Webs) != 2 {
		t.Fatalf("%d webs are followed", len(c.Webs))
	}
	for i, want := range []int{1, 2} {
		s := c.Webs[i].Series
		if s.Baseline != want || len(s.Points) != 4 || len(s.Band) != 2 {
			t.Errorf("the %v has its baseline at %d of %d sittings, and %d of the other hand", c.Webs[i].Web, s.Baseline, len(s.Points), len(s.Band))
		}
	}
	if m := c.Webs[1].Series.Points[3].Months; m != 12 {
		t.Errorf("the fourth web is followed for %v months", m)
	}
}

func TestAnotherHandThatWasJoinedTooIsNoBand(t *testing.T) {
	c, sittings, items := staged()
	c.Case.Joins = append(c.Case.Joins, casebook.Join{Hand: hand.Right, Web: hand.ThirdWeb, Operated: "2024-01-01"})
	follow(t, &c, sittings, items)
	if n := len(c.Webs[0].Series.Band); n != 0 {
		t.Errorf("a hand that was joined too gives a band of %d", n)
	}
	if n := len(c.Webs[1].Series.Band); n != 2 {
		t.Errorf("the fourth web, which was not, gives a band of %d", n)
	}
}

func TestWithoutADayOfOperationTheStageTellsWhatWasBefore(t *testing.T) {
	c, sittings, items := staged()
	c.Case.Joins[0].Operated = ""
	follow(t, &c, sittings, items)
	s := c.Webs[0].Series
	if s.Since != followup.SinceFirstSitting || !s.Points[0].Before || s.Baseline != 1 {
		t.Errorf("months count since %v, the baseline is %d", s.Since, s.Baseline)
	}
}

func TestTheFindingOfTheOneWhoMarkedCountsFirst(t *testing.T) {
	c, sittings, items := staged()
	felt := func(observer, choice string) casebook.Appraised {
		a := appraisal.Appraisal{Observer: observer}
		a.Set(appraisal.Given{Finding: appraisal.Feel, Place: appraisal.Web(hand.Left, hand.ThirdWeb), Choice: choice})
		return casebook.Appraised{Sitting: 4, Appraisal: a}
	}
	c.appraisals = []casebook.Appraised{felt("A", "thickened"), felt("B", "soft")}
	follow(t, &c, sittings, items)
	if got := c.Webs[0].Series.Points[3].Feel; got != followup.Thickened {
		t.Errorf("marked by A, who felt it thickened, it is %v", got)
	}
	c.Webs, c.appraisals = nil, []casebook.Appraised{felt("B", "soft")}
	follow(t, &c, sittings, items)
	if got := c.Webs[0].Series.Points[3].Feel; got != followup.Soft {
		t.Errorf("felt by B alone it is %v", got)
	}
}

func TestMarksThatCannotBeReadAreNamed(t *testing.T) {
	c, sittings, items := staged()
	items[3].Err = errors.New("the photograph is missing")
	follow(t, &c, sittings, items)
	if len(c.Unread) != 1 || c.Unread[0].Photograph != 4 || len(c.Webs[0].Series.Points) != 3 {
		t.Errorf("not read are %v, followed are %d", c.Unread, len(c.Webs[0].Series.Points))
	}
}

func TestWhatWasFoundIsToldOfTheWebItsDigitsAndItsHand(t *testing.T) {
	c, _, _ := staged()
	a := appraisal.Appraisal{Remarks: "Sun on the hand."}
	for _, g := range []appraisal.Given{
		{Finding: appraisal.Feel, Place: appraisal.Web(hand.Left, hand.ThirdWeb), Choice: "thickened", Note: "radial side"},
		{Finding: appraisal.Feel, Place: appraisal.Web(hand.Left, hand.FourthWeb), Choice: "soft"},
		{Finding: appraisal.Rotation, Place: appraisal.Digit(hand.Left, hand.Ring), Choice: "slight"},
		{Finding: appraisal.Rotation, Place: appraisal.Digit(hand.Left, hand.Little), Choice: "none"},
		{Finding: appraisal.Vascularity, Place: appraisal.Web(hand.Left, hand.ThirdWeb), Choice: "pink"},
	} {
		a.Set(g)
	}
	c.appraisals = []casebook.Appraised{{Sitting: 4, Appraisal: a}}
	got := c.Found(Web{Side: hand.Left, Web: hand.ThirdWeb}, 4)
	want := []string{
		"How the web feels: Thickened; radial side", "Scar: vascularity: Pink (1)",
		"Rotation of the digit, ring finger: Slight, the fingers do not cross", "Sun on the hand.",
	}
	if !slices.Equal(got, want) {
		t.Errorf("told is %q", got)
	}
	if got := c.Found(Web{Side: hand.Left, Web: hand.ThirdWeb}, 3); len(got) != 0 {
		t.Errorf("of a sitting without findings is told %q", got)
	}
}
