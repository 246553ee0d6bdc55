package plane

import "math"

// Measured is any quantity a figure can be stated in.
type Measured interface {
	Pixel | Millimetre | SquareMillimetre | Ratio | Angle | float64
}

// Estimate is a figure with its expanded uncertainty at 95 per cent: the truth
// is expected within Value ± U95 (JCGM 100:2008, 6.2).
type Estimate[Q Measured] struct{ Value, U95 Q }

// Low is the lower end of the interval.
func (e Estimate[Q]) Low() Q { return e.Value - e.U95 }

// High is the upper end of the interval.
func (e Estimate[Q]) High() Q { return e.Value + e.U95 }

// Holds reports whether the truth x lies within the interval.
func (e Estimate[Q]) Holds(x Q) bool { return math.Abs(float64(x-e.Value)) <= float64(e.U95) }
