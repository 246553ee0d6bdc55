package report

import (
	"encoding/csv"
	"fmt"
	"io"
	"strconv"
	"strings"

	"ogive/geometry/plane"
	"ogive/geometry/reading"
)

// judgedFigures are the figures that there may be a verdict on.
var judgedFigures = []string{"index", "span", "slope"}

// CSV writes one row for every web under one header (RFC 4180). Units stand in
// the names of the columns; what is not known is empty; several warnings are
// parted by " | ".
func CSV(to io.Writer, entries []Entry) error {
	w := csv.NewWriter(to)
	w.UseCRLF = true
	if err := w.Write(header()); err != nil {
		return err
	}
	for _, e := range entries {
		for _, web := range e.Result.Reading.Webs {
			if err := w.Write(row(e, web)); err != nil {
				return err
			}
		}
	}
	w.Flush()
	return w.Error()
}

func header() []string {
	out := []string{"marks", "photograph", "hand", "view", "scale_method", "scale_mm_per_px", "scale_u95_mm_per_px", "web"}
	for _, c := range columns {
		out = append(out, c.name+c.unit, c.name+"_u95"+c.unit)
	}
	for _, at := range widthsAt {
		name := fmt.Sprintf("width_at_%v_mm", number(at))
		out = append(out, name, name+"_u95")
	}
	out = append(out, "shape", "shape_sure", "shape_also", "fit_rms_mm")
	for _, f := range judgedFigures {
		out = append(out, f+"_verdict", f+"_verdict_certain", f+"_limit", f+"_against")
	}
	return append(out, "scale_warnings", "warnings")
}

func row(e Entry, w reading.Web) []string {
	r := e.Result.Reading
	out := []string{e.Path, e.Result.Marks.Photograph, r.Side.String(), r.View.String(), string(r.Method)}
	out = append(out, cells(estimated(&r.PerPixel, plain[plane.Millimetre]))...)
	out = append(out, strconv.Itoa(int(w.Web)))
	for _, c := range columns {
		out = append(out, cells(c.of(w))...)
	}
	for _, at := range widthsAt {
		out = append(out, cells(widthAt(w, at))...)
	}
	out = append(out, shapeCells(w)...)
	for _, f := range judgedFigures {
		out = append(out, verdictCells(w, f)...)
	}
	return append(out, strings.Join(r.Warnings, " | "), strings.Join(w.Remarks(), " | "))
}

func cells(e *estimate) []string {
	if e == nil {
		return []string{"", ""}
	}
	return []string{e.Value.String(), e.U95.String()}
}

func shapeCells(w reading.Web) []string {
	if !fitted(w) {
		return []string{"", "", "", ""}
	}
	return []string{w.Shape.String(), strconv.FormatBool(w.ShapeSure), strings.Join(shapes(w), " | "), number(w.FitRMS).String()}
}

func verdictCells(w reading.Web, figure string) []string {
	for _, v := range w.Verdicts {
		if v.Figure == figure && judged(v) {
			return []string{v.Finding, strconv.FormatBool(v.Certain), number(v.Limit).String(), v.Against}
		}
	}
	return []string{"", "", "", ""}
}
