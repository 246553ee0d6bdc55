package norms

import (
	"encoding/json"
	"math"

	"ogive/geometry/hand"
)

// Encode is the table as JSON that Parse reads back to the same table. It fails
// only on a number that JSON can't hold.
func (t Table) Encode() ([]byte, error) {
	out := struct {
		Ogive int       `json:"ogive"`
		Rows  []rowOut  `json:"rows"`
		Bands []bandOut `json:"bands"`
		Span  spanOut   `json:"span"`
	}{
		Ogive: 1, Rows: []rowOut{}, Bands: []bandOut{},
		Span: spanOut{float64(t.Span.Least), t.Span.Fraction, t.Span.Reason},
	}
	for _, r := range t.Rows {
		row := rowOut{ID: r.ID, Figure: r.Figure, View: viewName(r.View), Webs: r.Webs, Value: r.Value, Source: r.Source, Trust: r.Trust}
		for _, n := range r.Numbers {
			row.Numbers = append(row.Numbers, numberFile{Of: n.Of, Unit: n.Unit, Low: bounded(n.Low), High: bounded(n.High)})
		}
		out.Rows = append(out.Rows, row)
	}
	for _, b := range t.Bands {
		out.Bands = append(out.Bands, bandOut{b.Figure, viewName(b.View), b.Low, b.High, b.Against, b.Rows, b.Reason})
	}
	return json.MarshalIndent(out, "", "  ")
}

type rowOut struct {
	ID      string       `json:"id"`
	Figure  string       `json:"figure"`
	View    string       `json:"view"`
	Webs    []hand.Web   `json:"webs,omitempty"`
	Value   string       `json:"value"`
	Numbers []numberFile `json:"numbers,omitempty"`
	Source  string       `json:"source"`
	Trust   string       `json:"trust"`
}

type bandOut struct {
	Figure  string   `json:"figure"`
	View    string   `json:"view"`
	Low     float64  `json:"low"`
	High    float64  `json:"high"`
	Against string   `json:"against"`
	Rows    []string `json:"rows"`
	Reason  string   `json:"reason"`
}

type spanOut struct {
	ToleranceMM       float64 `json:"tolerance_mm"`
	ToleranceFraction float64 `json:"tolerance_fraction"`
	Reason            string  `json:"reason"`
}

func viewName(v hand.View) string {
	if v == 0 {
		return anyView
	}
	return v.String()
}

// bounded is nil for an open side.
func bounded(x float64) *float64 {
	if math.IsInf(x, 0) {
		return nil
	}
	return &x
}
