package rounds

import (
	"strings"
	"testing"

	"ogive/geometry/arch"
	"ogive/geometry/hand"
	"ogive/geometry/plane"
)

// The other two webs are marked far too narrow; the third is marked as it is.
func TestASpanThatIsMarkedAsItIsIsJudgedAsItIsWhateverTheOtherWebsAreMarkedAs(t *testing.T) {
	spanned := func(second, third, fourth plane.Millimetre) Truth {
		var t Truth
		for w, span := range map[hand.Web]plane.Millimetre{hand.SecondWeb: second, hand.ThirdWeb: third, hand.FourthWeb: fourth} {
			t.Webs = append(t.Webs, WebTruth{Web: w, Shape: arch.U, Span: exactly(span)})
		}
		t.judge(usualLimits.table())
		return t
	}
	truth, marks := spanned(10, 9.1, 10), spanned(5, 9.1, 5)
	before, _ := marks.Web(hand.ThirdWeb)
	if before.verdicts[Width].Finding != "too wide" {
		t.Fatalf("beside narrow webs it is %+v", before.verdicts[Width])
	}
	marks.judgeWidthsBeside(truth, usualLimits)
	true3, _ := truth.Web(hand.ThirdWeb)
	marked3, _ := marks.Web(hand.ThirdWeb)
	marked2, _ := marks.Web(hand.SecondWeb)
	if marked3.verdicts[Width].Finding != true3.verdicts[Width].Finding || marked2.verdicts[Width].Finding != "too narrow" {
		t.Errorf("the third is %+v, marked %+v; the second %+v", true3.verdicts[Width], marked3.verdicts[Width], marked2.verdicts[Width])
	}
}

func TestAfterBlindMarksEveryWebIsDrawnAndNothingIsSaidToHaveBeenSaid(t *testing.T) {
	r := begin(t, Setup{Kind: Blind, Count: 1, Seed: 2, Difficulty: Clear, Faults: []Fault{TooDeep}})
	s, err := r.Supply(t.Context(), defaults(t), nil)
	if err != nil {
		t.Fatal(err)
	}
	defer s.Close()
	p, err := s.Next(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	f, err := r.Answer(p, Answer{Marks: clicked(t, r, p, 3, seeded(1))}, defaults(t), noon)
	if err != nil {
		t.Fatal(err)
	}
	if len(f.Drawing.Webs) != 3 || len(f.Drawing.Joints) != 8 {
		t.Errorf("%d webs and %d joints are drawn", len(f.Drawing.Webs), len(f.Drawing.Joints))
	}
	for _, l := range f.Lines {
		if strings.Contains(l.Words, "you said") || strings.Contains(l.Words, "as you") {
			t.Errorf("of marks: %s", l.Words)
		}
	}
}
