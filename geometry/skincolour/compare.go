package skincolour

import (
	"math"

	"ogive/geometry/plane"
)

// Comparison is how far two samples lie from each other.
type Comparison struct {
	First, Second Sample
	// CIEDE2000 is the difference as the eye weighs it.
	CIEDE2000 plane.Estimate[float64]
	// CIELAB is the plain distance, for limits that are published in it.
	CIELAB plane.Estimate[float64]
}

// Compare is the difference of two samples. The uncertainty holds the spread of
// the skin, the light that may differ from place to place, and the balance; for
// samples of the same photograph the error of its balance is the same and mostly
// cancels.
func Compare(a, b Sample) Comparison {
	out := Comparison{First: a, Second: b}
	out.CIEDE2000.Value, out.CIELAB.Value = CIEDE2000(a.Colour, b.Colour), CIELAB(a.Colour, b.Colour)
	apart := Lab{a.Colour.L - b.Colour.L, a.Colour.A - b.Colour.A, a.Colour.B - b.Colour.B}
	shared := a.Balance.Photograph == b.Balance.Photograph
	lightA, lightB := a.Colour.Light(), b.Colour.Light()
	var weighed, plain doubt
	for _, d := range draws() {
		balance := d.balance[second]
		if shared {
			balance = d.balance[first]
		}
		p, q := d.of(a, lightA, first, d.balance[first]), d.of(b, lightB, second, balance)
		onto := Lab{q.L + apart.L, q.A + apart.A, q.B + apart.B}
		weighed.add(CIEDE2000(p, q)-out.CIEDE2000.Value, CIEDE2000(p, onto))
		plain.add(CIELAB(p, q)-out.CIELAB.Value, CIELAB(p, onto))
	}
	out.CIEDE2000.U95, out.CIELAB.U95 = weighed.u95(out.CIEDE2000.Value), plain.u95(out.CIELAB.Value)
	return out
}

// doubt gathers what chance does to a distance: how far it misses the one
// measured, and how far it takes apart two colours that are the same.
type doubt struct{ misses, alone []float64 }

func (d *doubt) add(miss, alone float64) {
	d.misses, d.alone = append(d.misses, math.Abs(miss)), append(d.alone, alone)
}

// u95 is the expanded uncertainty of the distance. A distance is never negative:
// one that chance alone may make has to hold zero, which the misses of the
// measured one would not show.
func (d *doubt) u95(value float64) float64 {
	u, alone := ninetyFifth(d.misses), ninetyFifth(d.alone)
	if value <= alone {
		return math.Max(u, alone)
	}
	return u
}

// Neutral reports whether both photographs were balanced on a neutral patch.
func (c Comparison) Neutral() bool { return c.First.Balance.Neutral && c.Second.Balance.Neutral }
