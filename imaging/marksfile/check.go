package marksfile

import (
	"fmt"
	"image"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/geometry/scale"
)

// Complete says what is still to be marked, or marked better, before the file
// can be measured: the scale, a web or a junction, and in the dorsal and the
// palmar view MCP and PIP of both digits of every web. The error names the field
// and the mend.
func (f File) Complete() error {
	if f.Reference == nil {
		return &Refusal{"scale", "is missing", "mark a ruler, its ticks or a card"}
	}
	if _, err := f.Reference.Fit(f.anyCamera(), f.Marks.ClickSD); err != nil {
		return err
	}
	if len(f.Marks.Webs) == 0 && len(f.Marks.Junctions) == 0 {
		return &Refusal{"webs", "there is nothing to measure", "mark a web or a junction"}
	}
	if f.Marks.View == hand.WebView {
		return nil
	}
	for _, w := range f.Marks.Webs {
		radial, ulnar := w.Web.Digits()
		for _, d := range []hand.Digit{radial, ulnar} {
			for _, j := range []hand.Joint{hand.MCP, hand.PIP} {
				if _, ok := f.Marks.Joint(d, j); !ok && !f.Absent[d][j] {
					return &Refusal{fmt.Sprintf("joints.%v.%v", d, j),
						fmt.Sprintf("is missing, which the %v needs", w.Web),
						fmt.Sprintf("mark the %s of the %v, or write null if it is not there or not to be seen", label(d, j, f.Marks.View), digitName(d))}
				}
			}
		}
	}
	return nil
}

// anyCamera takes in all marks. Whether points can be a ruler or a card does not
// depend on how large the photograph is.
func (f File) anyCamera() scale.Camera {
	c := scale.Camera{Width: 1, Height: 1}
	f.each(func(_ string, p plane.PixelPoint) {
		c.Width, c.Height = max(c.Width, p.X), max(c.Height, p.Y)
	})
	return c
}

// label is how a surgeon calls the joint; the thumb has one joint beyond its
// MCP joint, which takes the place of PIP.
func label(d hand.Digit, j hand.Joint, v hand.View) string {
	if d == hand.Thumb && j == hand.PIP {
		return "IP joint"
	}
	if v == hand.Palmar {
		return j.Label(v)
	}
	return j.Label(v) + " joint"
}

func digitName(d hand.Digit) string {
	if d == hand.Thumb {
		return "thumb"
	}
	return d.String() + " finger"
}

// CheckWithin refuses marks outside a photograph of that size. The error is a
// *Refusal that names the first of them.
func (f File) CheckWithin(size image.Point) error {
	var out error
	f.each(func(path string, p plane.PixelPoint) {
		if out == nil && !(p.X >= 0 && p.Y >= 0 && float64(p.X) <= float64(size.X) && float64(p.Y) <= float64(size.Y)) {
			out = &Refusal{path,
				fmt.Sprintf("[%g, %g] lies outside the photograph, which is %d x %d pixels", float64(p.X), float64(p.Y), size.X, size.Y),
				"move it, or check that the marks belong to this photograph, upright and at its full size"}
		}
	})
	return out
}

// each visits every marked point with the path it stands at.
func (f File) each(visit func(path string, p plane.PixelPoint)) {
	list := func(path string, ps []plane.PixelPoint) {
		for i, p := range ps {
			visit(element(path, i), p)
		}
	}
	if f.Reference != nil {
		list(inside("scale", referenceName(f.Reference)), f.Reference.Points())
	}
	for _, d := range hand.Digits {
		for _, j := range hand.Joints {
			if p, ok := f.Marks.Joint(d, j); ok {
				visit(fmt.Sprintf("joints.%v.%v", d, j), p)
			}
		}
	}
	for i, w := range f.Marks.Webs {
		list(element("webs", i)+".edge", w.Edge)
		list(element("webs", i)+".seeds", w.Seeds)
	}
	for i, j := range f.Marks.Junctions {
		list(element("junctions", i)+".line", j.Line)
		list(element("junctions", i)+".axis", j.Axis[:])
	}
	if f.Unfinished != nil {
		for i, p := range f.Unfinished.Points {
			visit(element("unfinished.points", i)+".at", p.At)
		}
	}
}
