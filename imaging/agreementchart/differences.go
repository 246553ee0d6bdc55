package agreementchart

import (
	"math"

	"gonum.org/v1/plot/text"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"

	"ogive/geometry/agreement"
	"ogive/imaging/charting"
)

// valueMargin is the room at the right for the values of the lines.
const valueMargin vg.Length = 46

// differences draws first less second against their mean, as by Bland and Altman
// 1986, with the bias, the limits of agreement and the intervals of all three.
func (c Chart) differences(all draw.Canvas, ink charting.Ink) {
	p, unit := c.pair(), c.Figure.Unit
	within := headed(all, ink, "Difference against mean",
		entry{biasSample, "bias " + bracketed(p.Bias, unit)},
		entry{limitSample, "limits " + bracketed(p.Lower, unit) + " and " + bracketed(p.Upper, unit)},
		entry{equalSample, "no difference; shaded are 95 % intervals"})
	within.Max.X -= valueMargin
	x := around(p.Means...)
	f := axes(within, ink, x, c.differenceReach(), "mean of both: "+c.Figure.String(), c.differenceAxis(), func(f field) {
		for _, l := range []agreement.Interval{p.Lower, p.Upper} {
			f.band(l.Low, l.High, limitBand(ink))
		}
		f.band(p.Bias.Low, p.Bias.High, biasBand(ink))
	})
	f.level(0, equalLine(ink))
	f.level(p.Lower.Value, limitLine(ink))
	f.level(p.Upper.Value, limitLine(ink))
	f.level(p.Bias.Value, biasLine(ink))
	f.points(p.Means, p.Differences)
	f.values(p)
}

func (c Chart) differenceAxis() string {
	less := c.Names[0] + " less " + c.Names[1]
	if c.Within != "" {
		less = "occasion " + less
	}
	if c.Figure.Unit != "" {
		less += " (" + c.Figure.Unit + ")"
	}
	return less
}

// differenceReach shows every difference and the limits, and of their intervals as
// much as leaves the points to be told apart: few targets have endless intervals.
func (c Chart) differenceReach() reach {
	p := c.pair()
	r := around(append([]float64{0, p.Lower.Value, p.Upper.Value}, p.Differences...)...)
	beyond := 0.6 * (r.high - r.low)
	low, high := p.Lower.Low, p.Upper.High
	return reach{math.Min(r.low, math.Max(low, r.low-beyond)), math.Max(r.high, math.Min(high, r.high+beyond))}
}

// values writes at the right what the lines stand at, the bias first where two lie
// too close for both.
func (f field) values(p agreement.Pair) {
	s := charting.Aligned(charting.Letters(f.ink.Text, charting.SmallSize), text.XLeft, text.YCenter)
	at := places(p.Upper)
	var taken []vg.Length
	for _, v := range []float64{p.Bias.Value, p.Upper.Value, p.Lower.Value} {
		y := f.y(v)
		free := f.ContainsY(y)
		for _, t := range taken {
			free = free && math.Abs(float64(t-y)) > charting.SmallSize
		}
		if free {
			taken = append(taken, y)
			f.FillText(s, vg.Point{X: f.Max.X + 6, Y: y + 1}, number(v, at))
		}
	}
}

func biasLine(ink charting.Ink) draw.LineStyle { return draw.LineStyle{Color: ink.Own, Width: 1.6} }

func limitLine(ink charting.Ink) draw.LineStyle {
	return draw.LineStyle{Color: ink.Other, Width: 1.4, Dashes: []vg.Length{7, 4}}
}

// painter fills an outline.
type painter = func(draw.Canvas, []vg.Point)

func biasBand(ink charting.Ink) painter {
	return func(c draw.Canvas, around []vg.Point) { c.FillPolygon(charting.Faded(ink.Own, 0x30), around) }
}

func limitBand(ink charting.Ink) painter {
	return func(c draw.Canvas, around []vg.Point) { c.FillPolygon(charting.Faded(ink.Other, 0x30), around) }
}

func biasSample(c draw.Canvas, ink charting.Ink, at vg.Point) {
	biasBand(ink)(c, box(at))
	c.StrokeLine2(biasLine(ink), at.X-half, at.Y, at.X+half, at.Y)
}

func limitSample(c draw.Canvas, ink charting.Ink, at vg.Point) {
	limitBand(ink)(c, box(at))
	c.StrokeLine2(limitLine(ink), at.X-half, at.Y, at.X+half, at.Y)
}

func box(at vg.Point) []vg.Point {
	const high = 4.5
	return []vg.Point{{X: at.X - half, Y: at.Y - high}, {X: at.X + half, Y: at.Y - high}, {X: at.X + half, Y: at.Y + high}, {X: at.X - half, Y: at.Y + high}}
}
