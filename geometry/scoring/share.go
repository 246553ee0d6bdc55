package scoring

import (
	"math"

	"gonum.org/v1/gonum/stat/distuv"
)

// Share is a part of n with the interval within which the true part lies at 95 per
// cent. Of nothing it is not known (NaN).
type Share struct {
	Value, Low, High float64
	Right, Of        int
}

// ShareOf is right of n, with Wilson's score interval (Wilson EB. J Am Stat Assoc
// 1927;22:209-12), which stays within 0 and 1 however small n is. Answers are
// taken as independent.
func ShareOf(right, n int) Share {
	s := Share{Value: math.NaN(), Low: math.NaN(), High: math.NaN(), Right: right, Of: n}
	if n <= 0 {
		return s
	}
	z := distuv.UnitNormal.Quantile(0.975)
	m, p := float64(n), float64(right)/float64(n)
	middle := (p + z*z/(2*m)) / (1 + z*z/m)
	half := z / (1 + z*z/m) * math.Sqrt(p*(1-p)/m+z*z/(4*m*m))
	s.Value, s.Low, s.High = p, max(0, middle-half), min(1, middle+half)
	switch right { // what rounding leaves of the bounds that are exact
	case 0:
		s.Low = 0
	case n:
		s.High = 1
	}
	return s
}
