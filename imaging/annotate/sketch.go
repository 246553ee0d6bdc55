package annotate

import (
	"image"
	"math"

	"golang.org/x/image/draw"

	"ogive/geometry/arch"
	"ogive/geometry/plane"
	"ogive/geometry/reading"
)

// ArchSketch is a small drawing of a web's arch at true proportion, opening
// upwards, on paper, size pixels wide and high. It is blank where no arch was
// fitted.
func ArchSketch(w reading.Web, size int) *image.RGBA {
	size = max(size, 1)
	s := &sheet{img: image.NewRGBA(image.Rect(0, 0, size, size)), em: float64(size) / 12, pen: float64(size) / 12}
	draw.Draw(s.img, s.img.Bounds(), image.NewUniform(paper), image.Point{}, draw.Src)
	s.begin()
	edge := 0.1 * float64(size)
	if curve, ok := sketched(w, boxOf(edge, edge, float64(size)-edge, float64(size)-edge)); ok {
		s.Lines(stroke{Core: cores[kindArch], Width: s.bold()}, curve)
	}
	return s.img
}

// sketched is the arch of w as a line that fills the box b.
func sketched(w reading.Web, b box) ([]spot, bool) {
	a, ok := archOf(w)
	if !ok {
		return nil, false
	}
	large := max(a.Span(), a.Rise(), 1)
	points := a.Polyline(0.55*large, large/40)
	low, high := xy(math.Inf(1), math.Inf(1)), xy(math.Inf(-1), math.Inf(-1))
	for _, p := range points {
		low = xy(math.Min(low.X, float64(p.X)), math.Min(low.Y, float64(p.Y)))
		high = xy(math.Max(high.X, float64(p.X)), math.Max(high.Y, float64(p.Y)))
	}
	extent := high.Sub(low)
	k := math.Min(b.Width()/extent.X, b.Height()/extent.Y)
	if !finite(xy(k, 0)) {
		return nil, false
	}
	middle := low.To(high, 0.5)
	out := make([]spot, len(points))
	for i, p := range points {
		out[i] = b.Centre().Add(xy(float64(p.X), float64(p.Y)).Sub(middle).Times(k))
	}
	return out, true
}

// archOf rebuilds the arch, one span or one rise large, from its figures.
func archOf(w reading.Web) (arch.Arch, bool) {
	if w.Shape == 0 || w.Span == nil || w.Rise == nil || w.CrownAngle == nil || w.Flare == nil {
		return arch.Arch{}, false
	}
	a := arch.Arch{Shape: w.Shape, Flare: w.Flare.Value, Turn: w.CrownAngle.Value / 2}
	a.Axis.Y = -1
	if w.Shape == arch.V {
		a.Turn = a.Flare
		return a, true
	}
	turned := a.Turn.Sin() - a.Flare.Sin()
	if turned < 1e-3 {
		return arch.Arch{}, false
	}
	a.Radius = max(w.Rise.Value, 0) / plane.Millimetre(turned)
	if w.Shape == arch.U {
		a.Flat = max(w.Span.Value-2*a.Radius*plane.Millimetre(a.Flare.Cos()-a.Turn.Cos()), 0)
	}
	return a, a.Radius > 0
}
