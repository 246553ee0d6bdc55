package measure

import (
	"ogive/geometry/plane"
	"ogive/geometry/scale"
	"ogive/imaging/photo"
	"ogive/imaging/ruler"
)

// Scaling is a marked scale and what the photograph itself says of it: the ticks
// of a ruler between its two marked ends tell the scale better than two clicks,
// show the foreshortening along the ruler, and contradict a mistyped length.
type Scaling struct {
	Marked  scale.Reference
	ticks   *scale.Ticks // nil where none could be counted for sure
	warning string
}

// Inspect looks for the ticks of a marked ruler. It takes some milliseconds, so
// a window keeps the Scaling until the scale is marked anew.
func Inspect(p *photo.Photograph, marked scale.Reference) Scaling {
	s := Scaling{Marked: marked}
	r, ok := marked.(scale.Ruler)
	if !ok {
		return s
	}
	found, err := ruler.FindTicks(p, r.From, r.To)
	if err != nil {
		return s
	}
	if ticks, ok := found.Scale(r.Length); ok {
		s.ticks = &ticks
	} else {
		s.warning = ruler.Check(found, r.Length)
	}
	return s
}

// Fit fits the scale through the ticks where there are any, else through what
// was marked. Its method is the one marked.
func (s Scaling) Fit(camera scale.Camera, sd plane.Pixel) (scale.Fit, error) {
	if s.ticks != nil {
		if fit, err := s.ticks.Fit(camera, sd); err == nil {
			fit.Method = s.Marked.Method()
			fit.Remark("Scale by %d ticks found between the ends of the ruler, which show no tilt across it: up to %.3g degrees either way are allowed for.", len(s.ticks.At), camera.Tilt.Degrees())
			return fit, nil
		}
	}
	fit, err := s.Marked.Fit(camera, sd)
	if err == nil && s.warning != "" {
		fit.Warnings = append(fit.Warnings, s.warning)
	}
	return fit, err
}
