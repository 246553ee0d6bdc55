package agreementchart

import (
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"

	"ogive/imaging/charting"
)

// scatter draws the second's readings against the first's, both axes alike.
func (c Chart) scatter(all draw.Canvas, ink charting.Ink) {
	var first, second []float64
	for _, t := range c.Targets {
		first, second = append(first, t.Readings[0]), append(second, t.Readings[1])
	}
	rows := c.Rows()
	title := c.name(1) + " against " + c.name(0)
	within := headed(all, ink, title,
		entry{circle, "a target; " + rows[0].Name + " " + rows[0].Text + ", " + rows[1].Name + " " + rows[1].Text},
		entry{equalSample, "both read the same"})
	r := around(append(append([]float64{}, first...), second...)...)
	f := axes(within, ink, r, r, c.axis(0), c.axis(1), func(field) {})
	f.StrokeLine2(equalLine(ink), f.Min.X, f.Min.Y, f.Max.X, f.Max.Y)
	f.points(first, second)
}

func equalLine(ink charting.Ink) draw.LineStyle {
	return draw.LineStyle{Color: ink.Second, Width: 1.1, Dashes: []vg.Length{1.2, 3.2}}
}

func equalSample(c draw.Canvas, ink charting.Ink, at vg.Point) {
	c.StrokeLine2(equalLine(ink), at.X-half, at.Y, at.X+half, at.Y)
}
