package norms_test

import (
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"

	"ogive/geometry/hand"
	"ogive/geometry/norms"
	"ogive/geometry/plane"
)

func TestIndexIsJudgedAgainstTheDorsalBand(t *testing.T) {
	table := shippedTable(t)
	for _, c := range []struct {
		claim      string
		value, u95 plane.Ratio
		finding    string
		limit      float64
		certain    bool
	}{
		{"a web near the MCP joints is too deep", 0.30, 0.02, "too deep", 0.45, true},
		{"an interval that reaches the limit leaves doubt", 0.44, 0.02, "too deep", 0.45, false},
		{"an interval that just touches the limit leaves doubt", 0.25, 0.20, "too deep", 0.45, false},
		{"a web near the PIP joints is too shallow", 0.80, 0.05, "too shallow", 0.67, true},
		{"a web a little past two thirds may be within limits", 0.68, 0.05, "too shallow", 0.67, false},
		{"the limit itself is within limits", 0.45, 0.01, "within limits", 0.45, false},
		{"a web well inside is surely within limits", 0.55, 0.05, "within limits", 0.45, true},
		{"the nearest limit is named", 0.60, 0.02, "within limits", 0.67, true},
		{"an interval wider than the band proves nothing", 0.55, 0.20, "within limits", 0.45, false},
	} {
		got := table.JudgeIndex(hand.Dorsal, plane.Estimate[plane.Ratio]{Value: c.value, U95: c.u95})
		want := []norms.Verdict{{Figure: "index", Finding: c.finding, Certain: c.certain, Limit: c.limit, Against: "published values"}}
		if d := cmp.Diff(want, got); d != "" {
			t.Errorf("%s: %s", c.claim, d)
		}
	}
}

func TestThePalmarIndexHasNoNormToBeJudgedBy(t *testing.T) {
	got := shippedTable(t).JudgeIndex(hand.Palmar, plane.Estimate[plane.Ratio]{Value: 0.1, U95: 0.01})
	if got != nil {
		t.Errorf("the palmar index is judged: %+v", got)
	}
}

func TestALargerSlopeIsSteeper(t *testing.T) {
	table := shippedTable(t)
	for _, c := range []struct {
		claim      string
		value, u95 float64
		finding    string
		limit      float64
		certain    bool
	}{
		{"straight across the digit is too steep", 90, 3, "too steep", 50, true},
		{"along the digit is too flat", 5, 3, "too flat", 35, true},
		{"45 degrees is within limits", 45, 3, "within limits", 50, true},
		{"40 degrees is within limits, common practice", 40, 4, "within limits", 35, true},
		{"51 degrees within 3 leaves doubt", 51, 3, "too steep", 50, false},
	} {
		got := table.JudgeSlope(plane.Estimate[plane.Angle]{Value: plane.Degrees(c.value), U95: plane.Degrees(c.u95)})
		want := []norms.Verdict{{Figure: "slope", Finding: c.finding, Certain: c.certain, Limit: c.limit, Against: "published values"}}
		if d := cmp.Diff(want, got); d != "" {
			t.Errorf("%s: %s", c.claim, d)
		}
	}
}

func TestAFigureThatIsNoNumberIsNotJudged(t *testing.T) {
	nan := math.NaN()
	table := shippedTable(t)
	if got := table.JudgeIndex(hand.Dorsal, plane.Estimate[plane.Ratio]{Value: plane.Ratio(nan)}); got != nil {
		t.Errorf("an index that is no number is judged: %+v", got)
	}
	got := table.JudgeSlope(plane.Estimate[plane.Angle]{Value: plane.Degrees(90), U95: plane.Angle(nan)})
	if len(got) != 1 || got[0].Certain {
		t.Errorf("a slope of unknown uncertainty is judged certain: %+v", got)
	}
	spans := []norms.WebSpan{spanOf(2, 8, 0.1), spanOf(4, plane.Millimetre(nan), 0.1)}
	if got := table.JudgeSpans(spans); got[0] != nil || got[1] != nil {
		t.Errorf("a span that is no number takes part: %+v", got)
	}
}
