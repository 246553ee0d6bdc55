package markshapes

import (
	"testing"

	"ogive/geometry/hand"
)

func TestJointsOfOneDigitDifferInShape(t *testing.T) {
	seen := map[int]hand.Joint{}
	for _, j := range hand.Joints {
		outline := JointOutline(j, Spot{}, 10)
		n := len(outline)
		if j == hand.DIP {
			n = -n // four corners like the diamond, standing on a side
		}
		if other, ok := seen[n]; ok {
			t.Errorf("%v and %v have the same shape", j, other)
		}
		seen[n] = j
	}
	diamond, square := JointOutline(hand.MCP, Spot{}, 10), JointOutline(hand.DIP, Spot{}, 10)
	if diamond[0].X != 0 || square[0].X == 0 {
		t.Error("the diamond does not stand on a corner, or the square does")
	}
}
