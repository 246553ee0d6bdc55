package planfile

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"strings"

	"ogive/geometry/arch"
	"ogive/geometry/plan"
	"ogive/geometry/plane"
	"ogive/imaging/marksfile"
)

// Encode is the text of the plan file, with a line for every field, web and
// alternative. A plan that could not be read again is refused, with a
// *marksfile.Refusal.
func (f File) Encode() ([]byte, error) {
	w := &writer{}
	fields := []string{
		w.field("ogive_plan", Version), w.field("photograph", f.Photograph),
	}
	fields = append(fields, w.unlessEmpty("marks", f.Marks)...)
	fields = append(fields, w.unlessEmpty("other", f.Other)...)
	fields = append(fields, w.field("hand", f.Side.String()), w.field("view", f.View.String()))
	fields = append(fields, w.rows("webs", webRows(w, f.Webs)))
	fields = append(fields, w.rows("donors", rowsOf(w, f.Donors, donorText)))
	fields = append(fields, w.rows("patches", rowsOf(w, f.Patches, patchText)))
	if len(f.Family.Findings)+len(f.Family.Texts) > 0 {
		fields = append(fields, w.field("family", familyText(f.Family)))
	}
	if w.err != nil {
		return nil, &marksfile.Refusal{Problem: "the plan holds what is no number", Mend: "draw it again"}
	}
	data := []byte("{\n  " + strings.Join(fields, ",\n  ") + "\n}\n")
	if _, err := Parse(data); err != nil {
		return nil, err
	}
	return data, nil
}

// writer writes values on one line each and keeps the first failure.
type writer struct{ err error }

func (w *writer) compact(value any) string {
	var out bytes.Buffer
	e := json.NewEncoder(&out)
	e.SetEscapeHTML(false)
	if err := e.Encode(value); err != nil && w.err == nil {
		w.err = err
	}
	return strings.TrimSpace(out.String())
}

func (w *writer) field(name string, value any) string {
	return fmt.Sprintf("%q: %s", name, w.compact(value))
}

func (w *writer) unlessEmpty(name, value string) []string {
	if value == "" {
		return nil
	}
	return []string{w.field(name, value)}
}

func (w *writer) rows(name string, rows []string) string {
	if len(rows) == 0 {
		return fmt.Sprintf("%q: []", name)
	}
	return fmt.Sprintf("%q: [\n    %s\n  ]", name, strings.Join(rows, ",\n    "))
}

func rowsOf[T, U any](w *writer, list []T, text func(T) U) []string {
	var out []string
	for _, e := range list {
		out = append(out, w.compact(text(e)))
	}
	return out
}

func webRows(w *writer, webs []Web) []string {
	var out []string
	for _, web := range webs {
		head := []string{w.field("web", web.Web)}
		head = append(head, w.unlessEmpty("chosen", web.Chosen)...)
		if web.Join != nil {
			head = append(head, w.field("join", pointsText(web.Join[:])))
		}
		if web.Girths != nil {
			head = append(head, w.field("girths", girthsText(*web.Girths)))
		}
		alternatives := strings.Join(rowsOf(w, web.Alternatives, alternativeText), ",\n       ")
		out = append(out, "{"+strings.Join(head, ", ")+",\n     \"alternatives\": ["+alternatives+"]}")
	}
	return out
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

type (
	girthForm struct {
		Taped plane.Millimetre `json:"taped_mm,omitempty"`
		Width plane.Millimetre `json:"width_mm,omitempty"`
	}
	girthsForm struct {
		Radial *girthForm `json:"radial,omitempty"`
		Ulnar  *girthForm `json:"ulnar,omitempty"`
	}
	archForm struct {
		Crown pointText         `json:"crown"`
		Axis  pointText         `json:"axis"`
		Shape string            `json:"shape"`
		Span  *plane.Millimetre `json:"span_mm,omitempty"`
		Flare float64           `json:"flare_deg"`
		Turn  *float64          `json:"turn_deg,omitempty"`
		Flat  *plane.Ratio      `json:"flat_share,omitempty"`
	}
	flapForm struct {
		Kind    string      `json:"kind"`
		Outline []pointText `json:"outline"`
	}
	zigzagForm struct {
		Dorsal []pointText `json:"dorsal,omitempty"`
		Palmar []pointText `json:"palmar,omitempty"`
	}
	alternativeForm struct {
		Name   string      `json:"name"`
		Arch   *archForm   `json:"arch,omitempty"`
		Flap   *flapForm   `json:"flap,omitempty"`
		Zigzag *zigzagForm `json:"zigzag,omitempty"`
	}
	donorForm struct {
		Name      string  `json:"name"`
		Gave      float64 `json:"gave_cm2,omitempty"`
		Drawbacks string  `json:"drawbacks,omitempty"`
	}
	patchForm struct {
		Name       string      `json:"name"`
		At         pointText   `json:"at"`
		Radius     plane.Pixel `json:"radius_px"`
		Photograph string      `json:"photograph,omitempty"`
	}
	textForm struct {
		Key  string `json:"key"`
		Text string `json:"text"`
	}
	familyForm struct {
		Findings []string   `json:"findings,omitempty"`
		Texts    []textForm `json:"texts,omitempty"`
	}
)

func girthsText(g Girths) girthsForm {
	one := func(g Girth) *girthForm {
		if g == (Girth{}) {
			return nil
		}
		return &girthForm{g.Taped, g.Width}
	}
	return girthsForm{one(g.Radial), one(g.Ulnar)}
}

func alternativeText(a Alternative) alternativeForm {
	out := alternativeForm{Name: a.Name}
	if a.Arch != nil {
		out.Arch = archText(*a.Arch)
	}
	if a.Flap != nil {
		out.Flap = &flapForm{a.Flap.Kind.String(), pointsText(a.Flap.Outline)}
	}
	if a.Zigzag != nil {
		out.Zigzag = &zigzagForm{pointsText(a.Zigzag.Dorsal), pointsText(a.Zigzag.Palmar)}
	}
	return out
}

func archText(a Arch) *archForm {
	f := withinForm(a.Form)
	out := &archForm{Crown: pointText(a.Crown), Axis: pointText(a.Axis), Shape: f.Shape.String(), Flare: kept(f.Flare.Degrees())}
	if f.Shape != arch.V {
		out.Span = &f.Span
	}
	switch f.Shape {
	case arch.Gothic:
		turn := kept(f.Turn.Degrees())
		out.Turn = &turn
	case arch.U:
		out.Flat = &f.Flat
	}
	return out
}

// withinForm is the form as it can be drawn; one of no known shape is left to be
// refused.
func withinForm(f plan.Form) plan.Form {
	if f.Shape < arch.V || f.Shape > arch.U || math.IsNaN(float64(f.Span)) {
		return f
	}
	return f.Bounded()
}

func donorText(d Donor) donorForm { return donorForm(d) }

func patchText(p Patch) patchForm {
	return patchForm{p.Name, pointText(p.Centre), p.Radius, p.Photograph}
}

func familyText(f Family) familyForm {
	out := familyForm{Findings: f.Findings}
	for _, t := range f.Texts {
		out.Texts = append(out.Texts, textForm(t))
	}
	return out
}
