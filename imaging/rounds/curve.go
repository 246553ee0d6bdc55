package rounds

import (
	"cmp"
	"slices"
	"time"

	"ogive/geometry/scoring"
)

// Point is one round on a learning curve.
type Point struct {
	Round      string // its ID
	Begun      time.Time
	Kind       Kind
	Difficulty Difficulty
	Pictures   int
	Repeat     bool // of pictures seen before
	Score      scoring.Share
	Crowns     Crowns
}

// Curve is the learning curve over an observer's rounds of one kind, in the order
// of time. A round is a point of it once every picture is answered.
func Curve(all []*Round, observer string, kind Kind) []Point {
	var list []Point
	for _, r := range all {
		if r.Observer != observer || r.Setup.Kind != kind || len(r.Results) == 0 || !r.Done() {
			continue
		}
		s := r.Summary()
		list = append(list, Point{r.ID, r.Begun, kind, r.Setup.Difficulty, s.Done, r.Repeats != "", s.Score, s.Crowns})
	}
	slices.SortStableFunc(list, func(a, b Point) int {
		return cmp.Or(a.Begun.Compare(b.Begun), cmp.Compare(a.Round, b.Round))
	})
	return list
}
