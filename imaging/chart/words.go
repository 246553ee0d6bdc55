package chart

import (
	"fmt"
	"math"
	"strings"

	"ogive/geometry/followup"
	"ogive/imaging/wording"
)

// Creep is a point's creep in words: "creep 0.21 ± 0.05", "no creep that can be
// told (0.02 ± 0.05)", "deepened, creep -0.20 ± 0.05". It is empty where the
// point has none.
func Creep(p followup.Point) string {
	if p.Creep == nil {
		return ""
	}
	figure := wording.Ratio(*p.Creep)
	switch p.Grading.Movement {
	case followup.Advanced:
		return "creep " + figure
	case followup.Deepened:
		return "deepened, creep " + figure
	}
	return "no creep that can be told (" + figure + ")"
}

// Grade is the grade of creep and its doubt: "grade 2", "grade 2? (doubtful: 2
// to 3)".
func Grade(g followup.Grading) string {
	switch {
	case g.Movement == followup.NotKnown:
		return "grade not known"
	case g.Certain:
		return fmt.Sprintf("grade %d", g.Grade)
	case g.Movement == followup.Deepened:
		return "grade 0 or 1, as the skin is soft or thickened"
	}
	return fmt.Sprintf("grade %d? (doubtful: %d to %d)", g.Grade, g.Least, g.Most)
}

// Differences says what was done otherwise than at the baseline: "other scale,
// other observer". It is empty where nothing was.
func Differences(all []followup.Difference) string {
	var said []string
	for _, d := range all {
		said = append(said, map[followup.Difference]string{
			followup.OtherView:     "other view",
			followup.OtherScale:    "other scale",
			followup.OtherObserver: "other observer",
		}[d])
	}
	return strings.Join(said, ", ")
}

// Months is a time since the operation in words: "18 months (1.5 years) after
// the operation".
func Months(p followup.Point, since followup.Since) string {
	from := map[followup.Since]string{
		followup.SinceOperation: "the operation", followup.SinceFirstSitting: "the first sitting",
	}[since]
	months := math.Abs(p.Months)
	when := "after"
	if p.Months < 0 {
		when = "before"
	}
	switch n := wholeOrHalf(months); {
	case n == "0":
		return "at " + from
	case months >= 12:
		return fmt.Sprintf("%s (%s) %s %s", counted(n, "month"), counted(wholeOrHalf(months/12), "year"), when, from)
	default:
		return fmt.Sprintf("%s %s %s", counted(n, "month"), when, from)
	}
}

func counted(n, unit string) string {
	if n != "1" {
		unit += "s"
	}
	return n + " " + unit
}

// wholeOrHalf is a number to the nearest half.
func wholeOrHalf(x float64) string { return fmt.Sprintf("%g", math.Round(2*x)/2) }
