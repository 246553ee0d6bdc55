package appraise

import (
	"strings"
	"testing"

	"ogive/geometry/deviation"
	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/geometry/reading"
	"ogive/imaging/appraisal"
	"ogive/imaging/casebook/readings"
)

func TestWhatWasMeasuredStandsAtItsPlaceWithItsInterval(t *testing.T) {
	m := measured{}
	for _, index := range []plane.Ratio{0.47, 0.49} {
		m.read(readings.Kept{Reading: reading.Reading{Side: hand.Left, View: hand.Dorsal, Webs: []reading.Web{
			{Web: hand.ThirdWeb, Index: &plane.Estimate[plane.Ratio]{Value: index, U95: 0.02}}, {Web: hand.FourthWeb}}}})
	}
	if got, want := m[Beside{appraisal.MeasuredIndex, third}], "dorsal web index 0.47 ± 0.02\ndorsal web index 0.49 ± 0.02"; got != want {
		t.Errorf("beside the third web stands %q, want %q", got, want)
	}
	if got, there := m[Beside{appraisal.MeasuredIndex, fourth}]; there {
		t.Errorf("beside the fourth web, which was not read, stands %q", got)
	}
}

func TestADeviationNamesItsSideOnlyWhereItCanBeTold(t *testing.T) {
	degrees := func(v, u float64) plane.Estimate[plane.Angle] {
		return plane.Estimate[plane.Angle]{Value: plane.Degrees(v), U95: plane.Degrees(u)}
	}
	for _, c := range []struct {
		value, u float64
		want     string
	}{{12, 3, "12 ± 3° at the PIP joint, to the ulnar side"}, {-12, 3, "12 ± 3° at the PIP joint, to the radial side"}, {1, 3, "no side can be told"}} {
		got := bendText(deviation.Deviation{Digit: hand.Ring, Angle: degrees(c.value, c.u)}, hand.Dorsal)
		if !strings.Contains(got, c.want) {
			t.Errorf("%v ± %v reads %q, want %q in it", c.value, c.u, got, c.want)
		}
	}
}
