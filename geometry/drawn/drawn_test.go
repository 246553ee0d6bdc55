package drawn

import (
	"math"
	"testing"

	"ogive/geometry/plane"
	"ogive/geometry/scale"
)

func sized(k float64) scale.Map { return scale.Map{H: [9]float64{k, 0, 0, 0, k, 0, 0, 0, 1}} }

// uncertain is a scale known to within 3 per cent, evenly.
func uncertain() scale.Fit {
	f := scale.Fit{Best: sized(0.1)}
	for i := range 401 {
		f.Likely = append(f.Likely, sized(0.1*(1+0.03*float64(i-200)/200)))
	}
	return f
}

func length(ps []plane.Position) plane.Millimetre { return ps[0].Distance(ps[1]) }

// Of an even spread of 3 per cent either way, 95 per cent lie within 2.85.
func TestALengthIsAsUncertainAsTheScaleAndAnAreaTwiceSo(t *testing.T) {
	line := []plane.Position{{X: 10, Y: 10}, {X: 30, Y: 10}}
	e := Figure(uncertain(), line, length)
	if e.Value != 20 || math.Abs(float64(e.U95)-20*0.0285) > 0.01 {
		t.Errorf("%+v, want 20 ± 0.57", e)
	}
	area := Figure(uncertain(), line, func(ps []plane.Position) plane.SquareMillimetre {
		return plane.SquareMillimetre(length(ps) * length(ps))
	})
	if math.Abs(float64(area.U95)/400-2*0.0285) > 0.003 {
		t.Errorf("%+v, want 400 ± 22.8", area)
	}
}

func TestAnExactScaleLeavesADrawnLengthExact(t *testing.T) {
	e := Figure(scale.Fit{Best: sized(0.1)}, []plane.Position{{}, {X: 3, Y: 4}}, length)
	if e.Value != 5 || e.U95 != 0 {
		t.Errorf("%+v, want 5 ± 0", e)
	}
}

func TestAFigureThatIsNoNumberHasNoUncertainty(t *testing.T) {
	e := Figure(uncertain(), []plane.Position{{}}, func([]plane.Position) plane.Ratio { return plane.Ratio(math.NaN()) })
	if !math.IsNaN(float64(e.Value)) || e.U95 != 0 {
		t.Errorf("%+v", e)
	}
}
