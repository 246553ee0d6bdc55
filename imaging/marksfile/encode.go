package marksfile

import (
	"bytes"
	"encoding/json"
	"fmt"
	"strings"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/geometry/scale"
)

// Encode is the text of the marks file, with a line for every field, digit and
// web. Marks that could not be read again are refused, with a *Refusal.
func (f File) Encode() ([]byte, error) {
	t := &text{}
	t.field("ogive", Version)
	t.field("photograph", f.Photograph)
	t.field("hand", f.Marks.Side.String())
	t.field("view", f.Marks.View.String())
	if f.Marks.ClickSD != 0 {
		t.field("click_sd_px", f.Marks.ClickSD)
	}
	if f.Reference != nil {
		t.field("scale", referenceText(f.Reference))
	}
	t.rows("joints", "{", f.jointRows(t), "}")
	t.rows("webs", "[", f.webRows(t), "]")
	if len(f.Marks.Junctions) > 0 {
		t.rows("junctions", "[", f.junctionRows(t), "]")
	}
	if f.Unfinished != nil {
		t.field("unfinished", f.Unfinished.text())
	}
	if t.err != nil {
		return nil, t.err
	}
	data := []byte("{\n  " + strings.Join(t.fields, ",\n  ") + "\n}\n")
	if _, err := Parse(data); err != nil {
		return nil, err
	}
	return data, nil
}

// text is a JSON object in the making.
type text struct {
	fields []string
	err    error
}

func (t *text) field(name string, value any) {
	t.fields = append(t.fields, fmt.Sprintf("%q: %s", name, t.compact(value)))
}

func (t *text) rows(name, open string, rows []string, end string) {
	if len(rows) > 0 {
		open, end = open+"\n    ", "\n  "+end
	}
	t.fields = append(t.fields, fmt.Sprintf("%q: %s%s%s", name, open, strings.Join(rows, ",\n    "), end))
}

// compact is the value on one line, the angle brackets of a file name left as
// they are.
func (t *text) compact(value any) string {
	var out bytes.Buffer
	e := json.NewEncoder(&out)
	e.SetEscapeHTML(false)
	if err := e.Encode(value); err != nil && t.err == nil {
		t.err = &Refusal{"", "the marks hold what is no number", "mark the photograph again"}
	}
	return strings.TrimSpace(out.String())
}

type pointText plane.PixelPoint

// MarshalJSON is [x, y].
func (p pointText) MarshalJSON() ([]byte, error) {
	return json.Marshal([2]float64{float64(p.X), float64(p.Y)})
}

func pointsText(ps []plane.PixelPoint) []pointText {
	out := make([]pointText, len(ps))
	for i, p := range ps {
		out[i] = pointText(p)
	}
	return out
}

type rulerText struct {
	Ruler  []pointText      `json:"ruler"`
	Length plane.Millimetre `json:"length_mm"`
}

type ticksText struct {
	Ticks []pointText      `json:"ticks"`
	Step  plane.Millimetre `json:"step_mm"`
}

type cardText struct {
	Card   []pointText      `json:"card"`
	Width  plane.Millimetre `json:"width_mm"`
	Height plane.Millimetre `json:"height_mm"`
}

func referenceText(r scale.Reference) any {
	points := pointsText(r.Points())
	switch r := r.(type) {
	case scale.Ruler:
		return rulerText{points, r.Length}
	case scale.Ticks:
		return ticksText{points, r.Step}
	case scale.Card:
		return cardText{points, r.Width, r.Height}
	}
	return nil
}

// referenceName is the field that holds the reference's points.
func referenceName(r scale.Reference) string { return string(r.Method()) }

func (f File) jointRows(t *text) []string {
	var rows []string
	for _, d := range hand.Digits {
		var joints []string
		for _, j := range hand.Joints {
			if p, ok := f.Marks.Joint(d, j); ok {
				joints = append(joints, fmt.Sprintf("%q: %s", j, t.compact(pointText(p))))
			} else if f.Absent[d][j] {
				joints = append(joints, fmt.Sprintf("%q: null", j))
			}
		}
		if joints != nil {
			rows = append(rows, fmt.Sprintf("%q: {%s}", d, strings.Join(joints, ", ")))
		}
	}
	return rows
}

type webText struct {
	Web   hand.Web    `json:"web"`
	Seeds []pointText `json:"seeds,omitempty"`
	Edge  []pointText `json:"edge,omitempty"`
}

func (f File) webRows(t *text) []string {
	var rows []string
	for _, w := range f.Marks.Webs {
		rows = append(rows, t.compact(webText{w.Web, pointsText(w.Seeds), pointsText(w.Edge)}))
	}
	return rows
}

type junctionText struct {
	Web  hand.Web    `json:"web"`
	Line []pointText `json:"line"`
	Axis []pointText `json:"axis"`
}

func (f File) junctionRows(t *text) []string {
	var rows []string
	for _, j := range f.Marks.Junctions {
		rows = append(rows, t.compact(junctionText{j.Web, pointsText(j.Line), pointsText(j.Axis[:])}))
	}
	return rows
}
