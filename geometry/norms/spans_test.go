package norms_test

import (
	"math"
	"testing"

	"ogive/geometry/hand"
	"ogive/geometry/norms"
	"ogive/geometry/plane"
)

func spanOf(w hand.Web, value, u95 plane.Millimetre) norms.WebSpan {
	return norms.WebSpan{Web: w, Span: plane.Estimate[plane.Millimetre]{Value: value, U95: u95}}
}

func TestSpansAreJudgedAgainstTheOtherWebsOfTheHand(t *testing.T) {
	type outcome struct {
		finding string
		limit   float64
		certain bool
	}
	none := outcome{}
	table := shippedTable(t)
	for _, c := range []struct {
		claim string
		spans []norms.WebSpan
		want  []outcome
	}{
		{
			"three like webs are within limits; 1 mm is the larger tolerance below 10 mm",
			[]norms.WebSpan{spanOf(2, 8.1, 0.2), spanOf(3, 7.4, 0.2), spanOf(4, 8.1, 0.2)},
			[]outcome{{"within limits", 9.1, true}, {"within limits", 6.1, true}, {"within limits", 9.1, true}},
		},
		{
			"a web far beyond both others is surely too wide",
			[]norms.WebSpan{spanOf(2, 8, 0.3), spanOf(3, 7, 0.3), spanOf(4, 12, 0.3)},
			[]outcome{{"within limits", 6, true}, {"within limits", 6, true}, {"too wide", 9, true}},
		},
		{
			"above 10 mm the tolerance is 10 per cent",
			[]norms.WebSpan{spanOf(2, 20, 0.1), spanOf(4, 21.9, 0.1)},
			[]outcome{{"within limits", 19.71, true}, {"within limits", 22, false}},
		},
		{
			"a wide web with a wide interval is doubtful",
			[]norms.WebSpan{spanOf(2, 8, 0.3), spanOf(4, 9.3, 0.3)},
			[]outcome{{"too narrow", 8.3, false}, {"too wide", 9, false}},
		},
		{
			"the third web may be narrower by twice the tolerance, and the others wider than it",
			[]norms.WebSpan{spanOf(2, 8, 0.1), spanOf(3, 6.3, 0.1)},
			[]outcome{{"within limits", 8.3, true}, {"within limits", 6, true}},
		},
		{
			"a third web much narrower still is too narrow",
			[]norms.WebSpan{spanOf(2, 8, 0.1), spanOf(3, 5, 0.1), spanOf(4, 8, 0.1)},
			[]outcome{{"within limits", 9, true}, {"too narrow", 6, true}, {"within limits", 9, true}},
		},
		{
			"a third web wider than the others has no such grant",
			[]norms.WebSpan{spanOf(2, 8, 0.1), spanOf(3, 9.5, 0.1), spanOf(4, 8, 0.1)},
			[]outcome{{"within limits", 7, true}, {"too wide", 9, true}, {"within limits", 7, true}},
		},
		{
			"a narrow fourth web is too narrow whatever the order",
			[]norms.WebSpan{spanOf(4, 4, 0.1), spanOf(3, 7, 0.1), spanOf(2, 8, 0.1)},
			[]outcome{{"too narrow", 6, true}, {"within limits", 9, true}, {"within limits", 9, true}},
		},
		{
			"the first web is of another size: neither judged nor compared with",
			[]norms.WebSpan{spanOf(1, 30, 0.3), spanOf(2, 8, 0.3), spanOf(4, 8, 0.3)},
			[]outcome{none, {"within limits", 7, true}, {"within limits", 7, true}},
		},
		{"a single web has nothing to be compared with", []norms.WebSpan{spanOf(2, 8, 0.3)}, []outcome{none}},
		{"the same web twice is no other web", []norms.WebSpan{spanOf(2, 8, 0.3), spanOf(2, 12, 0.3)}, []outcome{none, none}},
	} {
		got := table.JudgeSpans(c.spans)
		if len(got) != len(c.want) {
			t.Fatalf("%s: %d verdicts for %d spans", c.claim, len(got), len(c.spans))
		}
		for i, w := range c.want {
			web := c.spans[i].Web
			if w == none {
				if len(got[i]) != 0 {
					t.Errorf("%s: %v is judged: %+v", c.claim, web, got[i])
				}
				continue
			}
			if len(got[i]) != 1 {
				t.Errorf("%s: %v has %d verdicts, want one", c.claim, web, len(got[i]))
				continue
			}
			v := got[i][0]
			if v.Finding != w.finding || v.Certain != w.certain || math.Abs(v.Limit-w.limit) > 1e-9 {
				t.Errorf("%s: %v is %+v, want %+v", c.claim, web, v, w)
			}
			if v.Figure != "span" || v.Against != "other webs of the same hand" {
				t.Errorf("%s: %v is judged as %q against %q", c.claim, web, v.Figure, v.Against)
			}
		}
	}
}

func TestUncertaintiesOfBothSpansCombineInQuadrature(t *testing.T) {
	table := shippedTable(t)
	judge := func(excess plane.Millimetre) norms.Verdict {
		spans := []norms.WebSpan{spanOf(2, 8, 0.4), spanOf(4, 9+excess, 0.3)}
		return table.JudgeSpans(spans)[1][0]
	}
	if v := judge(0.49); v.Finding != "too wide" || v.Certain {
		t.Errorf("0.49 mm past the limit within 0.5 mm reads %+v, want doubtful", v)
	}
	if v := judge(0.51); v.Finding != "too wide" || !v.Certain {
		t.Errorf("0.51 mm past the limit within 0.5 mm reads %+v, want certain", v)
	}
}

func TestTheSpanToleranceIsLabelledAsThisProjectsOwn(t *testing.T) {
	s := shippedTable(t).Span
	if s.Least != 1 || s.Fraction != 0.1 {
		t.Errorf("tolerance is %v mm and %v, want 1 mm and 0.1", s.Least, s.Fraction)
	}
	const want = "Span has no published norm. It is judged against the other webs of the same hand with the larger of 1 mm and 10 per cent as tolerance; the tolerance is this project's own."
	if s.Reason != want {
		t.Errorf("the tolerance is labelled %q", s.Reason)
	}
}

// Two joined webs, as on a hand before its operation, made a normal third web
// "too wide" before they were left out.
func TestAWebThatIsStillJoinedIsNoMeasureForTheOthers(t *testing.T) {
	span := func(w hand.Web, mm plane.Millimetre, shallow bool) norms.WebSpan {
		return norms.WebSpan{Web: w, Span: plane.Estimate[plane.Millimetre]{Value: mm, U95: 0.2}, Shallow: shallow}
	}
	table := norms.Table{Span: norms.SpanTolerance{Least: 1, Fraction: 0.1}}
	got := table.JudgeSpans([]norms.WebSpan{span(hand.SecondWeb, 2, true), span(hand.ThirdWeb, 8, false), span(hand.FourthWeb, 2, true)})
	for i, v := range got {
		if len(v) > 0 {
			t.Errorf("span %d is judged %v beside joined webs", i, v)
		}
	}
	if got := table.JudgeSpans([]norms.WebSpan{span(hand.SecondWeb, 9, false), span(hand.ThirdWeb, 8, false), span(hand.FourthWeb, 2, true)}); len(got[0]) != 1 || len(got[2]) != 0 {
		t.Errorf("beside a joined fourth web the others are judged %v", got)
	}
}
