package followup

import (
	"math"

	"ogive/geometry/plane"
)

// Feel is the surgeon's own finding on the skin of a web.
type Feel int

// The findings. The zero Feel says that nobody has looked.
const (
	NotFelt Feel = iota
	Soft
	Thickened
)

// Movement is what can be told of a web's place since the baseline.
type Movement int

// The movements: NotKnown where there is no creep to judge, NoneTold where zero
// lies within its interval.
const (
	NotKnown Movement = iota
	NoneTold
	Advanced
	Deepened
)

// Grading is the grade of web creep.
type Grading struct {
	Movement Movement
	// Grade is the likeliest grade, 0 to 4, of those from Least to Most that
	// the interval and the finding leave open.
	Grade, Least, Most int
	// Certain is true where they leave one only. That a web has not moved at all
	// is never certain, only that it has deepened.
	Certain bool
}

// The distance from web base to PIP crease is graded by thirds.
const (
	oneThird  plane.Ratio = 1.0 / 3
	twoThirds plane.Ratio = 2.0 / 3
)

// Grade is the grade after Withey SJ et al. J Hand Surg Br 2001;26:4-7: 0 soft as
// a normal web; 1 no advance but thickened; 2 advance to one third of the
// distance between web base and PIP crease, 3 to two thirds, 4 to all of it (the
// thirds from memory). Where no advance can be told the finding decides between
// 0 and 1, and without one both stay open.
func Grade(creep plane.Estimate[plane.Ratio], f Feel) Grading {
	if math.IsNaN(float64(creep.Value)) || math.IsNaN(float64(creep.U95)) {
		return Grading{Most: 4}
	}
	g := Grading{Movement: movement(creep)}
	still, stillMost := unmoved(f)
	g.Least, g.Grade, g.Most = still, still, stillMost
	if creep.High() > 0 {
		g.Most = max(stillMost, advanced(creep.High()))
	}
	if creep.Low() > 0 {
		g.Least, g.Grade, g.Most = advanced(creep.Low()), advanced(creep.Value), advanced(creep.High())
	}
	g.Certain = g.Least == g.Most
	return g
}

func movement(creep plane.Estimate[plane.Ratio]) Movement {
	switch {
	case creep.Low() > 0:
		return Advanced
	case creep.High() < 0:
		return Deepened
	}
	return NoneTold
}

// unmoved is the grades of a web that has not advanced.
func unmoved(f Feel) (least, most int) {
	switch f {
	case Soft:
		return 0, 0
	case Thickened:
		return 1, 1
	}
	return 0, 1
}

func advanced(creep plane.Ratio) int {
	switch {
	case creep <= oneThird:
		return 2
	case creep <= twoThirds:
		return 3
	}
	return 4
}
