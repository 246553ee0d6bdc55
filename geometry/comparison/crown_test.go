package comparison

import (
	"testing"

	"ogive/geometry/plane"
)

func TestCrownsDifferOnlyWhereTheWholeIntervalLiesBesideZero(t *testing.T) {
	angle := func(value, u95 float64) *plane.Estimate[plane.Angle] {
		return &plane.Estimate[plane.Angle]{Value: plane.Degrees(value), U95: plane.Degrees(u95)}
	}
	for _, c := range []struct {
		of     *plane.Estimate[plane.Angle]
		differ bool
	}{{angle(-61, 8), true}, {angle(9, 8), true}, {angle(-7, 8), false}, {nil, false}} {
		if got := (Web{CrownAngle: c.of}).CrownsDiffer(); got != c.differ {
			t.Errorf("%v: %v", c.of, got)
		}
	}
}
