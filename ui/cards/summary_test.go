package cards

import (
	"testing"

	"ogive/geometry/hand"
	"ogive/geometry/norms"
	"ogive/geometry/reading"
)

func TestTheSummaryNamesEveryWebAndPutsWhatIsBeyondALimitFirst(t *testing.T) {
	within := norms.Verdict{Figure: "index", Finding: norms.WithinLimits, Certain: true}
	doubtful := norms.Verdict{Figure: "span", Finding: norms.WithinLimits}
	deep := norms.Verdict{Figure: "index", Finding: "too deep", Certain: true}
	got := summary([]reading.Web{
		{Web: hand.SecondWeb, Verdicts: []norms.Verdict{within, doubtful}},
		{Web: hand.ThirdWeb, Verdicts: []norms.Verdict{within}},
		{Web: hand.FourthWeb, Verdicts: []norms.Verdict{deep, within}},
	})
	want := "Fourth web: index: too deep\nSecond web: within limits? (doubtful)\nThird web: index: within limits"
	if got != want {
		t.Errorf("the summary is\n%s\nwant\n%s", got, want)
	}
	if alone := summary([]reading.Web{{Web: hand.ThirdWeb, Verdicts: []norms.Verdict{deep}}}); alone != "" {
		t.Errorf("a single web, whose card is in sight, is summed up as %q", alone)
	}
}
