package rounds

import (
	"strings"
	"testing"

	"ogive/geometry/scoring"
)

func TestTheConclusionIsNoSurerThanItsInterval(t *testing.T) {
	bias := func(value, half float64) scoring.Bias {
		return scoring.Bias{Value: value, Low: value - half, High: value + half, N: 10}
	}
	for _, c := range []struct {
		along, aside scoring.Bias
		want         string
	}{
		{bias(-1.2, 0.6), bias(0.2, 0.5), "You place crowns 1.2 mm too proximal (0.6 to 1.8 mm at 95 per cent); correct the eye distally. " +
			"Sideways no bias can be told: it lies between 0.3 mm towards the radial side and 0.7 mm towards the ulnar side at 95 per cent."},
		{bias(0.9, 0.3), bias(-0.6, 0.2), "You place crowns 0.9 mm too distal (0.6 to 1.2 mm at 95 per cent); correct the eye proximally. " +
			"You place crowns 0.6 mm towards the radial side (0.4 to 0.8 mm at 95 per cent); correct the eye to the ulnar side."},
		{bias(0, 0), bias(0.02, 0.01), "Along the axis there is nothing to correct: the bias is less than 0.1 mm at 95 per cent. " +
			"Sideways there is nothing to correct: the bias is less than 0.1 mm at 95 per cent."},
		{scoring.BiasOf([]float64{1, 2}), scoring.BiasOf([]float64{1, 2}), "It takes 3 pictures with a crown to tell a bias; there are 2."},
	} {
		if got := strings.Join(Crowns{Distal: c.along, Ulnar: c.aside}.Sentences(), " "); got != c.want {
			t.Errorf("said: %s\nwant: %s", got, c.want)
		}
	}
	if got := (Crowns{Distal: scoring.BiasOf(nil)}).Sentences(); got != nil {
		t.Errorf("without a crown it is said: %v", got)
	}
}
