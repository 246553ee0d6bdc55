package wording

import (
	"slices"
	"strings"
	"testing"

	"ogive/assets"
	"ogive/geometry/arch"
	"ogive/geometry/hand"
	"ogive/geometry/norms"
	"ogive/geometry/plane"
	"ogive/geometry/reading"
)

// shouted translates into capitals, so that no word of English is overlooked.
func shouted(sentence string, gaps Gaps) string {
	for name, filling := range gaps {
		sentence = strings.ReplaceAll(sentence, "{{."+name+"}}", "%"+filling.(string)+"%")
	}
	return strings.ToUpper(sentence)
}

func TestEveryWordIsPutIntoTheUsersLanguage(t *testing.T) {
	Translate(shouted)
	defer Translate(english)
	deep := norms.Verdict{Figure: "index", Finding: "too deep", Limit: 0.45, Against: "published values"}
	for _, c := range []struct{ got, want string }{
		{WebName(hand.ThirdWeb), "THIRD WEB"},
		{WebDigits(hand.ThirdWeb), "%MIDDLE% TO %RING%"},
		{JointOf(hand.Ring, hand.PIP, hand.Dorsal), "%RING% %PIP%"},
		{Photograph(hand.Left, hand.Palmar), "LEFT HAND, %PALM%"},
		{VerdictOf(deep), "INDEX: %%TOO DEEP%? (DOUBTFUL)%"},
		{Limit(deep), "0.45 (PUBLISHED VALUES)"},
		{Shape(reading.Web{Shape: arch.Gothic}), "%GOTHIC%, NOT SURE"},
		{Term(CrownAngle), "CROWN ANGLE"},
	} {
		if c.got != c.want {
			t.Errorf("translated %q, want %q", c.got, c.want)
		}
	}
	for _, all := range [][]string{digits(), joints()} {
		for _, word := range all {
			if word != strings.ToUpper(word) {
				t.Errorf("%q stays English", word)
			}
		}
	}
}

func digits() (all []string) {
	for _, d := range hand.Digits {
		all = append(all, Digit(d), Finger(d))
	}
	for _, w := range hand.Webs {
		all = append(all, Web(w))
	}
	return all
}

func joints() (all []string) {
	for _, j := range hand.Joints {
		for _, v := range []hand.View{hand.Dorsal, hand.Palmar} {
			all = append(all, Joint(j, v), JointOf(hand.Thumb, j, v))
		}
	}
	return all
}

// Findings and what they are drawn against come from geometry and from the
// table; the terms must name all of them.
func TestTermsNameEveryFindingAndEveryLimitOfTheTable(t *testing.T) {
	table, err := norms.Parse(assets.NormalValues)
	if err != nil {
		t.Fatal(err)
	}
	terms := Terms()
	known := func(word string) {
		t.Helper()
		if !slices.Contains(terms, word) {
			t.Errorf("%q is no term", word)
		}
	}
	for _, b := range table.Bands {
		known(b.Against)
	}
	for _, at := range []float64{-100, 0.5, 42, 100} {
		for _, v := range table.JudgeIndex(hand.Dorsal, plane.Estimate[plane.Ratio]{Value: plane.Ratio(at)}) {
			known(v.Finding)
		}
		for _, v := range table.JudgeSlope(plane.Estimate[plane.Angle]{Value: plane.Degrees(at)}) {
			known(v.Finding)
		}
	}
	spans := []norms.WebSpan{
		{Web: hand.SecondWeb, Span: plane.Estimate[plane.Millimetre]{Value: 3}},
		{Web: hand.ThirdWeb, Span: plane.Estimate[plane.Millimetre]{Value: 9}},
		{Web: hand.FourthWeb, Span: plane.Estimate[plane.Millimetre]{Value: 30}},
	}
	for _, verdicts := range table.JudgeSpans(spans) {
		for _, v := range verdicts {
			known(v.Finding)
			known(v.Against)
		}
	}
}

func TestAUsersOwnWordsAreNoSentenceWithGaps(t *testing.T) {
	Translate(func(string, Gaps) string { return "translated" })
	defer Translate(english)
	if got := Term("my {{.Values}}"); got != "my {{.Values}}" {
		t.Errorf("the user's words read %q", got)
	}
}
