// Package normals keeps the user's own copy of the normal values in a file, in
// the same form as the table that the program is shipped with.
//
//	table, there, err := normals.Load(path)
//	err = normals.Save(path, table)
//
// A copy that can't be read is an error and is left as it is.
package normals

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"math"
	"os"
	"path/filepath"
	"reflect"

	"ogive/geometry/hand"
	"ogive/geometry/norms"
	"ogive/imaging/wholefile"
)

// Load reads the copy at path; there is false if there is none.
func Load(path string) (table norms.Table, there bool, err error) {
	data, err := os.ReadFile(path)
	if errors.Is(err, fs.ErrNotExist) {
		return norms.Table{}, false, nil
	}
	if err != nil {
		return norms.Table{}, false, err
	}
	if table, err = norms.Parse(data); err != nil {
		return norms.Table{}, true, fmt.Errorf("%s: %w", path, err)
	}
	return table, true, nil
}

// Save writes the table to path, whole or not at all, in a folder that is made
// if it is not there. A table that could not be read again is refused.
func Save(path string, t norms.Table) error {
	data, err := Encode(t)
	if err != nil {
		return err
	}
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		return err
	}
	return wholefile.Write(path, data)
}

// Remove takes the copy at path away; it is no error if there is none.
func Remove(path string) error {
	if err := os.Remove(path); err != nil && !errors.Is(err, fs.ErrNotExist) {
		return err
	}
	return nil
}

// Same reports whether two tables say the same.
func Same(a, b norms.Table) bool {
	first, err := Encode(a)
	second, also := Encode(b)
	if err != nil || also != nil {
		return reflect.DeepEqual(a, b)
	}
	return bytes.Equal(first, second)
}

// Encode is the table as norms.Parse reads it. A table that it would refuse is
// an error.
func Encode(t norms.Table) ([]byte, error) {
	f := file{Ogive: 1, Span: span{float64(t.Span.Least), t.Span.Fraction, t.Span.Reason}}
	for _, r := range t.Rows {
		f.Rows = append(f.Rows, rowOf(r))
	}
	for _, b := range t.Bands {
		f.Bands = append(f.Bands, band{b.Figure, viewName(b.View), b.Low, b.High, b.Against, b.Rows, b.Reason})
	}
	data, err := json.MarshalIndent(f, "", "  ")
	if err != nil {
		return nil, fmt.Errorf("normal values: %w", err)
	}
	if _, err := norms.Parse(data); err != nil {
		return nil, err
	}
	return append(data, '\n'), nil
}

type file struct {
	Ogive int    `json:"ogive"`
	Rows  []row  `json:"rows"`
	Bands []band `json:"bands"`
	Span  span   `json:"span"`
}

type row struct {
	ID      string     `json:"id"`
	Figure  string     `json:"figure"`
	View    string     `json:"view"`
	Webs    []hand.Web `json:"webs,omitempty"`
	Value   string     `json:"value"`
	Numbers []number   `json:"numbers,omitempty"`
	Source  string     `json:"source"`
	Trust   string     `json:"trust"`
}

type number struct {
	Of   string   `json:"of"`
	Unit string   `json:"unit"`
	Low  *float64 `json:"low,omitempty"`
	High *float64 `json:"high,omitempty"`
}

type band struct {
	Figure  string   `json:"figure"`
	View    string   `json:"view"`
	Low     float64  `json:"low"`
	High    float64  `json:"high"`
	Against string   `json:"against"`
	Rows    []string `json:"rows"`
	Reason  string   `json:"reason"`
}

type span struct {
	ToleranceMM       float64 `json:"tolerance_mm"`
	ToleranceFraction float64 `json:"tolerance_fraction"`
	Reason            string  `json:"reason"`
}

func rowOf(r norms.Row) row {
	out := row{ID: r.ID, Figure: r.Figure, View: viewName(r.View), Webs: r.Webs, Value: r.Value, Source: r.Source, Trust: r.Trust}
	for _, n := range r.Numbers {
		out.Numbers = append(out.Numbers, number{n.Of, n.Unit, finite(n.Low), finite(n.High)})
	}
	return out
}

// finite is x, nil for an open side.
func finite(x float64) *float64 {
	if math.IsInf(x, 0) {
		return nil
	}
	return &x
}

func viewName(v hand.View) string {
	if v == 0 {
		return "any"
	}
	return v.String()
}
