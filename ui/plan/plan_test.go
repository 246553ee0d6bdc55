package plan

import (
	"fmt"
	"math"
	"reflect"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"ogive/geometry/plan"
	"ogive/geometry/plane"
	"ogive/imaging/planning"
)

// pull drags a handle by so many pixels, in two moves, and drops it.
func pull(t *testing.T, r *Room, id string, by plane.Vector[plane.Pixel]) {
	t.Helper()
	g, ok := r.grip(id)
	if !ok {
		t.Fatalf("there is no handle %q among %v", id, ids(r))
	}
	r.plate.OnDragHandle(id, g.At.Add(by.Scale(0.5)))
	r.plate.OnDragHandle(id, g.At.Add(by))
	r.plate.OnDropHandle(id)
}

func ids(r *Room) (out []string) {
	for _, g := range r.grips() {
		out = append(out, g.ID)
	}
	return out
}

func archID(h plan.Handle) string { return fmt.Sprintf("arch %d", h) }

// value is what the card says beside a name.
func value(c *card, name string) string {
	for i := range c.shown {
		if c.at(i).name.Text == name {
			return c.at(i).value.Text
		}
	}
	return ""
}

func TestEveryHandleOfTheArchChangesItsFigure(t *testing.T) {
	for _, h := range []struct {
		handle plan.Handle
		by     plane.Vector[plane.Pixel]
		figure string
		step   string
	}{
		{plan.Crown, plane.Vec[plane.Pixel](0, 12), "Dorsal web index", "move the crown"},
		{plan.SpanLeft, plane.Vec[plane.Pixel](-10, 0), "Span", "change the span"},
		{plan.SpanRight, plane.Vec[plane.Pixel](10, 0), "Span", "change the span"},
		{plan.Point, plane.Vec[plane.Pixel](0, -8), "Crown angle", "change the pointedness"},
		{plan.FlareLeft, plane.Vec[plane.Pixel](-6, 0), "Flare", "change the flare"},
		{plan.FlareRight, plane.Vec[plane.Pixel](6, 0), "Flare", "change the flare"},
	} {
		r := shown(t)
		card := r.column.panes[archTab].(*archPane).card
		before := value(card, h.figure)
		pull(t, r, archID(h.handle), h.by)
		if after := value(card, h.figure); after == before || !strings.Contains(after, "±") {
			t.Errorf("%v: %s was %q and is %q", h.handle, h.figure, before, after)
		}
		if r.UndoName() != h.step {
			t.Errorf("%v: the step is %q", h.handle, r.UndoName())
		}
	}
	r := shown(t)
	before := r.now().Arch.Arch.Axis
	pull(t, r, archID(plan.Axis), plane.Vec[plane.Pixel](25, 0))
	if after := r.now().Arch.Arch.Axis; before.AngleTo(after) < plane.Degrees(3) {
		t.Errorf("the axis was %v and is %v", before, after)
	}
}

// The live figures are those that the whole plan has once it is reckoned.
func TestLiveFiguresAreThoseOfTheWholePlan(t *testing.T) {
	r := shown(t)
	for tab, id := range []string{archID(plan.Crown), "flap 1", "zigzag 2"} {
		r.column.open(tab)
		pull(t, r, id, plane.Vec[plane.Pixel](5, 7))
		whole := planning.Of(r.file, r.model.Here, r.model.Other)
		if !reflect.DeepEqual(whole.Webs, r.plan.Webs) || !reflect.DeepEqual(whole.File, r.plan.File) {
			t.Errorf("after dragging %s the plan is not what it would be if it were reckoned anew", id)
		}
	}
}

func TestArrowsNudgeTheSelectedHandleAsOneStep(t *testing.T) {
	r := shown(t)
	for range 7 {
		r.keyboard.TypedKey(&fyne.KeyEvent{Name: fyne.KeyTab})
	}
	if r.selected != archID(plan.Crown) {
		t.Fatalf("Tab came to %q", r.selected)
	}
	before := r.kept().Alternatives[0].Arch.Crown
	r.keyboard.TypedKey(&fyne.KeyEvent{Name: fyne.KeyRight})
	r.keyboard.KeyDown(&fyne.KeyEvent{Name: desktop.KeyShiftLeft})
	r.keyboard.TypedKey(&fyne.KeyEvent{Name: fyne.KeyDown})
	r.keyboard.KeyUp(&fyne.KeyEvent{Name: desktop.KeyShiftLeft})
	if by := r.kept().Alternatives[0].Arch.Crown.Sub(before); math.Abs(float64(by.X-1)) > 1e-6 || math.Abs(float64(by.Y-10)) > 1e-6 {
		t.Errorf("the crown moved by %v", by)
	}
	if len(r.history.done) != 1 {
		t.Errorf("two nudges are %d steps", len(r.history.done))
	}
	r.keyboard.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
	r.keyboard.TypedKey(&fyne.KeyEvent{Name: fyne.KeyDown})
	if r.selected != "" || len(r.history.done) != 1 {
		t.Error("Escape does not let go")
	}
}
