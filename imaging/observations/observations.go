// Package observations reads what observers measured on the same targets and
// sorts it into tables whose agreement can be told.
//
//	all, err := observations.Read(file)
//	for _, c := range observations.Compare(all) {
//		c.Table.Agreement()
//	}
//
// The file is CSV with the columns target, observer and value, and optionally
// figure and occasion, in any order.
package observations

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"
)

// Observation is one value that an observer found on a target.
type Observation struct {
	Target, Observer string
	Figure           string // empty if the file knows only one
	Occasion         string // empty if each observer measured once
	Value            float64
}

// The columns.
const (
	target   = "target"
	observer = "observer"
	value    = "value"
	figure   = "figure"
	occasion = "occasion"
)

// most is how many observations are read.
const most = 1_000_000

// Read reads all observations. The error names the line, the column and the mend.
func Read(from io.Reader) ([]Observation, error) {
	r := csv.NewReader(from)
	r.TrimLeadingSpace = true
	r.FieldsPerRecord = -1
	header, err := r.Read()
	if errors.Is(err, io.EOF) {
		return nil, errors.New("line 1: the file is empty; it needs a line with the columns target, observer, value")
	}
	if err != nil {
		return nil, plain(err)
	}
	columns, err := find(header)
	if err != nil {
		return nil, err
	}
	var all []Observation
	for {
		record, err := r.Read()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return nil, plain(err)
		}
		line, _ := r.FieldPos(0)
		if len(all) == most {
			return nil, fmt.Errorf("line %d: more than %d observations; split the file", line, most)
		}
		one, err := columns.observation(record, len(header))
		if err != nil {
			return nil, fmt.Errorf("line %d, %w", line, err)
		}
		all = append(all, one)
	}
	if len(all) == 0 {
		return nil, errors.New("line 2: there is no observation; give a line for every target and observer")
	}
	return all, repeated(all)
}

// where is the place of each column that is there.
type where map[string]int

func find(header []string) (where, error) {
	at := where{}
	for i, name := range header {
		name = strings.ToLower(strings.TrimSpace(strings.TrimPrefix(name, "\ufeff")))
		if _, twice := at[name]; twice {
			return nil, fmt.Errorf("line 1: the column %q stands twice; keep one", name)
		}
		at[name] = i
	}
	for _, needed := range []string{target, observer, value} {
		if _, there := at[needed]; !there {
			return nil, fmt.Errorf("line 1: there is no column %q; the columns are target, observer, value, and if you like figure and occasion", needed)
		}
	}
	return at, nil
}

func (w where) observation(record []string, width int) (Observation, error) {
	if len(record) != width {
		return Observation{}, fmt.Errorf("it has %d columns, the first line has %d; give one value for each", len(record), width)
	}
	text := func(name string) string {
		if i, there := w[name]; there {
			return strings.TrimSpace(record[i])
		}
		return ""
	}
	o := Observation{Target: text(target), Observer: text(observer), Figure: text(figure), Occasion: text(occasion)}
	for name, t := range map[string]string{target: o.Target, observer: o.Observer} {
		if t == "" {
			return o, fmt.Errorf("column %s: it is empty; name the %s", name, name)
		}
	}
	number, err := strconv.ParseFloat(text(value), 64)
	if err != nil || number-number != 0 {
		return o, fmt.Errorf("column value: %q is no number; write it with a point, as in 0.47", text(value))
	}
	o.Value = number
	return o, nil
}

func repeated(all []Observation) error {
	seen := map[Observation]bool{}
	for _, o := range all {
		o.Value = 0
		if seen[o] {
			return fmt.Errorf("%s has two values of target %s; tell them apart by the column occasion, or keep one", o.Observer, o.Target)
		}
		seen[o] = true
	}
	return nil
}

func plain(err error) error {
	var broken *csv.ParseError
	if errors.As(err, &broken) {
		return fmt.Errorf("line %d: %w; save the table as plain CSV", broken.Line, broken.Err)
	}
	return fmt.Errorf("the file can't be read: %w", err)
}

// distinct is every value of a field, in the order of its first appearance.
func distinct(all []Observation, field func(Observation) string) []string {
	var out []string
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
func only(all []Observation, holds func(Observation) bool) []Observation {
	return slices.DeleteFunc(slices.Clone(all), func(o Observation) bool { return !holds(o) })
}
