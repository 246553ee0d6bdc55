package observed

import (
	"slices"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/imaging/marksfile"
	"ogive/imaging/observations"
)

// points are the points of one part of the marks that a web's figures rest on.
func points(f marksfile.File, web hand.Web, p part) []plane.PixelPoint {
	switch p {
	case jointMarks:
		return joints(f.Marks, web)
	case webMarks:
		for _, w := range f.Marks.Webs {
			if w.Web == web && len(w.Seeds) > 0 {
				return w.Seeds
			}
			if w.Web == web {
				return w.Edge
			}
		}
	case scaleMarks:
		if f.Reference != nil {
			return f.Reference.Points()
		}
	case junctionMarks:
		for _, j := range f.Marks.Junctions {
			if j.Web == web {
				return append(append([]plane.PixelPoint{}, j.Line...), j.Axis[:]...)
			}
		}
	}
	return nil
}

func joints(m hand.Marks, web hand.Web) (out []plane.PixelPoint) {
	radial, ulnar := web.Digits()
	for _, d := range []hand.Digit{radial, ulnar} {
		for _, j := range []hand.Joint{hand.MCP, hand.PIP} {
			if p, ok := m.Joint(d, j); ok {
				out = append(out, p)
			}
		}
	}
	return out
}

// anew reports whether every part that the figure rests on was placed anew. Points
// are carried over if more than half of them lie at the very same place; a single
// one may be hit twice, where the screen shows several pixels as one.
func anew(f figure, web hand.Web, before, now marksfile.File) bool {
	for _, p := range f.rests {
		if carried(points(before, web, p), points(now, web, p)) {
			return false
		}
	}
	return true
}

func carried(old, fresh []plane.PixelPoint) bool {
	same := 0
	for i := range min(len(old), len(fresh)) {
		if old[i] == fresh[i] {
			same++
		}
	}
	return 2*same > len(fresh)
}

// shared is how many webs, of those that two observers read, two marked with the
// very same points.
func shared(p photograph, between []observations.Observation) (n int) {
	var marks []marksfile.File
	for _, m := range p.observers {
		f, err := marksfile.Parse([]byte(m.revisions[len(m.revisions)-1].Text))
		if err == nil && slices.ContainsFunc(between, func(o observations.Observation) bool { return o.Observer == m.name }) {
			marks = append(marks, f)
		}
	}
	for _, w := range hand.Webs {
		if anyShared(marks, w) {
			n++
		}
	}
	return n
}

func anyShared(marks []marksfile.File, w hand.Web) bool {
	for i, a := range marks {
		for _, b := range marks[i+1:] {
			if carried(points(a, w, webMarks), points(b, w, webMarks)) {
				return true
			}
		}
	}
	return false
}
