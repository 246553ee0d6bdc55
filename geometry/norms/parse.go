package norms

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"math"
	"slices"
	"strings"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
)

const anyView = "any"

type tableFile struct {
	Ogive int               `json:"ogive"`
	Rows  []json.RawMessage `json:"rows"`
	Bands []json.RawMessage `json:"bands"`
	Span  json.RawMessage   `json:"span"`
}

type rowFile struct {
	ID      string       `json:"id"`
	Figure  string       `json:"figure"`
	View    string       `json:"view"`
	Webs    []hand.Web   `json:"webs"`
	Value   string       `json:"value"`
	Numbers []numberFile `json:"numbers"`
	Source  string       `json:"source"`
	Trust   string       `json:"trust"`
}

type numberFile struct {
	Of   string   `json:"of"`
	Unit string   `json:"unit"`
	Low  *float64 `json:"low"`
	High *float64 `json:"high"`
}

type bandFile struct {
	Figure  string   `json:"figure"`
	View    string   `json:"view"`
	Low     *float64 `json:"low"`
	High    *float64 `json:"high"`
	Against string   `json:"against"`
	Rows    []string `json:"rows"`
	Reason  string   `json:"reason"`
}

type spanFile struct {
	ToleranceMM       *float64 `json:"tolerance_mm"`
	ToleranceFraction *float64 `json:"tolerance_fraction"`
	Reason            string   `json:"reason"`
}

// Parse reads a table of normal values. It is strict: an unknown field, a row
// without a source or a band that refers to no row is an error that names the
// row and the mend.
func Parse(data []byte) (Table, error) {
	var f tableFile
	if err := decode(data, &f); err != nil {
		return Table{}, fmt.Errorf("normal values: %w", err)
	}
	if f.Ogive != 1 {
		return Table{}, fmt.Errorf("normal values: field \"ogive\" is %d; this program reads version 1, set it to 1", f.Ogive)
	}
	t := Table{}
	for i, raw := range f.Rows {
		r, err := parseRow(raw, t)
		if err != nil {
			return Table{}, fmt.Errorf("normal values: row %d%s: %w", i+1, quotedID(raw), err)
		}
		t.Rows = append(t.Rows, r)
	}
	for i, raw := range f.Bands {
		b, err := parseBand(raw, t)
		if err != nil {
			return Table{}, fmt.Errorf("normal values: band %d: %w", i+1, err)
		}
		t.Bands = append(t.Bands, b)
	}
	var err error
	if t.Span, err = parseSpan(f.Span); err != nil {
		return Table{}, fmt.Errorf("normal values: span: %w", err)
	}
	return t, nil
}

func parseRow(raw []byte, t Table) (Row, error) {
	var f rowFile
	if err := decode(raw, &f); err != nil {
		return Row{}, err
	}
	err := errors.Join(
		filled("id", f.ID, "give the row a short name of its own"),
		filled("figure", f.Figure, "say what the value belongs to"),
		filled("value", f.Value, "give the value in words"),
		filled("source", f.Source, `name the source, or write "common practice, no source"`),
		filled("trust", f.Trust, `say how far the source is trusted, such as "review" or "abstract"`),
	)
	if err != nil {
		return Row{}, err
	}
	if _, taken := t.Row(f.ID); taken {
		return Row{}, fmt.Errorf("another row has the same id; give each row its own")
	}
	r := Row{ID: f.ID, Figure: f.Figure, Webs: f.Webs, Value: f.Value, Source: f.Source, Trust: f.Trust}
	if r.View, err = parseView(f.View); err != nil {
		return Row{}, err
	}
	for _, w := range f.Webs {
		if !w.Valid() {
			return Row{}, fmt.Errorf("field \"webs\" holds %d; webs are numbered 1 (thumb-index) to 4 (ring-little)", int(w))
		}
	}
	for _, n := range f.Numbers {
		number, err := n.number()
		if err != nil {
			return Row{}, err
		}
		r.Numbers = append(r.Numbers, number)
	}
	return r, nil
}

func (f numberFile) number() (Number, error) {
	err := errors.Join(
		filled("numbers.of", f.Of, "say what is numbered"),
		filled("numbers.unit", f.Unit, `name the unit, such as "ratio", "degree" or "mm"`),
	)
	if err != nil {
		return Number{}, err
	}
	if f.Low == nil && f.High == nil {
		return Number{}, fmt.Errorf("number %q has neither \"low\" nor \"high\"; give at least one", f.Of)
	}
	n := Number{Of: f.Of, Unit: f.Unit, Low: math.Inf(-1), High: math.Inf(1)}
	if f.Low != nil {
		n.Low = *f.Low
	}
	if f.High != nil {
		n.High = *f.High
	}
	if n.Low > n.High {
		return Number{}, fmt.Errorf("number %q has low %g above high %g; exchange them", f.Of, n.Low, n.High)
	}
	return n, nil
}

