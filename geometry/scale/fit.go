package scale

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"

	"ogive/geometry/plane"
)

// Fit is the best map, an ensemble of maps that are as likely, and what the
// user should know about it.
type Fit struct {
	Method   Method
	Best     Map
	Likely   []Map
	Warnings []string
	// Usual are those of the warnings that are true of every scale of this kind,
	// such as that two points show no tilt. All others say that something is
	// amiss or contradicts something else.
	Usual []string
}

// PerPixel is the millimetres in a pixel at a place on the photograph; its
// uncertainty is the distance from the best map within which 95 per cent of the
// likely maps lie.
func (f Fit) PerPixel(at plane.PixelPoint) plane.Estimate[plane.Millimetre] {
	best := f.Best.PerPixel(at)
	off := make([]float64, len(f.Likely))
	for i, m := range f.Likely {
		off[i] = math.Abs(float64(m.PerPixel(at) - best))
	}
	return plane.Estimate[plane.Millimetre]{Value: best, U95: plane.Millimetre(upper95(off))}
}

func upper95(off []float64) float64 {
	if len(off) == 0 {
		return 0
	}
	slices.Sort(off)
	return off[min(len(off)*95/100, len(off)-1)]
}

// draws is the size of the ensemble.
const draws = 400

// newFit draws the ensemble. The numbers drawn are the same at every call, so
// that the same marks give the same figures and a dragged point moves them
// smoothly.
func newFit(method Method, best Map, draw func(*rand.Rand) Map) Fit {
	f := Fit{Method: method, Best: best, Likely: make([]Map, draws)}
	rng := rand.New(rand.NewPCG(0x5ca1e, 400))
	for i := range f.Likely {
		f.Likely[i] = draw(rng)
	}
	return f
}

func (f *Fit) warn(format string, args ...any) {
	f.Warnings = append(f.Warnings, fmt.Sprintf(format, args...))
}

// Remark adds a warning that is true of every scale of this kind.
func (f *Fit) Remark(format string, args ...any) {
	f.warn(format, args...)
	f.Usual = append(f.Usual, f.Warnings[len(f.Warnings)-1])
}

// Limits beyond which a scale is worth a warning (this project's own).
const (
	poorScale  = 0.02 // u95 of the scale on the reference itself
	largeTilt  = 15   // degrees
	narrowView = 15.0 // mm across the whole photograph
	wideView   = 1500.0
)

// warnOfPlacing warns where the placing of the points alone leaves the scale
// uncertain; u95 is relative.
func (f *Fit) warnOfPlacing(u95 float64) {
	if u95 > poorScale {
		f.warn("The scale is known to %.2g per cent only, because the marks on the %s lie close together for the error of placing them: mark a longer stretch, or magnify the photograph to place them better.", 100*u95, f.Method)
	}
}

// warnOfTilt warns of a tilt that exceeds the limit by more than one standard
// deviation, sure being the tilt less that.
func (f *Fit) warnOfTilt(sure, tilt plane.Angle, seenBy string) {
	if sure.Degrees() > largeTilt {
		f.warn("%s tilted by about %.0f degrees against the camera: parts of the hand that don't lie in the same plane are measured wrong; photograph from straight above.", seenBy, tilt.Degrees())
	}
}

// warnOfSize warns where the photograph would show far more or far less than a
// hand, as after a length typed in centimetres.
func (f *Fit) warnOfSize(c Camera, at plane.PixelPoint, field string) {
	across := float64(f.Best.PerPixel(at)) * math.Max(float64(c.Width), float64(c.Height))
	if across < narrowView || across > wideView {
		f.warn("At this scale the whole photograph is %.3g mm across: check %s.", across, field)
	}
}

// placed is p as another placing of the same point might have put it.
func placed(p plane.PixelPoint, sd plane.Pixel, rng *rand.Rand) plane.PixelPoint {
	dx, dy := rng.NormFloat64(), rng.NormFloat64()
	return plane.Pt(p.X+sd*plane.Pixel(dx), p.Y+sd*plane.Pixel(dy))
}
