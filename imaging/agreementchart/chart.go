// Package agreementchart draws how far two observers agree on a figure, or one
// observer with herself: the second's readings against the first's, and their
// differences against their means, with the figures that tell it in numbers and
// in plain words.
//
//	charts, lacking := agreementchart.Of(all, "casebook")
//	c := charts[0]
//	c.Rows()                                               // the figures with their intervals
//	c.Words()                                              // what they mean
//	err := c.PDF(file)                                     // a page; also PNG, SVG
//	img := c.Image(image.Pt(900, 400), 1, charting.Chalk)  // the two plots alone, for a window
//	err = c.ReadingsCSV(file)                              // package observations reads it again
//	err = agreementchart.FiguresCSV(file, charts)
//
// A figure's unit stands in brackets behind its name: "span (mm)".
package agreementchart

import (
	"fmt"
	"slices"
	"strings"

	"ogive/geometry/agreement"
	"ogive/imaging/observations"
)

// Chart is two observers on one figure, or one observer at two occasions.
type Chart struct {
	Figure Figure
	// Within is the observer who is held against herself, empty for two observers.
	Within string
	// Names are the observers, or the occasions.
	Names   [2]string
	Targets []Target
	// LeftOut are the targets that not both have measured.
	LeftOut []string
	// Source says where the readings come from.
	Source string

	agreement agreement.Agreement
}

// Target is what both have measured.
type Target struct {
	Name     string
	Readings [2]float64
}

// Agreement is how far the two agree; it has one pair.
func (c Chart) Agreement() agreement.Agreement { return c.agreement }

func (c Chart) pair() agreement.Pair { return c.agreement.Pairs[0] }

// Figure is what was measured.
type Figure struct {
	Name string
	Unit string // empty if it has none
}

// FigureOf takes the unit off a name such as "span (mm)".
func FigureOf(name string) Figure {
	if open := strings.LastIndex(name, " ("); open > 0 && strings.HasSuffix(name, ")") {
		return Figure{name[:open], name[open+2 : len(name)-1]}
	}
	if name == "" {
		name = "value"
	}
	return Figure{Name: name}
}

func (f Figure) String() string {
	if f.Unit == "" {
		return f.Name
	}
	return fmt.Sprintf("%s (%s)", f.Name, f.Unit)
}

// Of is a chart for every figure and every two observers who measured at least
// two targets both, each on the first occasion of each; then for every observer
// and every two occasions. Lacking says which could not be drawn, and why.
func Of(all []observations.Observation, source string) (charts []Chart, lacking []string) {
	for _, figure := range distinct(all, func(o observations.Observation) string { return o.Figure }) {
		of := only(all, func(o observations.Observation) bool { return o.Figure == figure })
		who := distinct(of, observer)
		for _, p := range everyTwo(who) {
			both := only(of, func(o observations.Observation) bool { return o.Observer == p[0] || o.Observer == p[1] })
			charts, lacking = add(charts, lacking, both, Chart{Figure: FigureOf(figure), Names: p, Source: source})
		}
		for _, one := range who {
			own := only(of, func(o observations.Observation) bool { return o.Observer == one })
			for _, p := range everyTwo(distinct(own, occasion)) {
				both := only(own, func(o observations.Observation) bool { return o.Occasion == p[0] || o.Occasion == p[1] })
				charts, lacking = add(charts, lacking, both, Chart{Figure: FigureOf(figure), Within: one, Names: p, Source: source})
			}
		}
	}
	return charts, lacking
}

func observer(o observations.Observation) string { return o.Observer }
func occasion(o observations.Observation) string { return o.Occasion }
func target(o observations.Observation) string   { return o.Target }

// add adds the chart of those readings, or what it lacks.
func add(charts []Chart, lacking []string, of []observations.Observation, c Chart) ([]Chart, []string) {
	for _, found := range observations.Compare(of) {
		if found.Within != c.Within {
			continue
		}
		if found.Fault != nil {
			return charts, append(lacking, fmt.Sprintf("%s, %s: %v", c.Figure, c.Who(), found.Fault))
		}
		c.fill(of, found)
		return append(charts, c), lacking
	}
	return charts, lacking
}

func (c *Chart) fill(of []observations.Observation, found observations.Comparison) {
	c.LeftOut = found.LeftOut
	c.Names = [2]string(found.Table.Observers)
	c.agreement = found.Table.Agreement()
	for _, name := range distinct(of, target) {
		if i := len(c.Targets); !slices.Contains(found.LeftOut, name) {
			c.Targets = append(c.Targets, Target{name, [2]float64{found.Table.Value(i, 0), found.Table.Value(i, 1)}})
		}
	}
}

// everyTwo is every two of them, in their order.
func everyTwo(names []string) (out [][2]string) {
	for i, a := range names {
		for _, b := range names[i+1:] {
			out = append(out, [2]string{a, b})
		}
	}
	return out
}

// distinct is every value of a field, in the order of its first appearance.
func distinct(all []observations.Observation, field func(observations.Observation) string) (out []string) {
	seen := map[string]bool{}
	for _, o := range all {
		if f := field(o); !seen[f] {
			seen[f] = true
			out = append(out, f)
		}
	}
	return out
}

// only is the observations that hold.
func only(all []observations.Observation, holds func(observations.Observation) bool) (out []observations.Observation) {
	for _, o := range all {
		if holds(o) {
			out = append(out, o)
		}
	}
	return out
}
