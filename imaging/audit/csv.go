package audit

import (
	"cmp"
	"encoding/csv"
	"io"
	"math"
	"slices"
	"strconv"
	"strings"

	"ogive/imaging/wording"
)

// CSV writes the table under one header (RFC 4180, lines end in CRLF).
func (a Audit) CSV(to io.Writer) error {
	w := csv.NewWriter(to)
	w.UseCRLF = true
	cells := make([]string, len(columns))
	for i, c := range columns {
		cells[i] = c.name
	}
	if err := w.Write(cells); err != nil {
		return err
	}
	for _, r := range a.Rows {
		for i, c := range columns {
			cells[i] = c.of(r)
			if c.text {
				cells[i] = guarded(cells[i])
			}
		}
		if err := w.Write(cells); err != nil {
			return err
		}
	}
	w.Flush()
	return w.Error()
}

// Dictionary writes what every column means, in the order of the table, and the
// caution that goes with the figures.
func Dictionary(to io.Writer) error {
	w := csv.NewWriter(to)
	w.UseCRLF = true
	if err := w.Write([]string{"column", "meaning", "unit", "values", "source"}); err != nil {
		return err
	}
	for _, c := range columns {
		if err := w.Write([]string{c.name, c.meaning, c.unit, c.values, c.source}); err != nil {
			return err
		}
	}
	if err := w.Write([]string{"*", wording.Caution, "", "", ""}); err != nil {
		return err
	}
	w.Flush()
	return w.Error()
}

// guarded puts an apostrophe before a text that a spreadsheet would take for a
// formula, and before one that begins with an apostrophe, so that taking the
// first apostrophe away always gives the text back.
func guarded(s string) string {
	if s != "" && strings.ContainsRune("=+-@'\t\r\n", rune(s[0])) {
		return "'" + s
	}
	return s
}

// number has six significant digits, more than any figure has.
func number(x float64) string {
	rounded, err := strconv.ParseFloat(strconv.FormatFloat(x, 'g', 6, 64), 64)
	if err != nil || math.IsNaN(rounded) || math.IsInf(rounded, 0) {
		return ""
	}
	if math.Abs(rounded) < 1e-9 {
		rounded = 0
	}
	return strconv.FormatFloat(rounded, 'f', -1, 64)
}

// sorted is the rows by sitting, hand, web, view, observer and photograph.
func (c *chart) sorted() []*Row {
	slices.SortStableFunc(c.rows, func(a, b *Row) int {
		return cmp.Or(cmp.Compare(a.Number, b.Number), cmp.Compare(a.Hand, b.Hand), cmp.Compare(a.Web, b.Web),
			cmp.Compare(a.View, b.View), cmp.Compare(a.Observer, b.Observer), cmp.Compare(a.Photograph.ID, b.Photograph.ID))
	})
	return c.rows
}
