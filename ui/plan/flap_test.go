package plan

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"ogive/geometry/flap"
	"ogive/geometry/hand"
	"ogive/geometry/plane"
)

func TestAPointOfTheFlapIsMovedAddedAndRemoved(t *testing.T) {
	r := shown(t)
	r.column.open(flapTab)
	card := r.column.panes[flapTab].(*flapPane).card
	n, area := len(r.kept().Alternatives[0].Flap.Outline), value(card, "Area")
	pull(t, r, "flap 2", plane.Vec[plane.Pixel](14, -6))
	if value(card, "Area") == area {
		t.Error("the area does not follow a dragged point")
	}
	plus := ""
	for _, id := range ids(r) {
		if strings.HasPrefix(id, "flap +") {
			plus = id
		}
	}
	g, _ := r.grip(plus)
	r.plate.Tapped(&fyne.PointEvent{Position: r.plate.PositionOf(g.At)})
	if got := len(r.kept().Alternatives[0].Flap.Outline); got != n+1 || r.UndoName() != "add a point to the flap" || r.selected != g.adds.as {
		t.Fatalf("after a click on a plus there are %d points of %d; step %q, selected %q", got, n, r.UndoName(), r.selected)
	}
	r.keyboard.TypedKey(&fyne.KeyEvent{Name: fyne.KeyDelete})
	if got := len(r.kept().Alternatives[0].Flap.Outline); got != n || r.UndoName() != "remove a point of the flap" {
		t.Errorf("after Delete there are %d points of %d; step %q", got, n, r.UndoName())
	}
	pull(t, r, plus, plane.Vec[plane.Pixel](5, 5))
	if got := len(r.kept().Alternatives[0].Flap.Outline); got != n+1 {
		t.Errorf("dragging a plus left %d points of %d", got, n)
	}
	r.choose("flap 0")
	r.removeSelected()
	if got := len(r.kept().Alternatives[0].Flap.Outline); got != n+1 {
		t.Error("an end of the base was removed")
	}
	for range n + 3 {
		r.choose("flap 1")
		r.removeSelected()
	}
	if got := len(r.kept().Alternatives[0].Flap.Outline); got != leastOutline {
		t.Errorf("an outline of %d points is left", got)
	}
}

func TestAFlapIsDrawnByThirdsOrFromTheArch(t *testing.T) {
	r := shown(t)
	r.column.open(flapTab)
	pane := r.column.panes[flapTab].(*flapPane)
	test.Tap(pane.arch)
	if k := r.kept().Alternatives[0].Flap.Kind; k != flap.PalmarFlap || pane.title.Text != "Palmar flap" {
		t.Errorf("drawn from the arch it is a %v flap, titled %q", k, pane.title.Text)
	}
	pane.hourglass.SetChecked(true)
	test.Tap(pane.thirds)
	if f := r.kept().Alternatives[0].Flap; f.Kind != flap.DorsalFlap || len(f.Outline) != 6 {
		t.Errorf("by thirds, as an hourglass, it is a %v flap of %d points", f.Kind, len(f.Outline))
	}
	if !strings.Contains(pane.notes.Text, "Length to base width") {
		t.Errorf("the notes say %q", pane.notes.Text)
	}
	test.Tap(pane.none)
	if r.kept().Alternatives[0].Flap != nil || pane.title.Text != "No flap is drawn" || pane.card.Visible() {
		t.Error("the flap stays")
	}
}

func TestWithoutAPIPJointTheThirdsRuleIsWithdrawnAndTheReasonSaid(t *testing.T) {
	r := shown(t)
	m := model(t)
	m.Here.Ground.Absent = map[hand.Digit]map[hand.Joint]bool{hand.Ring: {hand.PIP: true}}
	joints := map[hand.Digit]map[hand.Joint]plane.PixelPoint{}
	for d, js := range m.Here.Ground.Marks.Joints {
		joints[d] = map[hand.Joint]plane.PixelPoint{}
		for j, at := range js {
			if d != hand.Ring || j != hand.PIP {
				joints[d][j] = at
			}
		}
	}
	m.Here.Ground.Marks.Joints = joints
	r.Show(m)
	r.column.open(flapTab)
	pane := r.column.panes[flapTab].(*flapPane)
	if !pane.withdrawn.Visible() || !strings.Contains(pane.withdrawn.Words(), "the PIP joint of the ring") || !pane.thirds.Disabled() || pane.arch.Disabled() {
		t.Errorf("it says %q", pane.withdrawn.Words())
	}
}
