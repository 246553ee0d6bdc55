package rounds

import (
	"fmt"
	"math"

	"ogive/geometry/scoring"
)

// fewest is the number of pictures from which a bias is spoken of.
const fewest = 3

// sentences are what to take home: which way to correct the eye first.
func (s Summary) sentences() []string {
	list := s.Crowns.Sentences()
	for _, m := range s.Confusions {
		if w := m.words(); w != "" {
			list = append(list, w)
		}
	}
	return list
}

// Sentences say which way the crowns are off and how to correct the eye: "You place
// crowns 1.2 mm too proximal (0.6 to 1.8 mm at 95 per cent); correct the eye
// distally."
func (c Crowns) Sentences() []string {
	switch {
	case c.Distal.N == 0:
		return nil
	case c.Distal.N < fewest:
		return []string{fmt.Sprintf("%d pictures with a crown are too few to tell a bias; it takes %d.", c.Distal.N, fewest)}
	}
	along := direction{"too distal", "too proximal", "proximally", "distally"}
	aside := direction{"towards the ulnar side", "towards the radial side", "to the radial side", "to the ulnar side"}
	var list []string
	for _, b := range []struct {
		scoring.Bias
		direction
	}{{c.Distal, along}, {c.Ulnar, aside}} {
		if b.Told() {
			list = append(list, b.told(b.Bias))
		}
	}
	if len(list) == 0 {
		return []string{fmt.Sprintf("No bias that can be told: along the axis %s, sideways %s, at 95 per cent.", along.interval(c.Distal), aside.interval(c.Ulnar))}
	}
	return list
}

// direction is how the two signs of a bias are called, and how each is corrected.
type direction struct{ positive, negative, correctPositive, correctNegative string }

func (d direction) told(b scoring.Bias) string {
	side, correct, from, to := d.positive, d.correctPositive, b.Low, b.High
	if b.Value < 0 {
		side, correct, from, to = d.negative, d.correctNegative, -b.High, -b.Low
	}
	return fmt.Sprintf("You place crowns %s mm %s (%s to %s mm at 95 per cent); correct the eye %s.",
		fixed(math.Abs(b.Value), 1), side, fixed(from, 1), fixed(to, 1), correct)
}

// interval is an interval that reaches over zero: "from 0.4 mm too proximal to
// 0.9 mm too distal".
func (d direction) interval(b scoring.Bias) string {
	return fmt.Sprintf("from %s to %s", d.end(b.Low), d.end(b.High))
}

func (d direction) end(x float64) string {
	size := fixed(math.Abs(x), 1)
	switch {
	case size == "0.0":
		return "nothing"
	case x > 0:
		return size + " mm " + d.positive
	}
	return size + " mm " + d.negative
}
