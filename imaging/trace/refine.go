package trace

import (
	"math"

	"ogive/imaging/photo"
)

const (
	finePoints   = 420.0 // at most, so that a huge photograph takes no longer
	coarseToFine = 4.0   // samples of the refinement to one of the terrain
	firstHalf    = 12    // samples looked at on either side of the rough border
	leastSmooth  = 1.6   // points
)

// refine finds the border to a fraction of a pixel.
func refine(p *photo.Photograph, f frame, line curve, step float64, e effort) (Border, error) {
	shrink := max(1, int(step/coarseToFine))
	fine := float64(shrink)
	apart := max(fine, line.length()/e.points)
	lo, hi := f.bounds()
	c := newCells(p, lo, hi, shrink)

	s := newStrip(c, line.resampled(apart), f.turn, firstHalf)
	if !s.learn(3, 8, robust) {
		return Border{}, errNoBorder
	}
	s.blended(1)
	line = s.curve.moved(s.normals, smooth(s.ridge(), ones(len(s.curve)), 30)).smoothed(2)

	fit := fitter{blur: 1, noise: 0.01, half: 9, offsetSD: 2, rows: e.trialRows}
	s = newStrip(c, line.resampled(2*apart), f.turn, firstHalf)
	if !s.learn(2, 7, robust) {
		return Border{}, errNoBorder
	}
	s.blended(1)
	fit.findBlur(s)
	fit.half = int(min(firstHalf, math.Ceil(2.5*fit.blur+3)))
	line = s.curve.moved(s.normals, fit.offsets(fit.fitAll(s), fine))

	near := max(2, 1.7*fit.blur)
	s = newStrip(c, line.resampled(apart), f.turn, max(fit.half, int(near+5)))
	edges, ok := fit.finish(s, near, sharp)
	if ok && fit.faint(edges) > faintWarned {
		// Lightness may have led astray; colour alone may do better.
		again := fit
		if e, ok := again.finish(s, near, robust); ok && again.faint(e) < fit.faint(edges) {
			fit, edges = again, e
		}
	}
	if !ok {
		return Border{}, errNoBorder
	}
	line = s.curve.moved(s.normals, fit.offsets(edges, fine))
	share := func(q point) float64 { return s.share(c.at(q)) }
	line = line.unbent(f.turn, fit.blur*fine).sharpened(fit.blur*fine, apart, share).within(f)
	return fit.report(p, f, line, edges, fine)
}

// finish fits the edges of the last strip, which must lie close to the border.
func (f *fitter) finish(s *strip, near float64, d doubt) ([]edge, bool) {
	if !s.learn(near, near+5, d) {
		return nil, false
	}
	s.blended(1)
	f.findBlur(s)
	f.offsetSD = 0.7
	return f.fitAll(s), true
}

// How far light and colour are distrusted while the border is only roughly
// known, where a shadow's edge may still be near, and in the end, where it is
// not and lightness gives the exact place.
var (
	robust = doubt{shaded: 0.1, smeared: 0.05, bent: 0.1}
	sharp  = doubt{shaded: 0.06, smeared: 0.1, bent: 0.25}
)

func ones(n int) []float64 {
	w := make([]float64, n)
	for i := range w {
		w[i] = 1
	}
	return w
}

// offsets is how far the border lies off the strip's curve, in pixels.
func (f fitter) offsets(edges []edge, fine float64) []float64 {
	at := make([]float64, len(edges))
	w := make([]float64, len(edges))
	sds := make([]float64, len(edges))
	for i, e := range edges {
		at[i] = e.at
		sds[i] = math.Sqrt(e.variance * f.noise)
		w[i] = 1 / (0.05*0.05 + e.variance*max(f.noise, e.misfit))
	}
	reach := leastSmooth + min(4, 5*median(sds))
	out := smooth(at, w, median(w)*math.Pow(reach, 4))
	for i := range out {
		out[i] *= fine
	}
	return out
}
