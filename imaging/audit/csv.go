package audit

import (
	"bytes"
	"cmp"
	"encoding/csv"
	"io"
	"math"
	"runtime"
	"slices"
	"strconv"
	"strings"
	"sync"

	"ogive/imaging/wording"
)

// CSV writes the table under one header (RFC 4180, lines end in CRLF).
func (a Audit) CSV(to io.Writer) error {
	header := make([]string, len(columns))
	for i, c := range columns {
		header[i] = c.name
	}
	if err := writeLines(to, [][]string{header}); err != nil {
		return err
	}
	parts := make([]bytes.Buffer, (len(a.Rows)+chunk-1)/chunk)
	faults := make([]error, len(parts))
	spread(len(parts), func(i int) {
		var lines [][]string
		for _, r := range a.Rows[i*chunk : min((i+1)*chunk, len(a.Rows))] {
			lines = append(lines, r.cells())
		}
		faults[i] = writeLines(&parts[i], lines)
	})
	for i := range parts {
		if faults[i] != nil {
			return faults[i]
		}
		if _, err := parts[i].WriteTo(to); err != nil {
			return err
		}
	}
	return nil
}

// chunk is how many rows are written at a time, by one of the cores.
const chunk = 500

func (r *Row) cells() []string {
	out := make([]string, len(columns))
	for i, c := range columns {
		out[i] = c.of(r)
		if c.text {
			out[i] = guarded(out[i])
		}
	}
	return out
}

func writeLines(to io.Writer, lines [][]string) error {
	w := csv.NewWriter(to)
	w.UseCRLF = true
	if err := w.WriteAll(lines); err != nil {
		return err
	}
	return w.Error()
}

// spread spreads work over the cores.
func spread(n int, work func(i int)) {
	next := make(chan int)
	var workers sync.WaitGroup
	for range min(runtime.GOMAXPROCS(0), n) {
		workers.Go(func() {
			for i := range next {
				work(i)
			}
		})
	}
	for i := range n {
		next <- i
	}
	close(next)
	workers.Wait()
}

// Dictionary writes what every column means, in the order of the table, and the
// caution that goes with the figures.
func Dictionary(to io.Writer) error {
	lines := [][]string{{"column", "meaning", "unit", "values", "source"}}
	for _, c := range columns {
		lines = append(lines, []string{c.name, c.meaning, c.unit, c.values, c.source})
	}
	return writeLines(to, append(lines, []string{"*", wording.Caution, "", "", ""}))
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

// sort puts the rows in order of sitting, hand, web, view, observer and
// photograph.
func (c *chart) sort() {
	slices.SortStableFunc(c.rows, func(a, b *Row) int {
		return cmp.Or(cmp.Compare(a.Number, b.Number), cmp.Compare(a.Hand, b.Hand), cmp.Compare(a.Web, b.Web),
			cmp.Compare(a.View, b.View), cmp.Compare(a.Observer, b.Observer), cmp.Compare(a.Photograph.ID, b.Photograph.ID))
	})
}
