// Package trace follows the border between skin and drape around a web.
//
// Three clicks say where: on the border of one finger, on the crown, on the
// border of the other finger.
//
//	border, err := trace.Web(photograph, [3]plane.PixelPoint{radial, crown, ulnar})
//	if err != nil { ... } // says what to do
//	for _, p := range border.Points { ... }
//
// The colours of this skin and this drape are learnt from the photograph around
// the clicks, so neither needs to be known. A path with drape on its one side
// and skin on its other is found on a shrunk copy and then refined on the
// photograph itself: square to the path, in linear light, a blurred step between
// two sloping levels is fitted at every point. The method is this project's own.
package trace

import (
	"errors"
	"fmt"
	"math"

	"ogive/geometry/plane"
	"ogive/imaging/photo"
)

// Border is the traced skin border of one web.
type Border struct {
	// Points run from the first click to the third past the crown, about one
	// for every pixel of the border's length; on large photographs at least 500
	// in all.
	Points []plane.PixelPoint
	// SD is the standard deviation of one point square to the border that the
	// noise of the photograph gives rise to.
	SD plane.Pixel
	// Contrast is the step from skin to drape as a multiple of the noise:
	// above 10 is good, below 3 the border is hardly to be seen.
	Contrast float64
	// Blur is the standard deviation of the photograph's blur at the border.
	Blur plane.Pixel
	// Warnings say in plain words what may be wrong with the border.
	Warnings []string
}

var errNoBorder = errors.New("no border between skin and drape can be followed between the three clicks: check that they lie on the border of one finger, on the crown and on the border of the other finger, or draw the border by hand")

// Web traces the border of one web from three clicks: border, crown, border. A
// click may be a few pixels off. It fails when the clicks make no sense or when
// no border can be followed; the error says what to do.
func Web(p *photo.Photograph, seeds [3]plane.PixelPoint) (Border, error) {
	size := p.Size()
	f, err := newFrame(seeds, size.X, size.Y)
	if err != nil {
		return Border{}, err
	}
	line, step, err := coarse(p, f)
	if err != nil {
		return Border{}, err
	}
	return refine(p, f, line, step)
}

// coarse is the border to about one sample of the terrain, and how many pixels
// that is.
func coarse(p *photo.Photograph, f frame) (curve, float64, error) {
	t := survey(p, f)
	if t.w < 8 || t.h < 8 {
		return nil, 0, fmt.Errorf("the clicks lie too close to the edge of the photograph to follow a border; draw it by hand")
	}
	t.guess()
	way, ok := t.path()
	for range relearnings {
		if !ok || len(way) < 5 || !t.relearn(way) {
			return nil, 0, errNoBorder
		}
		way, ok = t.path()
	}
	if !ok || len(way) < 5 {
		return nil, 0, errNoBorder
	}
	line := make(curve, len(way))
	for i, k := range way {
		line[i] = t.pointAt(float64(k%t.w), float64(k/t.w))
	}
	return line.smoothed(3).extended(3, 6, 6*t.step), t.step, nil
}

const (
	finePoints   = 500.0
	coarseToFine = 4.0
	firstHalf    = 12
	relearnings  = 2
	leastSmooth  = 1.6 // samples
)

// refine finds the border to a fraction of a pixel.
func refine(p *photo.Photograph, f frame, line curve, step float64) (Border, error) {
	shrink := max(1, int(step/coarseToFine))
	fine := float64(shrink)
	apart := max(fine, line.length()/finePoints)
	lo, hi := f.bounds()
	c := newCells(p, lo, hi, shrink)

	s := newStrip(c, line.resampled(apart), f.turn, firstHalf)
	if !s.learn(3, 8, robust) {
		return Border{}, errNoBorder
	}
	s.blended(1)
	line = s.curve.moved(s.normals, smooth(s.ridge(), ones(len(s.curve)), 30)).smoothed(2)

	fit := fitter{blur: 1, noise: 0.01, half: 9, offsetSD: 2}
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
	line = line.unbent(f.turn, fit.blur*fine).sharpened(fit.blur*fine, apart).within(f)
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

// unbent undoes what blur does to a bent border: the middle of a blurred edge
// moves towards the inner side of the bend, by half the blur's variance times
// the curvature.
func (c curve) unbent(turn, blur float64) curve {
	even := c.smoothed(2 + int(blur*blur))
	normals := even.normals(turn)
	offsets := make([]float64, len(c))
	for i := 1; i < len(c)-1; i++ {
		a, b := even[i].Sub(even[i-1]), even[i+1].Sub(even[i])
		bend := b.Direction().Sub(a.Direction()).Dot(normals[i]) / ((a.Norm() + b.Norm()) / 2)
		offsets[i] = -max(-0.5*blur, min(0.5*blur, float64(bend)*blur*blur/2))
	}
	return c.moved(normals, offsets)
}
