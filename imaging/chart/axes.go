package chart

import (
	"fmt"
	"math"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/text"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"

	"ogive/geometry/followup"
	"ogive/geometry/plane"
	"ogive/imaging/charting"
	"ogive/imaging/wording"
)

// reach is the range of months and of the index that is drawn.
type reach struct{ from, to, low, high float64 }

func (c Chart) reach() reach {
	r := reach{from: 0, to: 6, low: 0.40, high: 0.70}
	take := func(months float64, e plane.Estimate[plane.Ratio]) {
		r.from, r.to = math.Min(r.from, months), math.Max(r.to, months)
		r.low, r.high = math.Min(r.low, float64(e.Low())), math.Max(r.high, float64(e.High()))
	}
	for _, p := range c.Series.Points {
		take(p.Months, p.Index)
	}
	for _, b := range c.Series.Band {
		take(b.Months, b.Index)
	}
	if c.Series.Plan != nil {
		take(0, plane.Estimate[plane.Ratio]{Value: *c.Series.Plan})
	}
	if c.Normal != nil {
		take(0, plane.Estimate[plane.Ratio]{Value: c.Normal.Low})
		take(0, plane.Estimate[plane.Ratio]{Value: c.Normal.High})
	}
	if at, ok := c.baseline(); ok {
		// The first third is always seen, so that a creep is seen against it.
		take(0, plane.Estimate[plane.Ratio]{Value: at.Index.Value + (1-at.Index.Value)/3})
	}
	margin := 0.04 * (r.to - r.from)
	r.from, r.to = r.from-margin, r.to+margin
	// An interval may be wider than any hand; the rest of the chart shall still be read.
	r.low, r.high = math.Max(r.low, -0.5), math.Min(r.high, 1.5)
	r.low, r.high = math.Floor(r.low*20-0.4)/20, math.Ceil(r.high*20+0.4)/20
	return r
}

// plot is the axes, without anything on them.
func (c Chart) plot(ink Ink, width vg.Length) *plot.Plot {
	p := plot.New()
	p.BackgroundColor, p.TextHandler = nil, charting.Handler()
	r := c.reach()
	p.X.Min, p.X.Max, p.Y.Min, p.Y.Max = r.from, r.to, r.low, r.high
	for _, a := range []*plot.Axis{&p.X, &p.Y} {
		line := draw.LineStyle{Color: ink.Second, Width: 0.8}
		a.LineStyle, a.Tick.LineStyle, a.Tick.Length, a.Padding, a.Label.Padding = line, line, 5, 0, 6
	}
	p.X.Tick.Label = charting.Aligned(charting.Letters(ink.Text, charting.TextSize), text.XCenter, text.YTop)
	p.Y.Tick.Label = charting.Aligned(charting.Letters(ink.Text, charting.TextSize), text.XRight, text.YCenter)
	p.X.Label.TextStyle = charting.Aligned(charting.Letters(ink.Second, charting.TextSize), text.XCenter, text.YBottom)
	p.Y.Label.TextStyle = charting.Aligned(charting.Letters(ink.Second, charting.TextSize), text.XCenter, text.YBottom)
	p.X.Label.Text = monthsSince(c.Series.Since)
	p.Y.Label.Text = wording.IndexName(c.view())
	p.X.Tick.Marker = plot.ConstantTicks(monthTicks(r.from, r.to, int(width/46)))
	p.Y.Tick.Marker = plot.ConstantTicks(indexTicks(r.low, r.high))
	return p
}

func monthsSince(s followup.Since) string {
	if s == followup.SinceFirstSitting {
		return "months since the first sitting, years below"
	}
	return "months since the operation, years below"
}

// monthTicks are at most n ticks, whole years named below their months.
func monthTicks(from, to float64, n int) []plot.Tick {
	step := 1
	for _, step = range []int{1, 2, 3, 6, 12, 24, 60, 120, 240, 600} {
		if (to-from)/float64(step) <= float64(max(n, 2)) {
			break
		}
	}
	var out []plot.Tick
	for m := int(math.Ceil(from/float64(step))) * step; float64(m) <= to; m += step {
		// Every label has two lines, so that all months stand at one height.
		label, below := fmt.Sprint(m), "\u00a0"
		if years := m / 12; m%12 == 0 && m != 0 {
			unit := "years"
			if years == 1 || years == -1 {
				unit = "year"
			}
			below = fmt.Sprintf("%d %s", years, unit)
		}
		out = append(out, plot.Tick{Value: float64(m), Label: label + "\n" + below})
	}
	return out
}

func indexTicks(low, high float64) []plot.Tick {
	var out []plot.Tick
	for tenths := math.Ceil(low*10 - 1e-9); tenths <= high*10+1e-9; tenths++ {
		out = append(out, plot.Tick{Value: tenths / 10, Label: fmt.Sprintf("%.1f", tenths/10)})
	}
	return out
}
