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
				t.warnings[w.Web] = []string{"The border could not be traced: " + err.Error() + "."}
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

// warn adds what the tracer said to the webs of the reading.
func (t traced) warn(r *reading.Reading) {
	for i, w := range r.Webs {
		r.Webs[i].Warnings = append(slices.Clone(t.warnings[w.Web]), w.Warnings...)
	}
}
