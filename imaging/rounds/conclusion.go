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
// distally." There is one sentence along the axis and one sideways.
func (c Crowns) Sentences() []string {
	switch {
	case c.Distal.N == 0:
		return nil
	case c.Distal.N < fewest:
		return []string{fmt.Sprintf("It takes %d pictures with a crown to tell a bias; there are %d.", fewest, c.Distal.N)}
	}
	return []string{lengthwise.sentence(c.Distal), sideways.sentence(c.Ulnar)}
}

var (
	lengthwise = direction{"Along the axis", "too distal", "too proximal", "proximally", "distally"}
	sideways   = direction{"Sideways", "towards the ulnar side", "towards the radial side", "to the radial side", "to the ulnar side"}
)

// direction is how the two signs of a bias are called, and how each is corrected.
type direction struct{ name, positive, negative, correctPositive, correctNegative string }

// least is the bias in millimetres that is worth a word.
const least = 0.1

func (d direction) sentence(b scoring.Bias) string {
	if max(math.Abs(b.Low), math.Abs(b.High)) < least {
		return fmt.Sprintf("%s there is nothing to correct: the bias is less than %s mm at 95 per cent.", d.name, fixed(least, 1))
	}
	if !b.Told() {
		return fmt.Sprintf("%s no bias can be told: it lies between %s and %s at 95 per cent.", d.name, d.end(b.Low), d.end(b.High))
	}
	side, correct, from, to := d.positive, d.correctPositive, b.Low, b.High
	if b.Value < 0 {
		side, correct, from, to = d.negative, d.correctNegative, -b.High, -b.Low
	}
	return fmt.Sprintf("You place crowns %s mm %s (%s to %s mm at 95 per cent); correct the eye %s.",
		fixed(math.Abs(b.Value), 1), side, fixed(from, 1), fixed(to, 1), correct)
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
