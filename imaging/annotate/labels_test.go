package annotate

import (
	"image"
	"testing"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
)

func TestLabelsLieBesideMarksAndNotOnThem(t *testing.T) {
	for name, size := range map[string]image.Point{"landscape": {1600, 1200}, "portrait": {900, 1400}, "thumbnail": {300, 200}} {
		m := newHandmade(size.X, size.Y, fair, drape)
		sc := newScene(newSheet(size, typicalSpan(m.reading)), m.marks, m.ref, m.reading)
		if len(sc.labels) != 17 { // four joints on four digits, and the ruler
			t.Errorf("%s: %d labels, want 17", name, len(sc.labels))
		}
		for i, l := range sc.labels {
			for _, q := range sc.jointSpots() {
				if l.box.Distance(q) < sc.jointRadius() {
					t.Errorf("%s: label %q covers a joint", name, l.words)
				}
			}
			for _, other := range sc.labels[:i] {
				if l.box.Meets(other.box) {
					t.Errorf("%s: labels %q and %q overlap", name, l.words, other.words)
				}
			}
			if !l.box.Within(sc.fieldBox()) {
				t.Errorf("%s: label %q leaves the photograph", name, l.words)
			}
		}
	}
}

func TestALabelGivesWayToTheMarkNextToIt(t *testing.T) {
	m := newHandmade(1600, 1200, fair, drape)
	middle := m.marks.Joints[hand.Middle][hand.MCP]
	m.marks.Joints[hand.Ring][hand.MCP] = middle.Add(plane.Vec[plane.Pixel](70, 2))
	sc := newScene(newSheet(image.Pt(1600, 1200), 0), m.marks, m.ref, m.reading)
	ring := sc.at(m.marks.Joints[hand.Ring][hand.MCP])
	for _, l := range sc.labels {
		if l.box.Distance(ring) < sc.jointRadius() {
			t.Errorf("label %q covers the joint beside it", l.words)
		}
	}
}
