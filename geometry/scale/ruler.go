package scale

import (
	"fmt"
	"math"
	"math/rand/v2"

	"ogive/geometry/plane"
)

// Method is ByRuler.
func (Ruler) Method() Method { return ByRuler }

// Points are the two ends.
func (r Ruler) Points() []plane.PixelPoint { return []plane.PixelPoint{r.From, r.To} }

// Fit is the similarity that puts the two ends Length apart. The likely maps
// move both ends and tilt the plane by up to the allowed tilt, in two directions.
func (r Ruler) Fit(camera Camera, sd plane.Pixel) (Fit, error) {
	if err := r.check(camera, sd); err != nil {
		return Fit{}, err
	}
	fit := newFit(ByRuler, untilted.laid(r.From, r.To, r.Length), func(rng *rand.Rand) Map {
		from, to := placed(r.From, sd, rng), placed(r.To, sd, rng)
		return camera.anyLens(rng).facing(camera.anySlant(rng)).laid(from, to, r.Length)
	})
	fit.Remark("Scale by two points of a ruler, which show no tilt: up to %.3g degrees either way are allowed for.", camera.tilt().Degrees())
	fit.warnOfPlacing(1.96 * math.Sqrt2 * float64(sd/r.From.Distance(r.To)))
	fit.warnOfSize(camera, r.From.Mid(r.To), "scale.length_mm")
	return fit, nil
}

func (r Ruler) check(camera Camera, sd plane.Pixel) error {
	if err := camera.check(sd); err != nil {
		return err
	}
	if err := checkSize("scale.length_mm", r.Length); err != nil {
		return err
	}
	if err := checkPoints("scale.ruler", r.Points()); err != nil {
		return err
	}
	if d := r.From.Distance(r.To); d < max(1, 5*sd) {
		return fmt.Errorf("scale.ruler: its two ends lie %.2g px apart, too little for an error of %.2g px in placing them; mark a longer stretch of the ruler", float64(d), float64(sd))
	}
	return nil
}

func checkSize(field string, mm plane.Millimetre) error {
	if !(mm > 0) || math.IsInf(float64(mm), 0) {
		return fmt.Errorf("%s is %v; give the size in millimetres, more than zero", field, float64(mm))
	}
	return nil
}

func checkPoints(field string, ps []plane.PixelPoint) error {
	for i, p := range ps {
		if !p.Finite() {
			return fmt.Errorf("%s: point %d is (%v, %v); give two finite numbers", field, i+1, float64(p.X), float64(p.Y))
		}
	}
	return nil
}
