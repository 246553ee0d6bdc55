package values

import (
	"errors"
	"math"
	"strconv"
	"strings"

	"fyne.io/fyne/v2/lang"

	"ogive/geometry/norms"
	"ogive/geometry/plane"
)

// edit gives the band other limits. A band as the program has it keeps its
// source; any other says that it is the user's.
func (f *form) edit(b *norms.Band, low, high float64) {
	if same(b.Low, low) && same(b.High, high) {
		return
	}
	for _, own := range f.own.Bands {
		if own.Figure == b.Figure && own.View == b.View && same(own.Low, low) && same(own.High, high) {
			*b = own
			return
		}
	}
	b.Low, b.High = low, high
	b.Against = lang.L("your own limits")
	b.Reason = lang.L("Set by you. The program's own limits are read out of the rows below.")
}

func (f *form) editSpan(t *norms.Table, least plane.Millimetre, fraction float64) {
	switch {
	case same(float64(t.Span.Least), float64(least)) && same(t.Span.Fraction, fraction):
	case same(float64(f.own.Span.Least), float64(least)) && same(f.own.Span.Fraction, fraction):
		t.Span = f.own.Span
	default:
		t.Span = norms.SpanTolerance{Least: least, Fraction: fraction, Reason: lang.L("Span has no published norm. The tolerance is set by you.")}
	}
}

// same leaves out what is lost when a number is written and read again.
func same(a, b float64) bool { return math.Abs(a-b) < 1e-9 }

// proven is the table after writing and reading it, so that what is kept on the
// disk can be opened again.
func proven(t norms.Table) (norms.Table, error) {
	data, err := t.Encode()
	if err != nil {
		return t, err
	}
	return norms.Parse(data)
}

// limit is the number that was typed, with a point or a comma.
func limit(text, name string, most float64) (float64, error) {
	v, err := strconv.ParseFloat(strings.Replace(strings.TrimSpace(text), ",", ".", 1), 64)
	if err != nil || math.IsNaN(v) {
		return 0, errors.New(lang.L("{{.Name}}: “{{.Text}}” is no number. Write it like 0.45.", map[string]any{"Name": name, "Text": strings.TrimSpace(text)}))
	}
	if v < 0 || v > most {
		return 0, errors.New(lang.L("{{.Name}}: {{.Text}} lies outside 0 to {{.Most}}.", map[string]any{"Name": name, "Text": strings.TrimSpace(text), "Most": number(most)}))
	}
	return v, nil
}

func number(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }
