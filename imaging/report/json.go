package report

import (
	"bytes"
	"encoding/json"
	"io"

	"ogive/geometry/norms"
	"ogive/geometry/plane"
	"ogive/geometry/reading"
	"ogive/imaging/marksfile"
)

// JSON writes the reading of one marks file as one object.
func JSON(to io.Writer, e Entry) error { return write(to, documentOf(e)) }

// JSONList writes the readings of several marks files as an array.
func JSONList(to io.Writer, entries []Entry) error {
	list := make([]object, len(entries))
	for i, e := range entries {
		list[i] = documentOf(e)
	}
	return write(to, list)
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

func write(to io.Writer, value any) error {
	e := json.NewEncoder(to)
	e.SetEscapeHTML(false)
	e.SetIndent("", " ")
	return e.Encode(value)
}

// object is a JSON object whose names keep their order.
type object []member

type member struct {
	name  string
	value any
}

// MarshalJSON is the object.
func (o object) MarshalJSON() ([]byte, error) {
	var out bytes.Buffer
	e := json.NewEncoder(&out)
	e.SetEscapeHTML(false)
	out.WriteByte('{')
	for i, m := range o {
		if i > 0 {
			out.WriteByte(',')
		}
		if err := e.Encode(m.name); err != nil {
			return nil, err
		}
		out.WriteByte(':')
		if err := e.Encode(m.value); err != nil {
			return nil, err
		}
	}
	out.WriteByte('}')
	return out.Bytes(), nil
}

func (o *object) add(name string, value any) { *o = append(*o, member{name, value}) }

func documentOf(e Entry) object {
	r := e.Result.Reading
	var out object
	out.add("ogive", marksfile.Version)
	out.add("marks", e.Path)
	out.add("photograph", e.Result.Marks.Photograph)
	out.add("hand", r.Side.String())
	out.add("view", r.View.String())
	var s object
	s.add("method", string(r.Method))
	if perPixel := estimated(&r.PerPixel, plain[plane.Millimetre]); perPixel != nil {
		s.add("mm_per_px", perPixel)
	}
	s.add("warnings", list(r.Warnings))
	out.add("scale", s)
	webs := make([]object, len(r.Webs))
	for i, w := range r.Webs {
		webs[i] = webOf(w)
	}
	out.add("webs", webs)
	return out
}

func webOf(w reading.Web) object {
	var out object
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
		out.add("crown_px", pixel(w.Crown))
		out.add("springing_px", pixels(w.Springing[:]))
	}
	if len(w.Edge) > 0 {
		out.add("edge_px", pixels(w.Edge))
	}
	addWidths(&out, w)
	out.add("verdicts", verdictsOf(w))
	out.add("warnings", list(w.Warnings))
	return out
}

func shapes(w reading.Web) []string {
	var out []string
	for _, s := range w.ShapeAlso {
		out = append(out, s.String())
	}
	return out
}

func addWidths(out *object, w reading.Web) {
	var widths, u95 object
	for _, at := range widthsAt {
		if e := widthAt(w, at); e != nil {
			widths.add(number(at).String(), e.Value)
			u95.add(number(at).String(), e.U95)
		}
	}
	if len(widths) > 0 {
		out.add("widths_mm", widths)
		out.add("widths_u95_mm", u95)
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

// pixel is a place on the photograph to a hundredth of a pixel.
func pixel(p plane.PixelPoint) [2]hundredths {
	return [2]hundredths{hundredths(p.X), hundredths(p.Y)}
}

func pixels(ps []plane.PixelPoint) [][2]hundredths {
	out := make([][2]hundredths, 0, len(ps))
	for _, p := range ps {
		if p.Finite() {
			out = append(out, pixel(p))
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
