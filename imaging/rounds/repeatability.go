package rounds

import (
	"fmt"
	"image"
	"math"

	"ogive/geometry/plane"
	"ogive/geometry/scoring"
)

// leastClicks is how many clicks it takes to tell an observer's own deviation: with
// 40 clicks, two directions each, it is told to about an eighth.
const leastClicks = 40

// leastSD is the smallest deviation that is believed: nobody sees where in a pixel
// an edge lies.
const leastSD plane.Pixel = 0.3

// Click is how widely an observer's clicks scatter.
type Click struct {
	// SD is the standard deviation of one click each way, on a picture whose longer
	// side is Longer.
	SD, Longer     plane.Pixel
	Clicks, Rounds int
}

// Repeatability is how widely one observer's clicks on joints and crowns scatter in
// blind rounds on phantoms; false unless there are at least 40 of them.
//
// The bias of each kind of landmark, along the digit and sideways, is taken off
// first, as a part of the proximal phalanx: a learner who puts every MCP joint a
// twentieth of it too far proximal is told so by the round, and repeats it; what a reading wants is how far the next click may
// fall from the last. The scatter is robust (1.4826 times the median absolute
// residual), so that one click on the wrong finger does not count for all.
//
// Photographs with a reference observer are left out, whose own clicks scatter too.
func Repeatability(all []*Round, observer string) (Click, bool) {
	kinds := map[string]*sides{}
	c := Click{Longer: pictureWidth}
	for _, r := range all {
		if r.Observer != observer || r.Setup.Kind != Blind {
			continue
		}
		before := c.Clicks
		for _, result := range r.Results {
			c.Clicks += result.clicks(kinds, c.Longer)
		}
		if c.Clicks > before {
			c.Rounds++
		}
	}
	if c.Clicks < leastClicks {
		return c, false
	}
	var residuals []float64
	used := 0
	for _, kind := range landmarkKinds {
		if s := kinds[kind]; s != nil {
			residuals = append(append(residuals, aboutBias(s.distal, s.phalanx)...), aboutBias(s.ulnar, s.phalanx)...)
			used += 2
		}
	}
	n := float64(len(residuals))
	// Each median taken off uses up one residual.
	sd := scoring.RobustSD(residuals) * math.Sqrt(n/(n-float64(used)))
	c.SD = max(plane.Pixel(sd), leastSD)
	return c, true
}

// sides are the misses of one kind of landmark, each with the phalanx it lies on.
type sides struct{ distal, ulnar, phalanx []float64 }

// clicks adds the landmarks of one picture, as on a picture of that longer side.
func (r Result) clicks(kinds map[string]*sides, longer plane.Pixel) int {
	if !r.Exact || r.Longer <= 0 {
		return 0
	}
	k := float64(longer / r.Longer)
	for _, l := range r.Landmarks {
		s := kinds[l.Kind]
		if s == nil {
			s = &sides{}
			kinds[l.Kind] = s
		}
		s.distal, s.ulnar = append(s.distal, k*float64(l.DistalPx)), append(s.ulnar, k*float64(l.UlnarPx))
		s.phalanx = append(s.phalanx, k*float64(l.Phalanx))
	}
	return len(r.Landmarks)
}

// aboutBias is what is left of the misses when the median part of the phalanx by
// which they are off is taken away.
func aboutBias(misses, phalanx []float64) []float64 {
	parts := make([]float64, len(misses))
	for i, m := range misses {
		parts[i] = m / phalanx[i]
	}
	bias := scoring.Median(parts)
	left := make([]float64, len(misses))
	for i, m := range misses {
		left[i] = m - bias*phalanx[i]
	}
	return left
}

// On is the deviation to expect on a photograph of that size. Both are looked at
// filling a window, and what makes a joint hard to place is as large a part of
// either hand: so it grows with the photograph's longer side. One who zooms in does
// better on a large photograph than this says; the reading then errs on the side of
// doubt.
func (c Click) On(size image.Point) plane.Pixel {
	return c.SD * plane.Pixel(max(size.X, size.Y)) / c.Longer
}

// Sentence is what a reading says of it on a photograph of that size.
func (c Click) Sentence(size image.Point) string {
	rounds := "a blind round"
	if c.Rounds > 1 {
		rounds = fmt.Sprintf("%d blind rounds", c.Rounds)
	}
	return fmt.Sprintf("Placing a point is taken to scatter by %.1f px each way, this observer's own in %d clicks of %s on phantoms, scaled to the size of this photograph. A bias that the observer repeats is not in it, nor that joints on skin are harder to find.",
		float64(c.On(size)), c.Clicks, rounds)
}
