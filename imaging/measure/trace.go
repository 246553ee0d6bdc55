package measure

import (
	"slices"
	"strings"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/geometry/reading"
	"ogive/imaging/trace"
	"ogive/imaging/wording"
)

// traced is the webs with their edges, and what the tracer said of each.
type traced struct {
	webs     []hand.WebMarks
	warnings map[hand.Web][]string
}

// trace follows the border of every web that has only seeds.
func (s Subject) trace() traced {
	t := traced{warnings: map[hand.Web][]string{}}
	for _, w := range s.Marks.Marks.Webs {
		if len(w.Edge) == 0 {
			border, err := trace.Web(s.Photograph, [3]plane.PixelPoint(w.Seeds))
			if err != nil {
				t.warnings[w.Web] = []string{"The border could not be traced, so nothing that needs it is given: " + err.Error() + "."}
			} else {
				w.Edge, t.warnings[w.Web] = border.Points, sentences(border.Warnings)
			}
		}
		t.webs = append(t.webs, w)
	}
	return t
}

// sentences begins each text with a capital and ends it with a full stop.
func sentences(texts []string) []string {
	var out []string
	for _, text := range texts {
		out = append(out, strings.TrimSuffix(wording.Sentence(text), ".")+".")
	}
	return out
}

// readable is the marks with those webs only that have a border.
func (t traced) readable(m hand.Marks) hand.Marks {
	m.Webs = nil
	for _, w := range t.webs {
		if len(w.Edge) > 0 {
			m.Webs = append(m.Webs, w)
		}
	}
	return m
}

// warn adds what the tracer said, and the webs that it could not trace, in the
// order in which they were marked.
func (t traced) warn(r *reading.Reading) {
	var ordered []reading.Web
	for _, w := range t.webs {
		read := reading.Web{Web: w.Web}
		if i := slices.IndexFunc(r.Webs, func(x reading.Web) bool { return x.Web == w.Web }); i >= 0 {
			read = r.Webs[i]
			r.Webs = slices.Delete(r.Webs, i, i+1)
		}
		read.Warnings = append(slices.Clone(t.warnings[w.Web]), read.Warnings...)
		ordered = append(ordered, read)
	}
	r.Webs = append(ordered, r.Webs...)
}
