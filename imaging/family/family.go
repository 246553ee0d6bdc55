// Package family holds what the family of a child is told before fingers are
// separated: for each finding, in plain words, what the operation will not
// change and what may need another one.
//
//	points := family.Points(file.Family.Findings, edited)
//	for _, p := range points { p.Title, p.Text }
//
// The default texts are a draft to speak from. Surgeons put their own words in
// their place, by key; keys are kept in plan files and don't change.
//
// The texts hold no promise, blame nobody and can be read at about twelve years
// of age (tests hold them to it).
package family

import "slices"

// Keys of the findings, and of the words before and after them.
const (
	Opening        = "opening"
	Rotation       = "rotation"
	Deviation      = "deviation"
	Stiffness      = "stiffness"
	JoinedNails    = "joined-nails"
	MissingPhalanx = "missing-phalanx"
	OvergrownDigit = "overgrown-digit"
	SeveralDigits  = "several-digits"
	AfterOperation = "after-operation"
	Closing        = "closing"
)

// Point is one thing to tell.
type Point struct {
	Key string
	// Finding is what the surgeon ticks; it is empty for a point that always
	// stands.
	Finding string
	// Title heads the text on the family's page.
	Title string
	Text  string
}

// Title heads the family's page.
const Title = "About the operation on the hand"

// Findings are the points that stand only if their finding is ticked, in the
// order in which they are told.
func Findings() []Point {
	return slices.DeleteFunc(slices.Clone(points), func(p Point) bool { return p.Finding == "" })
}

// All are all points in the order in which they are told, with their default
// texts.
func All() []Point { return slices.Clone(points) }

// Points are the points for the ticked findings, with the texts that were edited
// in place of the default ones. A text that was emptied leaves its point out. A
// key that is not known is passed over.
func Points(ticked []string, edited map[string]string) []Point {
	var out []Point
	for _, p := range points {
		if p.Finding != "" && !slices.Contains(ticked, p.Key) {
			continue
		}
		if own, ok := edited[p.Key]; ok {
			p.Text = own
		}
		if p.Text != "" {
			out = append(out, p)
		}
	}
	return out
}

// Default is the point with that key.
func Default(key string) (Point, bool) {
	i := slices.IndexFunc(points, func(p Point) bool { return p.Key == key })
	if i < 0 {
		return Point{}, false
	}
	return points[i], true
}
