package rounds

import (
	"strings"
	"testing"

	"ogive/geometry/scoring"
)

func TestTheConclusionSaysWhichWayToGoAndIsNoSurerThanItsCounts(t *testing.T) {
	leans := func(values ...float64) scoring.Lean { return scoring.LeanOf(values, least) }
	for _, c := range []struct {
		along, aside scoring.Lean
		want         string
	}{
		{leans(-1, -1.2, -0.8, -2, -1.5, -0.9, -1.1, -1.3), leans(0, 0.05, 0, 0, 0, 0, 0, 0),
			"Correct the eye distally: your crowns were too proximal on 8 of 8 pictures, too distal on none; the median is 1.1 mm too proximal, between 2.0 mm too proximal and 0.8 mm too proximal at 95 per cent. " +
				"Sideways there is nothing to correct: no crown is off by 0.1 mm or more."},
		{leans(-11.2, -10.8, -1.5, -2, -1.1, 0, 0), leans(0.5, -0.5, 0.4, -0.4, 0, 0, 0.3),
			"Try to put crowns further distally: they were too proximal on 5 of 7 pictures, too distal on none; the median is 1.5 mm too proximal, between 11.2 mm too proximal and nothing at 95 per cent. This leans that way and may still be chance; more pictures will tell. " +
				"Sideways your crowns go no one way: towards the ulnar side on 3 of 7 pictures, towards the radial side on 2."},
		{leans(1, 2), leans(1, 2), "It takes 3 pictures with a crown to tell a direction; there are 2."},
		{leans(-2, 2, 0), leans(-0.6, -0.6, -0.6, -0.7, -0.8, -0.5),
			"Correct the eye to the ulnar side: your crowns were towards the radial side on 6 of 6 pictures, towards the ulnar side on none; the median is 0.6 mm towards the radial side, between 0.8 mm towards the radial side and 0.5 mm towards the radial side at 95 per cent. " +
				"Along the axis your crowns go no one way: too distal on 1 of 3 pictures, too proximal on 1."},
	} {
		if got := strings.Join(Crowns{Along: c.along, Aside: c.aside}.Sentences(), " "); got != c.want {
			t.Errorf("said: %s\nwant: %s", got, c.want)
		}
	}
	if got := (Crowns{}).Sentences(); got != nil {
		t.Errorf("without a crown it is said: %v", got)
	}
}

func TestMistakesInEveryQuestionAreGivenAnInstruction(t *testing.T) {
	counts := func(of Asked, rows ...[]int) Mistaken {
		names := findings[of]
		if of == Shape {
			names = shapeNames()
		}
		return Mistaken{of, scoring.Confusion{Names: names, Counts: rows}}
	}
	for _, c := range []struct {
		m    Mistaken
		want string
	}{
		{counts(Place, []int{1, 3, 0}, []int{0, 2, 0}, []int{0, 1, 2}),
			"3 of 4 mistakes in depth were towards too shallow: webs lie deeper than you judge: look again before you call one too shallow or normal, and in doubt take the deeper answer. That is too few to be sure of; more pictures will tell."},
		{counts(Width, []int{1, 0, 0}, []int{3, 2, 0}, []int{0, 0, 2}),
			"All 3 mistakes in width were towards too narrow: webs are wider than you judge: look again before you call one too narrow, and in doubt take the wider answer. This leans that way and may still be chance; more pictures will tell."},
		{counts(Slope, []int{0, 6, 0}, []int{0, 2, 0}, []int{0, 0, 2}),
			"All 6 mistakes in slope were towards too steep: junctions are flatter than you judge: look again before you call one too steep, and in doubt take the flatter answer."},
		{counts(Slope, []int{0, 0, 0}, []int{1, 0, 0}, []int{0, 0, 0}),
			"The one mistake in slope was towards too flat. If it comes again, junctions are steeper than you judge: look again before you call one too flat, and in doubt take the steeper answer."},
		{counts(Place, []int{0, 1, 0}, []int{1, 0, 0}, []int{0, 0, 0}),
			"Mistakes in depth go both ways, 1 each: find the MCP and the PIP joint of both fingers before you answer."},
		{counts(Shape, []int{0, 0, 0, 0}, []int{0, 0, 0, 0}, []int{0, 0, 0, 2}, []int{0, 0, 0, 0}),
			"In shape you said U where it was round, 2 times. A round web bends evenly all along and has neither a corner nor a flat: see whether a coin would lie in it."},
	} {
		got := texts(c.m.lessons(ByEye))
		if len(got) != 1 || got[0] != c.want {
			t.Errorf("said: %q\nwant: %s", got, c.want)
		}
	}
	if got := counts(Place, []int{1, 0, 0}, []int{0, 2, 0}, []int{0, 0, 3}).lessons(ByEye); len(got) > 0 {
		t.Errorf("without a mistake it is said %q", texts(got))
	}
}
