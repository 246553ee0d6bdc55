package observations

import (
	"fmt"

	"ogive/geometry/agreement"
)

// Comparison is one figure as several observers found it, or one observer at
// several occasions.
type Comparison struct {
	Figure string // empty if the file knows only one
	// Within is the observer who is compared with herself, empty where observers
	// are compared with each other.
	Within string
	Table  agreement.Table
	// LeftOut are the targets that not all have measured.
	LeftOut []string
	// Fault says why the figure can't be compared; the table is empty then.
	Fault error
}

// Compare is every comparison that the observations allow: for each figure the
// observers with each other, on the first occasion of each, then every observer
// with herself over the occasions.
func Compare(all []Observation) []Comparison {
	var out []Comparison
	for _, f := range distinct(all, func(o Observation) string { return o.Figure }) {
		of := only(all, func(o Observation) bool { return o.Figure == f })
		observers := distinct(of, func(o Observation) string { return o.Observer })
		if len(observers) > 1 || len(distinct(of, func(o Observation) string { return o.Occasion })) < 2 {
			out = append(out, between(f, observers, of))
		}
		for _, who := range observers {
			if c, any := within(f, who, of); any {
				out = append(out, c)
			}
		}
	}
	return out
}

func between(figure string, observers []string, of []Observation) Comparison {
	first := map[string]string{}
	for _, o := range of {
		if _, known := first[o.Observer]; !known {
			first[o.Observer] = o.Occasion
		}
	}
	of = only(of, func(o Observation) bool { return o.Occasion == first[o.Observer] })
	c := Comparison{Figure: figure}
	c.fill(observers, of, func(o Observation) string { return o.Observer })
	return c
}

func within(figure, who string, of []Observation) (Comparison, bool) {
	own := only(of, func(o Observation) bool { return o.Observer == who })
	occasions := distinct(own, func(o Observation) string { return o.Occasion })
	if len(occasions) < 2 {
		return Comparison{}, false
	}
	c := Comparison{Figure: figure, Within: who}
	c.fill(occasions, own, func(o Observation) string { return o.Occasion })
	return c, true
}

// fill makes the table with a column for each name.
func (c *Comparison) fill(names []string, of []Observation, name func(Observation) string) {
	found := map[string]map[string]float64{}
	for _, o := range of {
		if found[o.Target] == nil {
			found[o.Target] = map[string]float64{}
		}
		found[o.Target][name(o)] = o.Value
	}
	var rows [][]float64
	for _, t := range distinct(of, func(o Observation) string { return o.Target }) {
		row := make([]float64, 0, len(names))
		for _, n := range names {
			if v, there := found[t][n]; there {
				row = append(row, v)
			}
		}
		if len(row) < len(names) {
			c.LeftOut = append(c.LeftOut, t)
			continue
		}
		rows = append(rows, row)
	}
	if c.Table, c.Fault = agreement.NewTable(names, rows); c.Fault != nil && len(c.LeftOut) > 0 {
		c.Fault = fmt.Errorf("%w; %d were not measured by all", c.Fault, len(c.LeftOut))
	}
}
