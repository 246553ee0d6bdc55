package chart

import (
	"math"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"

	"ogive/geometry/followup"
)

// shape is the outline of a point: corners on a circle, or the circle itself.
type shape struct {
	corners int
	turn    float64 // degrees from a corner at the top
}

// shapes by what differs from the baseline.
var shapes = map[[3]bool]shape{
	{}:                   {},
	{true, false, false}: {4, 0},   // view
	{false, true, false}: {4, 45},  // scale
	{false, false, true}: {3, 0},   // observer
	{true, true, false}:  {6, 0},   // view and scale
	{true, false, true}:  {3, 180}, // view and observer
	{false, true, true}:  {5, 0},   // scale and observer
	{true, true, true}:   {5, 180}, // all
}

func shapeOf(all []followup.Difference) shape {
	var key [3]bool
	for _, d := range all {
		key[d-followup.OtherView] = true
	}
	return shapes[key]
}

// radius is that of a round point, in points.
const radius vg.Length = 4.5

func (s shape) path(at vg.Point, r vg.Length) vg.Path {
	var p vg.Path
	if s.corners == 0 {
		p.Move(vg.Point{X: at.X + r, Y: at.Y})
		p.Arc(at, r, 0, 2*math.Pi)
		p.Close()
		return p
	}
	// Corners lie further out, so that all shapes look alike in size.
	r *= vg.Length(math.Sqrt(2 * math.Pi / (float64(s.corners) * math.Sin(2*math.Pi/float64(s.corners)))))
	for i := range s.corners {
		a := (90+s.turn)*math.Pi/180 + 2*math.Pi*float64(i)/float64(s.corners)
		corner := vg.Point{X: at.X + r*vg.Length(math.Cos(a)), Y: at.Y + r*vg.Length(math.Sin(a))}
		if i == 0 {
			p.Move(corner)
		} else {
			p.Line(corner)
		}
	}
	p.Close()
	return p
}

// mark draws a point: filled, or hollow where the web was not released yet.
func (s shape) mark(c draw.Canvas, ink Ink, at vg.Point, hollow bool) {
	c.SetColor(ink.Own)
	if hollow {
		c.SetColor(ink.Ground)
	}
	c.Fill(s.path(at, radius))
	c.SetLineStyle(draw.LineStyle{Color: ink.Own, Width: 1.4})
	c.Stroke(s.path(at, radius))
}

// ring goes around the baseline's point.
func ring(c draw.Canvas, ink Ink, at vg.Point) {
	c.SetLineStyle(draw.LineStyle{Color: ink.Own, Width: 1.1})
	c.Stroke(shape{}.path(at, radius+3.5))
}
