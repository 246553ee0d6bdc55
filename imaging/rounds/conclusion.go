package rounds

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"ogive/geometry/scoring"
)

// fewest is the number of pictures from which a direction is spoken of.
const fewest = 3

// least is the miss in millimetres that is worth a word.
const least = 0.1

// lesson is one sentence to take home, and how much is known of which way to go.
type lesson struct {
	weight weight
	text   string
}

// weight says how sure a direction is, the surest first.
type weight int

const (
	told weight = iota
	leaning
	open // neither side stands out
)

// sentences are what to take home: what is told of which way to correct the eye
// first, then what leans one way, then the rest.
func (s Summary) sentences() []string {
	lessons := s.Crowns.lessons()
	for _, m := range s.Confusions {
		lessons = append(lessons, m.lessons(s.Kind)...)
	}
	return texts(lessons)
}

func texts(lessons []lesson) []string {
	slices.SortStableFunc(lessons, func(a, b lesson) int { return cmp.Compare(a.weight, b.weight) })
	var list []string
	for _, l := range lessons {
		list = append(list, l.text)
	}
	return list
}

// Sentences say which way the crowns are off and how to correct the eye: "You place
// crowns too proximal: on 8 of 10 pictures, and too distal on none. …" There is one
// along the axis and one sideways.
//
// The direction is told by counts and the exact sign test, and how far by the
// median: misses of crowns have heavy tails, and a mean with Student's interval
// tells nothing where two of seven lie a centimetre off and all to the same side.
func (c Crowns) Sentences() []string { return texts(c.lessons()) }

func (c Crowns) lessons() []lesson {
	switch n := c.Along.Of; {
	case n == 0:
		return nil
	case n < fewest:
		return []lesson{{open, fmt.Sprintf("It takes %d pictures with a crown to tell a direction; there are %d.", fewest, n)}}
	}
	return []lesson{lengthwise.lesson(c.Along), sideways.lesson(c.Aside)}
}

var (
	lengthwise = direction{"Along the axis", "too distal", "too proximal", "proximally", "distally"}
	sideways   = direction{"Sideways", "towards the ulnar side", "towards the radial side", "to the radial side", "to the ulnar side"}
)

// direction is how the two sides are called, and how each is corrected.
type direction struct{ name, positive, negative, correctPositive, correctNegative string }

func (d direction) lesson(l scoring.Lean) lesson {
	side, other, correct, n, against := d.positive, d.negative, d.correctPositive, l.Above, l.Below
	if l.Negative() {
		side, other, correct, n, against = d.negative, d.positive, d.correctNegative, l.Below, l.Above
	}
	counts := fmt.Sprintf("%s on %s, %s on %s", side, ofPictures(n, l.Of), other, countOf(against))
	switch {
	case n == 0:
		return lesson{open, fmt.Sprintf("%s there is nothing to correct: no crown is off by %s mm or more.", d.name, fixed(least, 1))}
	case l.Told():
		return lesson{told, fmt.Sprintf("Correct the eye %s: your crowns were %s%s.", correct, counts, d.median(l.Median))}
	case l.Leans():
		return lesson{leaning, fmt.Sprintf("Try to put crowns further %s: they were %s%s. This leans that way and may still be chance; more pictures will tell.", correct, counts, d.median(l.Median))}
	}
	return lesson{open, fmt.Sprintf("%s your crowns go no one way: %s.", d.name, counts)}
}

// median is how far the middle one is off, where its interval is known.
func (d direction) median(b scoring.Bias) string {
	if math.IsNaN(b.Low) || math.Abs(b.Value) < least {
		return ""
	}
	return fmt.Sprintf("; the median is %s, between %s and %s at 95 per cent", d.end(b.Value), d.end(b.Low), d.end(b.High))
}

func (d direction) end(x float64) string {
	if w := sideWords(x, d.positive, d.negative); w != "" {
		return w
	}
	return "nothing"
}

func ofPictures(n, of int) string { return fmt.Sprintf("%d of %d pictures", n, of) }

func countOf(n int) string {
	if n == 0 {
		return "none"
	}
	return fmt.Sprint(n)
}
