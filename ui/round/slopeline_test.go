package round

import (
	"testing"

	"ogive/imaging/rounds"
)

func TestEachAnswerToASlopeIsDrawnSteeperThanTheOneBefore(t *testing.T) {
	last := float32(0)
	for n := range slopeAngles {
		line := slopeLine(n)
		base, end := line[1], line[2]
		if end.X > 1 || end.Y > 1 {
			t.Errorf("%d leaves its square: %v", n, end)
		}
		fall := (end.Y - base.Y) / (end.X - base.X)
		if fall <= last {
			t.Errorf("%d falls by %v after %v", n, fall, last)
		}
		last = fall
	}
	asked := rounds.Question{Of: rounds.Slope, Choices: []rounds.Choice{{Value: "too flat"}, {Value: "within limits"}, {Value: "too steep"}}}
	for i, c := range newAnswers(asked, nil).cells {
		if len(c.drawing) != 3 || len(c.strokes) != 2 {
			t.Errorf("answer %d is drawn by %v", i, c.drawing)
		}
	}
}
