// Package followup tells whether a web has stayed where it was put while the
// hand grew.
//
//	s := followup.Follow(followup.History{Operated: day, Sittings: own, Other: other})
//	s.Points[3].Creep   // share of the way from the new web to the PIP joints, ± U95
//	s.Points[3].Grading // Withey's grade, and whether it is certain
//	s.Points[3].Differs // what else changed since the baseline: view, scale, observer
//	s.Band              // where the other hand's web lies, sitting by sitting
//
// Children grow, so it is the index that is followed and not millimetres.
package followup

import (
	"math"

	"ogive/geometry/plane"
)

// Creep is how far a web has advanced since the baseline, as a share of the
// distance that was left between it and the PIP joints then: (I - I0)/(1 - I0).
// It is 0 where the web has stayed, 1 where it has reached the PIP joints, and
// negative where it has deepened. The errors of the two sittings are taken as
// independent (JCGM 100:2008, 5.1.2).
//
// Both figures are NaN where the baseline leaves no distance that can be told:
// its interval reaches the PIP joints, as in a web not yet released.
func Creep(now, baseline plane.Estimate[plane.Ratio]) plane.Estimate[plane.Ratio] {
	if !(baseline.High() < 1) {
		nan := plane.Ratio(math.NaN())
		return plane.Estimate[plane.Ratio]{Value: nan, U95: nan}
	}
	left := 1 - baseline.Value
	byNow := now.U95 / left
	byBaseline := baseline.U95 * (1 - now.Value) / (left * left)
	return plane.Estimate[plane.Ratio]{
		Value: (now.Value - baseline.Value) / left,
		U95:   plane.Ratio(math.Hypot(float64(byNow), float64(byBaseline))),
	}
}
