package skin

import "ogive/geometry/skincolour"

// GraftDifference is how far the graft's colour lies from the skin around it: from
// the neighbouring skin if that was sampled, else from the back of the hand, else
// from the palm. It is false where there is nothing to compare.
func GraftDifference(samples []Sample, limits skincolour.Limits) (Line, bool) {
	graft := find(samples, skincolour.Graft)
	if graft == nil {
		return Line{}, false
	}
	for _, place := range []skincolour.Place{skincolour.Neighbour, skincolour.Back, skincolour.Palm} {
		if beside := find(samples, place); beside != nil {
			return comparison(*graft, *beside, limits), true
		}
	}
	return Line{}, false
}
