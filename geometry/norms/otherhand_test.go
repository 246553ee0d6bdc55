package norms

import (
	"math"
	"testing"

	"ogive/geometry/plane"
)

func mm(v, u float64) plane.Estimate[plane.Millimetre] {
	return plane.Estimate[plane.Millimetre]{Value: plane.Millimetre(v), U95: plane.Millimetre(u)}
}

func index(v, u float64) plane.Estimate[plane.Ratio] {
	return plane.Estimate[plane.Ratio]{Value: plane.Ratio(v), U95: plane.Ratio(u)}
}

var ownTolerance = SpanTolerance{Least: 1, Fraction: 0.1}

func TestASpanIsJudgedByTheOtherHandAndTheLargerTolerance(t *testing.T) {
	for _, c := range []struct {
		own, other, u float64
		finding       string
		certain       bool
		limit         float64
	}{
		{8.9, 8, 0.1, NoDifference, false, 9},
		{9.1, 8, 0.1, "too wide", false, 9},      // 0.1 beyond with 0.14
		{9.2, 8, 0.1, "too wide", true, 9},       // 0.2 beyond with 0.14
		{6.7, 8, 0.1, "too narrow", true, 7},     // a millimetre is more than a tenth of 8
		{21.9, 20, 0.1, NoDifference, false, 22}, // a tenth of 20 is more than a millimetre
		{22.2, 20, 0.1, "too wide", true, 22},
		{17.7, 20, 0.1, "too narrow", true, 18},
		{17.8, 20, 0.2, "too narrow", false, 18},
	} {
		v := ownTolerance.JudgeSpanAgainst(OtherHand, mm(c.own, c.u), mm(c.other, c.u))
		if v.Finding != c.finding || v.Certain != c.certain || math.Abs(v.Limit-c.limit) > 1e-9 || v.Figure != "span" || v.Against != "other hand" {
			t.Errorf("%+v: %+v", c, v)
		}
	}
}

func TestAGreaterDepthIsDeeperAndAGreaterIndexShallower(t *testing.T) {
	if v := ownTolerance.JudgeDepthAgainst(OtherHand, mm(23, 0.3), mm(20, 0.3)); v.Finding != "too deep" || !v.Certain {
		t.Errorf("3 mm deeper: %+v", v)
	}
	if v := ownTolerance.JudgeDepthAgainst(OtherHand, mm(17, 0.3), mm(20, 0.3)); v.Finding != "too shallow" || !v.Certain {
		t.Errorf("3 mm shallower: %+v", v)
	}
	if v := ownTolerance.JudgeIndexAgainst(OtherHand, index(0.425, 0.01), index(0.5, 0.01), 40); v.Finding != "too deep" || !v.Certain || math.Abs(v.Limit-0.45) > 1e-9 {
		t.Errorf("0.075 less: %+v", v)
	}
	if v := ownTolerance.JudgeIndexAgainst(OtherHand, index(0.56, 0.02), index(0.5, 0.02), 40); v.Finding != "too shallow" || v.Certain || math.Abs(v.Limit-0.55) > 1e-9 {
		t.Errorf("0.06 more, told to 0.03: %+v", v)
	}
}

// A millimetre on an infant's phalanx of 14 mm is 0.071 of index, more than a
// tenth of the depth.
func TestOnASmallHandTheMillimetreDecidesTheIndex(t *testing.T) {
	if v := ownTolerance.JudgeIndexAgainst(OtherSitting, index(0.56, 0.001), index(0.5, 0.001), 14); v.Finding != NoDifference || v.Against != "other sitting" {
		t.Errorf("0.84 mm: %+v", v)
	}
	if v := ownTolerance.JudgeIndexAgainst(OtherHand, index(0.58, 0.001), index(0.5, 0.001), 14); v.Finding != "too shallow" || !v.Certain {
		t.Errorf("1.12 mm: %+v", v)
	}
}
