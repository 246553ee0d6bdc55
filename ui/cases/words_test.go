package cases

import (
	"testing"

	"ogive/geometry/hand"
	"ogive/imaging/casebook"
)

func TestASittingTellsItsDistanceFromTheOperation(t *testing.T) {
	for _, c := range []struct {
		day, operated casebook.Date
		stage         casebook.Stage
		want          string
	}{
		{"2026-03-01", "2026-03-01", casebook.AtOperation, "at operation"},
		{"2026-02-27", "2026-03-01", casebook.Before, "before operation, less than a month earlier"},
		{"2025-12-01", "2026-03-01", casebook.Before, "before operation, 3 months earlier"},
		{"2026-04-01", "2026-03-01", casebook.FollowUp, "follow-up, 1 month after operation"},
		{"2027-03-01", "2026-03-01", casebook.FollowUp, "follow-up, 1 year after operation"},
		{"2027-05-01", "2026-03-01", casebook.FollowUp, "follow-up, 14 months after operation"},
		{"2028-04-02", "2026-03-01", casebook.FollowUp, "follow-up, 2 years 1 month after operation"},
		{"2029-03-01", "2026-03-01", casebook.FollowUp, "follow-up, 3 years after operation"},
		{"2026-04-01", "", casebook.Before, "before operation"},
	} {
		if got := sittingText(casebook.Sitting{Date: c.day, Stage: c.stage}, c.operated); got != c.want {
			t.Errorf("%s with operation on %q reads %q, want %q", c.day, c.operated, got, c.want)
		}
	}
}

func TestTheAgeComesFromTheMonthOfBirth(t *testing.T) {
	for _, c := range []struct {
		born casebook.Month
		day  casebook.Date
		want string
	}{{"2022-02", "2026-03-30", "4 years 1 month"}, {"2025-06", "2026-03-30", "9 months"}, {"", "2026-03-30", ""}, {"2027-01", "2026-03-30", ""}} {
		if got := age(c.born, c.day); got != c.want {
			t.Errorf("born %q, on %s: %q, want %q", c.born, c.day, got, c.want)
		}
	}
}

func TestAJoinReadsAsASurgeonSaysIt(t *testing.T) {
	j := casebook.Join{Hand: hand.Right, Web: hand.ThirdWeb, Kind: casebook.Simple, Extent: casebook.Incomplete, Operated: "2026-03-01"}
	if got := joinText(j); got != "Right third web, simple incomplete, operated on 1 Mar 2026" {
		t.Errorf("it reads %q", got)
	}
	if got := joinText(casebook.Join{Hand: hand.Left, Web: hand.FirstWeb}); got != "Left first web" {
		t.Errorf("it reads %q", got)
	}
}
