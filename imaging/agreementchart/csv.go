package agreementchart

import (
	"encoding/csv"
	"fmt"
	"io"
	"math"
	"strconv"

	"ogive/imaging/wording"
)

// ReadingsCSV writes what was read, in the form that package observations reads.
func (c Chart) ReadingsCSV(to io.Writer) error {
	lines := [][]string{{"target", "observer", "occasion", "figure", "value"}}
	for _, t := range c.Targets {
		for i, name := range c.Names {
			who, when := name, ""
			if c.Within != "" {
				who, when = c.Within, name
			}
			lines = append(lines, []string{t.Name, who, when, c.Figure.String(), exact(t.Readings[i])})
		}
	}
	return writeCSV(to, lines)
}

// FiguresCSV writes the figures of the charts, a line each. Figures stand to the
// last digit, for other programs; the caution is in a column of its own.
func FiguresCSV(to io.Writer, charts []Chart) error {
	lines := [][]string{{"figure", "unit", "first", "second", "observer", "targets", "name", "value", "low", "high", "source", "caution"}}
	for _, c := range charts {
		for _, r := range c.Rows() {
			unit := c.Figure.Unit
			switch r.Name {
			case correlationAbsolute, correlationConsistent:
				unit = ""
			case variation:
				unit = "%"
			}
			lines = append(lines, []string{
				c.Figure.Name, unit, c.Names[0], c.Names[1], c.Within, strconv.Itoa(len(c.Targets)),
				r.Name, exact(r.Interval.Value), exact(r.Interval.Low), exact(r.Interval.High), c.Source, wording.Caution,
			})
		}
	}
	return writeCSV(to, lines)
}

// exact is a number to its last digit, nothing for what is none.
func exact(x float64) string {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return ""
	}
	return strconv.FormatFloat(x, 'g', -1, 64)
}

func writeCSV(to io.Writer, lines [][]string) error {
	if err := csv.NewWriter(to).WriteAll(lines); err != nil {
		return fmt.Errorf("the table could not be written: %w", err)
	}
	return nil
}
