package appraisal

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"slices"

	"ogive/geometry/hand"
)

// Form is the form of text that this program reads and writes: the number in
// the field "ogive_appraisal".
const Form = 1

// MaxSize is the size in bytes beyond which a text is refused unread.
const MaxSize = 1 << 20

// file is the text. Observer and time are not in it: they are kept beside it.
type file struct {
	Form     int     `json:"ogive_appraisal"`
	Findings []given `json:"findings"`
	Remarks  string  `json:"remarks,omitempty"`
}

type given struct {
	Finding Key    `json:"finding"`
	Hand    string `json:"hand,omitempty"`
	Web     int    `json:"web,omitempty"`
	Digit   string `json:"digit,omitempty"`
	Choice  string `json:"choice,omitempty"`
	Note    string `json:"note,omitempty"`
}

// Encode is the text of the appraisal, without observer and time:
//
//	{"ogive_appraisal": 1, "findings": [
//	 {"finding": "feel", "hand": "left", "web": 3, "choice": "thickened", "note": "radial side"}], "remarks": "..."}
//
// An appraisal that could not be read again is refused.
func (a Appraisal) Encode() ([]byte, error) {
	if err := a.Check(); err != nil {
		return nil, err
	}
	out := file{Form: Form, Findings: []given{}, Remarks: a.Remarks}
	for _, g := range slices.SortedFunc(slices.Values(a.Findings), inOrder) {
		e := given{Finding: g.Finding, Web: int(g.Place.Web), Choice: g.Choice, Note: g.Note}
		if g.Place.Hand != 0 {
			e.Hand = g.Place.Hand.String()
		}
		if g.Place.Digit != 0 {
			e.Digit = g.Place.Digit.String()
		}
		out.Findings = append(out.Findings, e)
	}
	return json.Marshal(out)
}

// Parse reads what Encode wrote. The error names the field and the mend, in one
// line.
func Parse(data []byte) (Appraisal, error) {
	if len(data) > MaxSize {
		return Appraisal{}, errors.New("the appraisal is larger than 1 MB, which none is; take another copy of it")
	}
	f, err := read(data)
	if err != nil {
		return Appraisal{}, err
	}
	a := Appraisal{Remarks: f.Remarks}
	for i, e := range f.Findings {
		g, err := e.given()
		if err != nil {
			return Appraisal{}, fmt.Errorf("findings[%d]%w", i, err)
		}
		a.Findings = append(a.Findings, g)
	}
	if err := a.Check(); err != nil {
		return Appraisal{}, err
	}
	slices.SortFunc(a.Findings, inOrder)
	return a, nil
}

func read(data []byte) (f file, err error) {
	var head struct {
		Form *int `json:"ogive_appraisal"`
	}
	if err := json.Unmarshal(data, &head); err != nil {
		return f, plain(err)
	}
	switch {
	case head.Form == nil:
		return f, errors.New("ogive_appraisal: is missing, so this is no appraisal; give one that this program wrote")
	case *head.Form > Form:
		return f, fmt.Errorf("ogive_appraisal: is %d: the appraisal was written by a later program, this one reads form %d; use the later program", *head.Form, Form)
	case *head.Form < Form:
		return f, fmt.Errorf("ogive_appraisal: is %d; give %d", *head.Form, Form)
	}
	d := json.NewDecoder(bytes.NewReader(data))
	d.DisallowUnknownFields()
	if err := d.Decode(&f); err != nil && !errors.Is(err, io.EOF) {
		return f, plain(err)
	}
	return f, nil
}

// plain says what the decoder found in the words of the file.
func plain(err error) error {
	var kind *json.UnmarshalTypeError
	if errors.As(err, &kind) {
		return fmt.Errorf("%s: holds a %s, which does not belong there; see how the program writes it", kind.Field, kind.Value)
	}
	var syntax *json.SyntaxError
	if errors.As(err, &syntax) {
		return fmt.Errorf("the appraisal is no JSON at byte %d (%w); take another copy of it", syntax.Offset, err)
	}
	return fmt.Errorf("the appraisal can't be read (%w); see how the program writes it", err)
}

func (e given) given() (Given, error) {
	g := Given{Finding: e.Finding, Place: Place{Web: hand.Web(e.Web)}, Choice: e.Choice, Note: e.Note}
	var err error
	if e.Hand != "" {
		if g.Place.Hand, err = hand.ParseSide(e.Hand); err != nil {
			return g, fmt.Errorf(".hand: %.40q is no hand; give \"left\" or \"right\"", e.Hand)
		}
	}
	if e.Digit != "" {
		if g.Place.Digit, err = hand.ParseDigit(e.Digit); err != nil {
			return g, fmt.Errorf(".digit: %.40q is no digit; give one such as \"ring\"", e.Digit)
		}
	}
	return g, nil
}
