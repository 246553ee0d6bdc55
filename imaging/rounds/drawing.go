package rounds

import (
	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/geometry/reading"
)

// Drawing is the truth in pixels of the picture, to be drawn over the answer.
type Drawing struct {
	Webs []WebDrawing
	// Band is where the crown of a normal web may lie on the web asked about: its
	// corners in order around; empty where that is not known or was not asked.
	Band []plane.PixelPoint
	// Joints are the true joints from which the depth is told, in the order of
	// digits and joints.
	Joints []plane.PixelPoint
	// Answered are the webs as the blind marks give them.
	Answered []WebDrawing
}

// WebDrawing is one web. What is not known of it is empty; a V has both springings
// in its crown and its whole border for an arch.
type WebDrawing struct {
	Web       hand.Web
	Border    []plane.PixelPoint
	Arch      []plane.PixelPoint
	Crown     plane.PixelPoint
	HasCrown  bool
	Springing [2]plane.PixelPoint
	Junction  []plane.PixelPoint
	Axis      []plane.PixelPoint // two points of the digit, in the web view
}

// drawing shows only the web asked about by eye, and all of them blind.
func drawing(p *Picture, l Limits, seen marked) Drawing {
	var d Drawing
	for _, w := range p.Truth.Webs {
		if len(p.Questions) > 0 && w.Web != p.Web {
			continue
		}
		d.Webs = append(d.Webs, w.drawing())
	}
	for _, q := range p.Questions {
		if q.Of == Crown {
			d.Band = p.Truth.band(q.Web, l)
		}
	}
	for _, digit := range hand.Digits {
		for _, joint := range []hand.Joint{hand.MCP, hand.PIP} {
			if at, ok := p.Truth.Joints[digit][joint]; ok {
				d.Joints = append(d.Joints, at)
			}
		}
	}
	for _, w := range seen.reading.Webs {
		d.Answered = append(d.Answered, answered(w, seen.marks.Marks))
	}
	return d
}

func (w WebTruth) drawing() WebDrawing {
	d := WebDrawing{
		Web: w.Web, Border: w.Border, Arch: w.Arch, Crown: w.Crown, HasCrown: w.Shape != 0,
		Springing: w.Springing, Junction: w.Junction,
	}
	if len(w.Junction) > 0 {
		d.Axis = w.Axis[:]
	}
	return d
}

func answered(w reading.Web, m hand.Marks) WebDrawing {
	return webOfReading(w, m).drawing()
}

// band is the place of a normal crown on the picture.
func (t Truth) band(w hand.Web, l Limits) []plane.PixelPoint {
	f, ok := t.frame(w)
	if !ok {
		return nil
	}
	side := f.Across().Scale(float64(aside * f.Phalanx()))
	low, high := f.Middle(plane.Ratio(l.Index[0])), f.Middle(plane.Ratio(l.Index[1]))
	var corners []plane.PixelPoint
	for _, p := range []plane.Position{low.Add(side.Scale(-1)), low.Add(side), high.Add(side), high.Add(side.Scale(-1))} {
		corners = append(corners, t.Plane.Pixel(p))
	}
	return corners
}
