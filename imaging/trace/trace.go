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

	"ogive/geometry/plane"
	"ogive/imaging/photo"
)

// Border is the traced skin border of one web.
type Border struct {
	// Points run from the first click to the third past the crown, about one
	// for every pixel of the border's length; on large photographs about 400
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
	return follow(p, seeds, thorough)
}

// Draft is Web in fewer points and with less learning, to follow a click while
// it is being dragged. The border may differ from that of Web by a few tenths of
// a pixel, and in difficult light by more.
func Draft(p *photo.Photograph, seeds [3]plane.PixelPoint) (Border, error) {
	return follow(p, seeds, draft)
}

// effort is what a trace may cost: the points of the fine border at most, how
// often the colours are learnt anew beside the path found, and on how many rows
// blurs are tried.
type effort struct {
	points      float64
	relearnings int
	trialRows   int
}

var (
	thorough = effort{points: finePoints, relearnings: 1, trialRows: 36}
	draft    = effort{points: finePoints / 5, trialRows: 6}
)

func follow(p *photo.Photograph, seeds [3]plane.PixelPoint, e effort) (Border, error) {
	size := p.Size()
	f, err := newFrame(seeds, size.X, size.Y)
	if err != nil {
		return Border{}, err
	}
	line, step, err := coarse(p, f, e.relearnings)
	if err != nil {
		return Border{}, err
	}
	return refine(p, f, line, step, e)
}

// coarse is the border to about one sample of the terrain, and how many pixels
// that is.
func coarse(p *photo.Photograph, f frame, relearnings int) (curve, float64, error) {
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
