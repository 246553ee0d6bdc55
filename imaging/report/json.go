package report

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"math"
	"strings"

	"ogive/geometry/norms"
	"ogive/geometry/plane"
	"ogive/geometry/reading"
	"ogive/imaging/marksfile"
)

// JSON writes the reading of one marks file as one object, with a line for the
// scale and for every web.
func JSON(to io.Writer, e Entry) error {
	text, err := document(e)
	if err != nil {
		return err
	}
	_, err = io.WriteString(to, text+"\n")
	return err
}

// JSONList writes the readings of several marks files as an array.
func JSONList(to io.Writer, entries []Entry) error {
	texts := make([]string, len(entries))
	for i, e := range entries {
		var err error
		if texts[i], err = document(e); err != nil {
			return err
		}
	}
	_, err := io.WriteString(to, "["+strings.Join(texts, ",\n")+"]\n")
	return err
}

// IsReading reports whether a text is what JSON or JSONList wrote, which may lie
// among marks files.
func IsReading(data []byte) bool {
	type head struct {
		Ogive int     `json:"ogive"`
		Marks *string `json:"marks"`
	}
	one := head{}
	if json.Unmarshal(data, &one) == nil {
		return one.Ogive != 0 && one.Marks != nil
	}
	var list []head
	return json.Unmarshal(data, &list) == nil && (len(list) == 0 || list[0].Ogive != 0 && list[0].Marks != nil)
}

// object is a JSON object on one line whose names keep their order.
type object struct {
	members []string
	fault   *error
}

func (o *object) add(name string, value any) {
	o.members = append(o.members, fmt.Sprintf("%q: %s", name, o.compact(value)))
}

// compact is a value on one line, the angle brackets of a file name left as
// they are.
func (o *object) compact(value any) string {
	if inner, ok := value.(object); ok {
		return inner.String()
	}
	var out bytes.Buffer
	e := json.NewEncoder(&out)
	e.SetEscapeHTML(false)
	if err := e.Encode(value); err != nil {
		*o.fault = err
	}
	return strings.TrimSpace(out.String())
}

// String is the object.
func (o object) String() string { return "{" + strings.Join(o.members, ", ") + "}" }

func document(e Entry) (text string, err error) {
	r := e.Result.Reading
	head := object{fault: &err}
	head.add("ogive", marksfile.Version)
	head.add("marks", e.Path)
	head.add("photograph", e.Result.Marks.Photograph)
	head.add("hand", r.Side.String())
	head.add("view", r.View.String())
	s := object{fault: &err}
	s.add("method", string(r.Method))
	if perPixel := estimated(&r.PerPixel, plain[plane.Millimetre]); perPixel != nil {
		s.add("mm_per_px", perPixel)
	}
	s.add("warnings", list(r.Warnings))
	webs := make([]string, len(r.Webs))
	for i, w := range r.Webs {
		webs[i] = webOf(w, &err).String()
	}
	return fmt.Sprintf("{%s,\n \"scale\": %s,\n \"webs\": [%s]}",
		strings.Join(head.members, ", "), s, strings.Join(webs, ",\n  ")), err
}

func webOf(w reading.Web, fault *error) object {
	out := object{fault: fault}
	out.add("web", int(w.Web))
	for _, c := range columns {
		if e := c.of(w); e != nil {
			out.add(c.name+c.unit, e)
		}
	}
	if fitted(w) {
		out.add("shape", w.Shape.String())
		out.add("shape_sure", w.ShapeSure)
		if len(w.ShapeAlso) > 0 {
			out.add("shape_also", shapes(w))
		}
		out.add("fit_rms_mm", number(w.FitRMS))
		if w.Crown.Finite() {
			out.add("crown_px", pixels(w.Crown)[0])
		}
		if springings := pixels(w.Springing[:]...); len(springings) == 2 {
			out.add("springing_px", springings)
		}
	}
	if len(w.Edge) > 0 {
		out.add("edge_px", pixels(w.Edge...))
	}
	out.addWidths(w)
	out.add("verdicts", verdictsOf(w))
	out.add("warnings", list(w.Remarks()))
	return out
}

func shapes(w reading.Web) []string {
	var out []string
	for _, s := range w.ShapeAlso {
		out = append(out, s.String())
	}
	return out
}

func (o *object) addWidths(w reading.Web) {
	widths, u95 := object{fault: o.fault}, object{fault: o.fault}
	for _, at := range widthsAt {
		if e := widthAt(w, at); e != nil {
			widths.add(number(at).String(), e.Value)
			u95.add(number(at).String(), e.U95)
		}
	}
	if len(widths.members) > 0 {
		o.add("widths_mm", widths)
		o.add("widths_u95_mm", u95)
	}
}

type verdict struct {
	Figure  string `json:"figure"`
	Verdict string `json:"verdict"`
	Certain bool   `json:"certain"`
	Limit   number `json:"limit"`
	Against string `json:"against"`
}

func verdictsOf(w reading.Web) []verdict {
	out := []verdict{}
	for _, v := range w.Verdicts {
		if judged(v) {
			out = append(out, verdict{v.Figure, v.Finding, v.Certain, number(v.Limit), v.Against})
		}
	}
	return out
}

func judged(v norms.Verdict) bool { return finite(v.Limit) }

// pixels are places on the photograph to a hundredth of a pixel, finer than any
// border is traced.
func pixels(ps ...plane.PixelPoint) [][2]float64 {
	hundredth := func(x plane.Pixel) float64 { return math.Round(float64(x)*100) / 100 }
	out := make([][2]float64, 0, len(ps))
	for _, p := range ps {
		if p.Finite() {
			out = append(out, [2]float64{hundredth(p.X), hundredth(p.Y)})
		}
	}
	return out
}

// list is never null in JSON.
func list(texts []string) []string {
	if texts == nil {
		return []string{}
	}
	return texts
}