func parseBand(raw []byte, t Table) (Band, error) {
	var f bandFile
	if err := decode(raw, &f); err != nil {
		return Band{}, err
	}
	if f.Figure != indexFigure && f.Figure != slopeFigure {
		return Band{}, fmt.Errorf("field \"figure\" is %q; a band is for %q or %q", f.Figure, indexFigure, slopeFigure)
	}
	if f.Low == nil || f.High == nil {
		return Band{}, fmt.Errorf("the band for the %s needs both \"low\" and \"high\"", f.Figure)
	}
	if *f.Low >= *f.High {
		return Band{}, fmt.Errorf("the band for the %s has low %g not below high %g; correct them", f.Figure, *f.Low, *f.High)
	}
	err := errors.Join(
		filled("against", f.Against, `say what verdicts are drawn against, such as "published values"`),
		filled("reason", f.Reason, "say how the band was read out of its rows"),
	)
	if err != nil {
		return Band{}, err
	}
	b := Band{Figure: f.Figure, Low: *f.Low, High: *f.High, Against: f.Against, Rows: f.Rows, Reason: f.Reason}
	if b.View, err = parseView(f.View); err != nil {
		return Band{}, err
	}
	if slices.ContainsFunc(t.Bands, func(o Band) bool {
		return o.Figure == b.Figure && (o.View == b.View || o.View == 0 || b.View == 0)
	}) {
		return Band{}, fmt.Errorf("there is already a band for the %s in this view; keep one of them", b.Figure)
	}
	if len(f.Rows) == 0 {
		return Band{}, fmt.Errorf("the band for the %s names no rows; list in \"rows\" the ids of those it was read out of", b.Figure)
	}
	for _, id := range f.Rows {
		if _, ok := t.Row(id); !ok {
			return Band{}, fmt.Errorf("the band for the %s names row %q, which is not in the table; correct the id or add the row", b.Figure, id)
		}
	}
	return b, nil
}

func parseSpan(raw []byte) (SpanTolerance, error) {
	if raw == nil {
		return SpanTolerance{}, errors.New(`it is missing; give "tolerance_mm", "tolerance_fraction" and "reason"`)
	}
	var f spanFile
	if err := decode(raw, &f); err != nil {
		return SpanTolerance{}, err
	}
	for _, v := range []struct {
		name  string
		value *float64
	}{{"tolerance_mm", f.ToleranceMM}, {"tolerance_fraction", f.ToleranceFraction}} {
		if v.value == nil || *v.value < 0 {
			return SpanTolerance{}, fmt.Errorf("field %q is missing or negative; give 0 or more", v.name)
		}
	}
	if *f.ToleranceFraction >= 1 {
		return SpanTolerance{}, fmt.Errorf("field \"tolerance_fraction\" is %g; give a fraction below 1, 0.1 for 10 per cent", *f.ToleranceFraction)
	}
	if err := filled("reason", f.Reason, "say where the tolerance comes from"); err != nil {
		return SpanTolerance{}, err
	}
	return SpanTolerance{Least: plane.Millimetre(*f.ToleranceMM), Fraction: *f.ToleranceFraction, Reason: f.Reason}, nil
}

func parseView(name string) (hand.View, error) {
	if name == anyView {
		return 0, nil
	}
	v, err := hand.ParseView(name)
	if err != nil {
		return 0, fmt.Errorf("field \"view\": %w, or %q", err, anyView)
	}
	return v, nil
}

func filled(field, value, mend string) error {
	if strings.TrimSpace(value) == "" {
		return fmt.Errorf("field %q is missing; %s", field, mend)
	}
	return nil
}

func decode(data []byte, into any) error {
	d := json.NewDecoder(bytes.NewReader(data))
	d.DisallowUnknownFields()
	if err := d.Decode(into); err != nil {
		var wrong *json.UnmarshalTypeError
		switch {
		case errors.As(err, &wrong):
			return fmt.Errorf("field %q holds a %s where a %s belongs", wrong.Field, wrong.Value, wrong.Type.Kind())
		case errors.Is(err, io.EOF), errors.Is(err, io.ErrUnexpectedEOF):
			return errors.New("the file ends too early; it is cut short, take a whole copy")
		}
		return fmt.Errorf("%s; correct it", strings.TrimPrefix(err.Error(), "json: "))
	}
	if _, err := d.Token(); !errors.Is(err, io.EOF) {
		return errors.New("something follows the closing brace; remove it")
	}
	return nil
}

func quotedID(raw []byte) string {
	var f struct {
		ID string `json:"id"`
	}
	if json.Unmarshal(raw, &f) != nil || f.ID == "" {
		return ""
	}
	return fmt.Sprintf(" (%q)", f.ID)
}
