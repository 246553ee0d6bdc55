package rounds

import (
	"fmt"

	"ogive/geometry/scoring"
)

// Mistaken is the confusion of one question: rows are what is true.
type Mistaken struct {
	Of Asked
	scoring.Confusion
}

// Leaning is how many mistakes lie on either side of the truth, for the questions
// whose choices have an order: below is too deep, too narrow or too flat where it is
// not.
func (m Mistaken) Leaning() (below, above int) {
	if m.Of == Shape {
		return 0, 0
	}
	for i, row := range m.Counts {
		for j, n := range row {
			switch {
			case j < i:
				below += n
			case j > i:
				above += n
			}
		}
	}
	return below, above
}

// called is what a question is about, in words.
var called = map[Asked]string{Place: "depth", Width: "width", Shape: "shape", Slope: "slope"}

// corrections say what to do about mistakes below and above the truth.
var corrections = map[Asked][2]string{
	Place: {
		"webs lie shallower than you judge: look again before you call one too deep, and in doubt take the shallower answer",
		"webs lie deeper than you judge: look again before you call one too shallow or normal, and in doubt take the deeper answer",
	},
	Width: {
		"webs are wider than you judge: look again before you call one too narrow, and in doubt take the wider answer",
		"webs are narrower than you judge: look again before you call one too wide, and in doubt take the narrower answer",
	},
	Slope: {
		"junctions are steeper than you judge: look again before you call one too flat, and in doubt take the steeper answer",
		"junctions are flatter than you judge: look again before you call one too steep, and in doubt take the flatter answer",
	},
}

// bothWays say what to do where mistakes go no one way.
var bothWays = map[Asked]string{
	Place: "find the MCP and the PIP joint of both fingers before you answer",
	Width: "compare the opening with those of the other webs where the borders become straight",
	Slope: "find the finger's long axis before you look at the junction",
}

// lessons say which way to correct the answers to this question; there are none
// where nothing was mistaken.
func (m Mistaken) lessons(kind Kind) []lesson {
	if m.Of == Shape {
		return m.shapeLesson(kind)
	}
	below, above := m.Leaning()
	n, all, side, correct := above, below+above, m.Names[len(m.Names)-1], corrections[m.Of][1]
	if below > above {
		n, side, correct = below, m.Names[0], corrections[m.Of][0]
	}
	what, towards, chance := called[m.Of], said(side), scoring.SignTest(below, above)
	switch {
	case all == 0:
		return nil
	case all == 1:
		return []lesson{{open, fmt.Sprintf("The one mistake in %s was towards %s. If it comes again, %s.", what, towards, correct)}}
	case 2*n == all:
		return []lesson{{open, fmt.Sprintf("Mistakes in %s go both ways, %d each: %s.", what, n, bothWays[m.Of])}}
	}
	l := lesson{open, fmt.Sprintf("%d of %d mistakes in %s were towards %s: %s.", n, all, what, towards, correct)}
	if n == all {
		l.text = fmt.Sprintf("All %d mistakes in %s were towards %s: %s.", all, what, towards, correct)
	}
	switch {
	case chance < 0.05:
		l.weight = told
	case (scoring.Lean{Chance: chance}).Leans():
		l.weight = leaning
		l.text += " This leans that way and may still be chance; more pictures will tell."
	default:
		l.text += " That is too few to be sure of; more pictures will tell."
	}
	return []lesson{l}
}

// shapeLesson is the shape most often mistaken, and by what it is known.
func (m Mistaken) shapeLesson(kind Kind) []lesson {
	truth, given, times, ok := m.Worst()
	if !ok {
		return nil
	}
	often := "once"
	if times > 1 {
		often = fmt.Sprintf("%d times", times)
	}
	who := "you said"
	if kind == Blind {
		who = "your marks read as"
	}
	return []lesson{{open, fmt.Sprintf("In shape %s %s where it was %s, %s. %s", who, said(given), said(truth), often, shapeAdvice[truth])}}
}
