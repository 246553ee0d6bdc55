package rounds

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"regexp"
	"time"
)

// Form is the form of file that this program reads and writes: the number in the
// field "ogive_round".
const Form = 1

// MaxSize is the size in bytes beyond which a file is refused unread.
const MaxSize = 4 << 20

// file is what is kept of a round.
type file struct {
	Form     int       `json:"ogive_round"`
	ID       string    `json:"id"`
	Observer string    `json:"observer"`
	Begun    time.Time `json:"begun"`
	Setup    Setup     `json:"setup"`
	Limits   Limits    `json:"limits"`
	Repeats  string    `json:"repeats,omitempty"`
	Order    []int     `json:"order"`
	Results  []Result  `json:"results"`
}

// Encode is the text of the round.
func (r *Round) Encode() ([]byte, error) {
	results := r.Results
	if results == nil {
		results = []Result{}
	}
	return json.MarshalIndent(file{Form, r.ID, r.Observer, r.Begun, r.Setup, r.Limits, r.Repeats, r.Order, results}, "", " ")
}

// Parse reads what Encode wrote. The error names the field and the mend, in one
// line.
func Parse(data []byte) (*Round, error) {
	if len(data) > MaxSize {
		return nil, errors.New("the file is larger than 4 MB, which no round is; take another copy of it")
	}
	var head struct {
		Form *int `json:"ogive_round"`
	}
	if err := json.Unmarshal(data, &head); err != nil {
		return nil, plain(err)
	}
	switch {
	case head.Form == nil:
		return nil, errors.New("ogive_round: is missing, so this is no teaching round; give one that this program wrote")
	case *head.Form > Form:
		return nil, fmt.Errorf("ogive_round: is %d: the round was written by a later program, this one reads form %d; use the later program", *head.Form, Form)
	case *head.Form < Form:
		return nil, fmt.Errorf("ogive_round: is %d; give %d", *head.Form, Form)
	}
	var f file
	d := json.NewDecoder(bytes.NewReader(data))
	d.DisallowUnknownFields()
	if err := d.Decode(&f); err != nil && !errors.Is(err, io.EOF) {
		return nil, plain(err)
	}
	if err := f.check(); err != nil {
		return nil, err
	}
	return &Round{ID: f.ID, Observer: f.Observer, Begun: f.Begun, Setup: f.Setup, Limits: f.Limits, Repeats: f.Repeats, Order: f.Order, Results: f.Results}, nil
}

// plain says what the decoder found in the words of the file.
func plain(err error) error {
	var kind *json.UnmarshalTypeError
	if errors.As(err, &kind) {
		return fmt.Errorf("%.60s: holds a %.20s, which does not belong there; take another copy of the file", kind.Field, kind.Value)
	}
	var syntax *json.SyntaxError
	if errors.As(err, &syntax) {
		return fmt.Errorf("the file is no JSON at byte %d; take another copy of it", syntax.Offset)
	}
	return fmt.Errorf("the file can't be read (%.100q); take another copy of it", err)
}

// plainID is a name that is a file's on every system.
var plainID = regexp.MustCompile(`^[0-9A-Za-z][0-9A-Za-z-]{0,79}$`)

func (f file) check() error {
	switch {
	case !plainID.MatchString(f.ID) || f.Repeats != "" && !plainID.MatchString(f.Repeats):
		return errors.New("id: is no name of a round; give letters, digits and hyphens")
	case f.Observer == "" || len(f.Observer) > 200:
		return errors.New("observer: is missing or longer than 200 bytes; give the observer's name")
	case f.Begun.IsZero() || f.Begun.Year() < 1970 || f.Begun.Year() > 9999:
		return errors.New("begun: is no time; give one such as 2026-03-01T09:30:00Z")
	}
	if err := f.Setup.Check(); err != nil {
		return fmt.Errorf("setup.%w", err)
	}
	if n := len(f.Setup.Photographs); n > 0 && n != f.Setup.Count {
		return fmt.Errorf("setup.count: is %d with %d photographs; give their number", f.Setup.Count, n)
	}
	if err := f.Limits.check(); err != nil {
		return err
	}
	if err := checkOrder(f.Order, f.Setup.Count); err != nil {
		return err
	}
	return f.checkResults()
}

func checkOrder(order []int, count int) error {
	seen := map[int]bool{}
	for _, n := range order {
		if n < 0 || n >= count || seen[n] {
			return fmt.Errorf("order: %d is no picture of the round or is there twice; give each of 0 to %d once", n, count-1)
		}
		seen[n] = true
	}
	if len(order) != count {
		return fmt.Errorf("order: has %d of %d pictures; give each once", len(order), count)
	}
	return nil
}

func (f file) checkResults() error {
	if len(f.Results) > len(f.Order) {
		return fmt.Errorf("results: %d answers to %d pictures; remove what is too much", len(f.Results), len(f.Order))
	}
	for i, result := range f.Results {
		if result.Picture != f.Order[i] {
			return fmt.Errorf("results[%d].picture: is %d where the order has %d; take another copy of the file", i, result.Picture, f.Order[i])
		}
		if err := result.check(); err != nil {
			return fmt.Errorf("results[%d].%w; take another copy of the file", i, err)
		}
		if y := result.At.Year(); y > 9999 || y < 0 {
			return fmt.Errorf("results[%d].at: is no time; take another copy of the file", i)
		}
	}
	return nil
}
