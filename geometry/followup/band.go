package followup

import (
	"math"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
)

// BandPoint is where the other hand's web lies at one sitting.
type BandPoint struct {
	Day    Day
	Months float64
	Index  plane.Estimate[plane.Ratio]
	// Readings is how many were pooled.
	Readings int
}

// band pools the other hand's readings day by day, those in the view of the
// operated hand's baseline only, since another view is another index.
func band(s Series, own, other []Sitting) []BandPoint {
	view := bandView(s, own, other)
	var out []BandPoint
	for i := 0; i < len(other); {
		day := other[i].Day
		var all []plane.Estimate[plane.Ratio]
		for ; i < len(other) && other[i].Day == day; i++ {
			if other[i].View == view {
				all = append(all, other[i].Index)
			}
		}
		if len(all) > 0 {
			out = append(out, BandPoint{Day: day, Months: Months(s.Operated, day), Index: Pooled(all), Readings: len(all)})
		}
	}
	return out
}

func bandView(s Series, own, other []Sitting) (v hand.View) {
	switch {
	case s.Baseline >= 0:
		v = own[s.Baseline].View
	case len(own) > 0:
		v = own[0].View
	case len(other) > 0:
		v = other[0].View
	}
	return v
}

// Pooled is the mean of several readings of one web on one day, each weighted by
// the inverse square of its uncertainty. Where they disagree by more than their
// uncertainties allow, that of the mean is widened by Birge's ratio (Birge RT.
// Phys Rev 1932;40:207-27, from memory). A reading without uncertainty makes all
// weigh alike. It panics on none.
func Pooled(readings []plane.Estimate[plane.Ratio]) plane.Estimate[plane.Ratio] {
	weights, exact := make([]float64, len(readings)), false
	for i, r := range readings {
		weights[i] = 1 / float64(r.U95*r.U95)
		exact = exact || !(r.U95 > 0)
	}
	if exact {
		return alike(readings)
	}
	var sum, total float64
	for i, r := range readings {
		sum += weights[i] * float64(r.Value)
		total += weights[i]
	}
	mean := sum / total
	var chi2 float64
	for i, r := range readings {
		// U95 is about two standard uncertainties, and chi square is made of one.
		chi2 += 4 * weights[i] * math.Pow(float64(r.Value)-mean, 2)
	}
	birge := 1.0
	if n := len(readings); n > 1 {
		birge = math.Max(1, math.Sqrt(chi2/float64(n-1)))
	}
	return plane.Estimate[plane.Ratio]{Value: plane.Ratio(mean), U95: plane.Ratio(birge / math.Sqrt(total))}
}

// alike is the plain mean, with the widest uncertainty among the readings and
// their distance from it.
func alike(readings []plane.Estimate[plane.Ratio]) plane.Estimate[plane.Ratio] {
	var out plane.Estimate[plane.Ratio]
	for _, r := range readings {
		out.Value += r.Value / plane.Ratio(len(readings))
	}
	for _, r := range readings {
		out.U95 = max(out.U95, r.U95, plane.Ratio(math.Abs(float64(r.Value-out.Value))))
	}
	return out
}
