package written

import (
	"math"
	"strconv"

	"ogive/geometry/plane"
)

type number float64

// MarshalJSON writes six significant digits, more than any figure here is worth,
// and null for what is no number.
func (n number) MarshalJSON() ([]byte, error) {
	x := float64(n)
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return []byte("null"), nil
	}
	return []byte(strconv.FormatFloat(x, 'g', 6, 64)), nil
}

type estimation struct {
	Value number `json:"value"`
	U95   number `json:"u95"`
}

// xy is a place.
type xy [2]number

func plain[Q plane.Measured](e *plane.Estimate[Q]) *estimation { return scaled(e, 1) }

func degrees(e *plane.Estimate[plane.Angle]) *estimation { return scaled(e, 180/math.Pi) }

// squareCentimetres are a hundredth of square millimetres.
func squareCentimetres(e *plane.Estimate[plane.SquareMillimetre]) *estimation {
	return scaled(e, 0.01)
}

func scaled[Q plane.Measured](e *plane.Estimate[Q], by float64) *estimation {
	if e == nil {
		return nil
	}
	return &estimation{number(float64(e.Value) * by), number(float64(e.U95) * by)}
}

func places[U plane.Unit](ps []plane.Point[U]) []xy {
	out := make([]xy, len(ps))
	for i, p := range ps {
		out[i] = xy{number(p.X), number(p.Y)}
	}
	return out
}
