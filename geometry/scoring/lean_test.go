package scoring

import (
	"math"
	"testing"
)

// The probabilities are counts of tosses of a coin: 2 of 32, 14 of 64, 22 of 1024.
func TestTheSignTestCountsTossesOfACoin(t *testing.T) {
	for _, c := range []struct {
		below, above int
		want         float64
	}{{5, 0, 2. / 32}, {1, 5, 14. / 64}, {9, 1, 22. / 1024}, {0, 6, 2. / 64}, {3, 3, 1}, {0, 0, 1}} {
		if got := SignTest(c.below, c.above); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%d and %d: %v, want %v", c.below, c.above, got, c.want)
		}
	}
}

// Of ten values the second and the ninth bound the median at 97.9 per cent, of six
// the first and the sixth at 96.9, of five none do at 95: the tables of the
// binomial distribution.
func TestTheMedianLiesBetweenTwoOfTheValues(t *testing.T) {
	ten := LeanOf([]float64{10, 9, 8, 7, 6, 5, 4, 3, 2, 1}, 0.1).Median
	if ten.Value != 5.5 || ten.Low != 2 || ten.High != 9 {
		t.Errorf("of ten %+v", ten)
	}
	six := LeanOf([]float64{6, 5, 4, 3, 2, 1}, 0.1).Median
	if six.Low != 1 || six.High != 6 {
		t.Errorf("of six %+v", six)
	}
	if five := LeanOf([]float64{5, 4, 3, 2, 1}, 0.1).Median; !math.IsNaN(five.Low) || five.Value != 3 {
		t.Errorf("of five %+v", five)
	}
}

// With a mean's interval these seven tell no side, for two of them are wild.
func TestWildValuesDoNotHideToWhichSideAllLean(t *testing.T) {
	values := []float64{-11.2, -10.8, -1.5, -2, -1.1, 0, 0}
	if BiasOf(values).Told() {
		t.Fatal("the mean tells it")
	}
	l := LeanOf(values, 0.1)
	if l.Below != 5 || l.Above != 0 || l.Of != 7 || !l.Leans() || l.Told() || !l.Negative() {
		t.Errorf("%+v", l)
	}
	if l := LeanOf([]float64{-2, 2, 1, 0.05}, 0.1); l.Leans() || l.Above != 2 || l.Below != 1 {
		t.Errorf("%+v", l)
	}
}
