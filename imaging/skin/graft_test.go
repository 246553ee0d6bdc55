package skin

import (
	"strings"
	"testing"

	"ogive/geometry/skincolour"
)

func TestAGraftIsComparedWithTheSkinNextToItFirst(t *testing.T) {
	sample := func(p skincolour.Place) Sample {
		return Sample{Sample: skincolour.Sample{Place: p, Colour: skincolour.Lab{L: 60, A: 12, B: 18}}}
	}
	graft, back, beside := sample(skincolour.Graft), sample(skincolour.Back), sample(skincolour.Neighbour)
	for name, c := range map[string]struct {
		samples []Sample
		with    string
	}{
		"neighbour": {[]Sample{back, graft, beside}, beside.Place.String()},
		"back":      {[]Sample{back, graft}, back.Place.String()},
		"nothing":   {[]Sample{graft}, ""},
		"no graft":  {[]Sample{back, beside}, ""},
	} {
		line, told := GraftDifference(c.samples, skincolour.Limits{})
		if told != (c.with != "") || !strings.Contains(line.Name, c.with) {
			t.Errorf("%s: %q, told %v", name, line.Name, told)
		}
	}
}
