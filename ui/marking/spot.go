package marking

import (
	"fmt"

	"ogive/geometry/hand"
)

// Kind is the kind of thing a spot marks.
type Kind int

// The kinds.
const (
	ScalePoint Kind = iota + 1
	JointPoint
	SeedPoint     // N 0 border of the radial digit, 1 crown, 2 border of the ulnar digit
	JunctionPoint // along the junction of glabrous and pigmented skin
	AxisPoint     // on the digit's long axis, in the web view
)

// Spot names one point that can be placed on the photograph.
type Spot struct {
	Kind  Kind
	Digit hand.Digit
	Joint hand.Joint
	Web   hand.Web
	N     int
}

// Step is a part of the work. Any step may be done first.
type Step int

// The steps, in the order in which they are offered.
const (
	Scale Step = iota + 1
	Joints
	Webs
	Junction
)

// Step is the part of the work to which the spot belongs.
func (s Spot) Step() Step {
	switch s.Kind {
	case ScalePoint:
		return Scale
	case JointPoint:
		return Joints
	case SeedPoint:
		return Webs
	}
	return Junction
}

// Key is the spot's name in the marks file while its item is unfinished.
func (s Spot) Key() string {
	switch s.Kind {
	case ScalePoint:
		return fmt.Sprintf("scale %d", s.N)
	case JointPoint:
		return fmt.Sprintf("joint %v %v", s.Digit, s.Joint)
	case SeedPoint:
		return fmt.Sprintf("web %d seed %d", int(s.Web), s.N)
	case JunctionPoint:
		return fmt.Sprintf("web %d junction %d", int(s.Web), s.N)
	}
	return fmt.Sprintf("web %d axis %d", int(s.Web), s.N)
}
