package marking

import (
	"fmt"

	"ogive/geometry/hand"
)

// Name is what the spot is called in this view, for the history and for labels:
// "ring PIP", "third web crown".
func (s Spot) Name(view hand.View) string {
	switch s.Kind {
	case ScalePoint:
		return fmt.Sprintf("scale point %d", s.N+1)
	case JointPoint:
		return fmt.Sprintf("%v %s", s.Digit, s.Joint.Label(view))
	case SeedPoint:
		radial, ulnar := s.Web.Digits()
		switch s.N {
		case 0:
			return fmt.Sprintf("%v border on the %v", s.Web, radial)
		case 1:
			return fmt.Sprintf("%v crown", s.Web)
		}
		return fmt.Sprintf("%v border on the %v", s.Web, ulnar)
	case JunctionPoint:
		return fmt.Sprintf("junction point %d", s.N+1)
	}
	return fmt.Sprintf("long axis point %d", s.N+1)
}
