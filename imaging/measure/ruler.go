package measure

import (
	"ogive/geometry/plane"
	"ogive/geometry/scale"
	"ogive/imaging/photo"
	"ogive/imaging/ruler"
)

// Ticks is the ticks of the ruler that ref marks by two points, found in the
// photograph: they tell the scale better than two clicks and show the
// foreshortening along the ruler. It is ref itself where ref is no ruler or its
// ticks can't be counted for sure. The warning is empty unless the ticks
// contradict the length given for the ruler.
func Ticks(p *photo.Photograph, ref scale.Reference) (better scale.Reference, warning string) {
	r, ok := ref.(scale.Ruler)
	if !ok {
		return ref, ""
	}
	found, err := ruler.FindTicks(p, r.From, r.To)
	if err != nil {
		return ref, ""
	}
	if ticks, ok := found.Scale(r.Length); ok {
		return ticks, ""
	}
	return ref, ruler.Check(found, r.Length)
}

// fit finds the scale by the ticks of a ruler where they can be counted, else
// by what was marked.
func (s Subject) fit(tilt plane.Angle) (scale.Fit, error) {
	camera := cameraOf(s.Photograph.Size(), s.Photograph.Facts(), tilt)
	sd := s.Marks.Marks.ClickSD
	better, warning := Ticks(s.Photograph, s.Marks.Reference)
	fit, err := better.Fit(camera, sd)
	if err != nil {
		fit, err = s.Marks.Reference.Fit(camera, sd)
	}
	if err == nil && warning != "" {
		fit.Warnings = append(fit.Warnings, warning)
	}
	return fit, err
}
