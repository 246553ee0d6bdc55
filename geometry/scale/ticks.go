package scale

import (
	"fmt"
	"math"
	"math/rand/v2"

	"ogive/geometry/plane"
)

// Method is ByTicks.
func (Ticks) Method() Method { return ByTicks }

// Points are the ticks.
func (t Ticks) Points() []plane.PixelPoint { return t.At }

// Fit finds the foreshortening of the ruler and from it the tilt along it. The
// best map rectifies that tilt and puts the first and the last tick, as fitted,
// at their distance. The likely maps move the ticks, draw the foreshortening
// from what the ticks and the allowed tilt say of it together, and tilt the
// plane across the ruler, which the ticks can't show, by up to the allowed tilt.
func (t Ticks) Fit(camera Camera, sd plane.Pixel) (Fit, error) {
	if err := t.check(camera, sd); err != nil {
		return Fit{}, err
	}
	line := throughPoints(t.At, camera.centre())
	if err := t.checkLine(line, sd); err != nil {
		return Fit{}, err
	}
	if err := t.checkSpacing(line.along, sd); err != nil {
		return Fit{}, err
	}
	usual := camera.lens()
	fitted, ok := foreshortened(line.along, usual.likelyForeshortening(camera.tilt()), sd)
	if !ok {
		return Fit{}, fmt.Errorf("scale.ticks: these ticks do not determine the scale; mark more of them, further apart")
	}
	length := t.Step * plane.Millimetre(len(t.At)-1)

	mapOf := func(l lens, r row, across float64) Map {
		s := line.slant(l, r.shrink, across)
		return l.facing(s).laid(line.at(r.first), line.at(r.last), length)
	}
	fit := newFit(ByTicks, mapOf(usual, fitted.row, 0), func(rng *rand.Rand) Map {
		l := camera.anyLens(rng)
		return mapOf(l, fitted.drawn(rng), camera.anyTilt(rng).Tan())
	})
	fit.warnOfPlacing(1.96 * fitted.lengthSD() / math.Abs(fitted.last-fitted.first))
	sure := math.Max(0, math.Abs(fitted.shrink)-fitted.shrinkSD())
	fit.warnOfTilt(line.slant(usual, sure, 0).angle(), line.slant(usual, fitted.shrink, 0).angle(), "Along its length the ruler is")
	fit.warnOfSize(camera, line.at((fitted.first+fitted.last)/2), "scale.step_mm")
	return fit, nil
}

func (t Ticks) check(camera Camera, sd plane.Pixel) error {
	if err := camera.check(sd); err != nil {
		return err
	}
	if err := checkSize("scale.step_mm", t.Step); err != nil {
		return err
	}
	if len(t.At) < 3 {
		return fmt.Errorf("scale.ticks: %d marked, three are needed; mark more ticks, or give the two ends as scale.ruler", len(t.At))
	}
	return checkPoints("scale.ticks", t.At)
}

// checkLine allows a tick to be marked anywhere along its length.
func (t Ticks) checkLine(line tickLine, sd plane.Pixel) error {
	length := math.Abs(line.along[len(line.along)-1] - line.along[0])
	for i, off := range line.off {
		if math.Abs(off) > max(4*float64(sd), 0.04*length) {
			return fmt.Errorf("scale.ticks: tick %d lies %.3g px beside the line through the others; mark all ticks along one edge of the ruler", i+1, math.Abs(off))
		}
	}
	for i := 1; i < len(line.along); i++ {
		if line.along[i] <= line.along[i-1] {
			return fmt.Errorf("scale.ticks: tick %d does not lie beyond tick %d; give each tick once, in order from one end to the other", i+1, i)
		}
	}
	return nil
}

// checkSpacing finds a tick left out or marked twice: a gap far from what the
// gaps beside it are, by more than the placing of the ticks explains.
func (t Ticks) checkSpacing(along []float64, sd plane.Pixel) error {
	// The largest of n normal errors is expected at the square root of 2 ln n.
	noise := math.Sqrt2 * placingSD(along, float64(sd)) * (2.5 + math.Sqrt(2*math.Log(float64(len(along)))))
	for i := 1; i < len(along); i++ {
		gap, usual := along[i]-along[i-1], usualGap(along, i)
		switch {
		case gap > 1.6*usual && gap-usual > noise:
			return fmt.Errorf("scale.ticks: the gap between ticks %d and %d is %.2g times that of its neighbours; mark the ticks left out there", i, i+1, gap/usual)
		case gap < 0.6*usual && usual-gap > noise:
			return fmt.Errorf("scale.ticks: ticks %d and %d lie at %.2g times the distance of their neighbours; take out the one that is no tick of the same step", i, i+1, gap/usual)
		}
	}
	return nil
}
