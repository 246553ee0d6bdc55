package marksfile

import (
	"fmt"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
)

const jointsForm = `an object of digits, such as {"middle": {"mcp": [x, y], "pip": [x, y]}}`

func (f field) joints() (map[hand.Digit]map[hand.Joint]plane.PixelPoint, map[hand.Digit]map[hand.Joint]bool) {
	marked := map[hand.Digit]map[hand.Joint]plane.PixelPoint{}
	absent := map[hand.Digit]map[hand.Joint]bool{}
	if f.missing() || !f.object(jointsForm, names(hand.Digits)...) {
		return marked, absent
	}
	for _, d := range hand.Digits {
		digit := f.at(d.String())
		if digit.missing() || !digit.object(`an object of joints, such as {"mcp": [x, y], "pip": [x, y]}`, names(hand.Joints)...) {
			continue
		}
		for _, j := range hand.Joints {
			switch joint := digit.at(j.String()); {
			case joint.missing():
			case joint.kind == aNull:
				set(absent, d, j, true)
			default:
				set(marked, d, j, joint.point())
			}
		}
		digit.checkApart(marked[d])
	}
	return marked, absent
}

// checkApart refuses two joints of a digit at one place.
func (f field) checkApart(joints map[hand.Joint]plane.PixelPoint) {
	for i, a := range hand.Joints {
		for _, b := range hand.Joints[i+1:] {
			p, ok := joints[a]
			q, also := joints[b]
			if ok && also && p.Distance(q) < leastDistance {
				f.at(b.String()).refuse(fmt.Sprintf("lies on the %v", a), "move one of them")
			}
		}
	}
}

func set[T any](in map[hand.Digit]map[hand.Joint]T, d hand.Digit, j hand.Joint, v T) {
	if in[d] == nil {
		in[d] = map[hand.Joint]T{}
	}
	in[d][j] = v
}

func names[T fmt.Stringer](of []T) []string {
	out := make([]string, len(of))
	for i, v := range of {
		out[i] = v.String()
	}
	return out
}
