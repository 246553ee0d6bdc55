// Package chart draws the follow-up of one web: its index with intervals against
// the months since the operation, beside the other hand, the plan and the normal
// values.
//
//	c := chart.Of("S-012", hand.Right, hand.ThirdWeb, series, table)
//	err := c.SVG(file)
//	err := c.PNG(file)
//	img, spots := c.Image(image.Pt(1200, 700), 1, chart.Chalk) // for a window
//
// A point's shape says what was done otherwise than at the baseline, a hollow
// point that the web was not released yet; the legend names every shape in use.
package chart

import (
	"fmt"

	"ogive/geometry/followup"
	"ogive/geometry/hand"
	"ogive/geometry/norms"
	"ogive/geometry/plane"
	"ogive/imaging/wording"
)

// Chart is everything that is drawn. The same chart gives the same drawing.
type Chart struct {
	Case   string // its code
	Side   hand.Side
	Web    hand.Web
	Series followup.Series
	Normal *Normal // nil where nothing is published, as for the palmar index
}

// Normal is the band of normal values and where it comes from.
type Normal struct {
	Low, High plane.Ratio
	Source    string
}

// Of is the chart of one web of a case, with the normal band that the table has
// for the view it was followed in.
func Of(code string, side hand.Side, web hand.Web, s followup.Series, table norms.Table) Chart {
	c := Chart{Case: code, Side: side, Web: web, Series: s}
	if b, ok := table.Band("index", c.view()); ok {
		c.Normal = &Normal{Low: plane.Ratio(b.Low), High: plane.Ratio(b.High), Source: b.Against}
	}
	return c
}

// view is the view of the baseline, else of the first point, else dorsal.
func (c Chart) view() hand.View {
	if at, ok := c.baseline(); ok {
		return at.View
	}
	if len(c.Series.Points) > 0 {
		return c.Series.Points[0].View
	}
	return hand.Dorsal
}

func (c Chart) baseline() (followup.Point, bool) {
	if i := c.Series.Baseline; i >= 0 && i < len(c.Series.Points) {
		return c.Series.Points[i], true
	}
	return followup.Point{}, false
}

// Title is the case, the hand and the web.
func (c Chart) Title() string {
	title := fmt.Sprintf("%s hand, %s (%s)", c.Side, c.Web, wording.WebDigits(c.Web))
	if c.Case == "" {
		return wording.Sentence(title)
	}
	return "Case " + c.Case + ": " + title
}

// Summary is the latest creep in words.
func (c Chart) Summary() string {
	if len(c.Series.Points) == 0 {
		return "No sitting of this web has been measured yet."
	}
	at, ok := c.baseline()
	if !ok {
		return "No creep yet: the web has not been measured since its release."
	}
	latest, ok := c.Series.Latest()
	if !ok {
		return fmt.Sprintf("No creep yet: it counts from the sitting of %s.", at.Day)
	}
	said := fmt.Sprintf("%s since %s; %s", wording.Sentence(Creep(latest)), at.Day, Grade(latest.Grading))
	if differs := Differences(latest.Differs); differs != "" {
		said += "; read with " + differs
	}
	return said + "."
}
