package flap

import (
	"fmt"
	"strings"

	"ogive/geometry/hand"
)

// ThirdsRule says whether the thirds rule can be used for a web: nil, or an
// error that tells which joints are missing. The rule measures from the MCP to
// the PIP joints; where one is not there, as with a missing phalanx, it has no
// meaning and the flap is to be taken from the marked arch (Palmar).
func ThirdsRule(m hand.Marks, absent map[hand.Digit]map[hand.Joint]bool, w hand.Web) error {
	var gone, unmarked []string
	radial, ulnar := w.Digits()
	for _, d := range []hand.Digit{radial, ulnar} {
		for _, j := range []hand.Joint{hand.MCP, hand.PIP} {
			if _, ok := m.Joint(d, j); ok {
				continue
			}
			name := fmt.Sprintf("the %s of the %s", landmark(d, j, m.View), finger(d))
			if absent[d][j] {
				gone = append(gone, name)
			} else {
				unmarked = append(unmarked, name)
			}
		}
	}
	switch {
	case len(gone) > 0:
		return fmt.Errorf("thirds rule withdrawn: %s %s said not to be there or not to be seen, so two thirds of the phalanx have no meaning; take a palmar flap from the arch instead", listed(gone), isOrAre(gone))
	case len(unmarked) > 0:
		return fmt.Errorf("thirds rule withdrawn: %s %s not marked; mark what is there, or take a palmar flap from the arch", listed(unmarked), isOrAre(unmarked))
	}
	return nil
}

// landmark is the joint's name; the thumb's second joint is its IP joint.
func landmark(d hand.Digit, j hand.Joint, v hand.View) string {
	switch {
	case d == hand.Thumb && j == hand.PIP:
		return "IP joint"
	case v == hand.Palmar:
		return j.Label(v)
	}
	return j.Label(v) + " joint"
}

func finger(d hand.Digit) string {
	if d == hand.Thumb {
		return d.String()
	}
	return d.String() + " finger"
}

func listed(names []string) string {
	if len(names) == 1 {
		return names[0]
	}
	return strings.Join(names[:len(names)-1], ", ") + " and " + names[len(names)-1]
}

func isOrAre(names []string) string {
	if len(names) == 1 {
		return "is"
	}
	return "are"
}
