package marking

import (
	"os"
	"testing"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
)

func TestDamagedMarksSetAsideStayWordForWordAndLetThePhotographOpen(t *testing.T) {
	w := blank(t)
	for i, text := range []string{"{damaged", "{damaged again"} {
		must(t, os.WriteFile(w.KeptIn(), []byte(text), 0o644))
		name, err := SetAside(w.Path)
		must(t, err)
		if data, err := os.ReadFile(name); err != nil || string(data) != text {
			t.Errorf("time %d: %s holds %q (%v), want %q", i, name, data, err, text)
		}
		if again := reopen(t, w); len(again.State().Points) != 0 {
			t.Errorf("time %d: marks came from nowhere: %v", i, again.State().Points)
		}
	}
}

func TestClearingAllPointsKeepsTheHandAndCanBeUndone(t *testing.T) {
	w := blank(t)
	must(t, w.SetHand(hand.Left, hand.Palmar))
	must(t, w.Place(Spot{Kind: ScalePoint, N: 0}, plane.Pt[plane.Pixel](3, 90)))
	must(t, w.Clear())
	if s := w.State(); len(s.Points) != 0 || s.Side != hand.Left || s.View != hand.Palmar {
		t.Errorf("clearing left %v", s)
	}
	must(t, w.Undo())
	if len(w.State().Points) != 1 {
		t.Errorf("undoing brought back %v", w.State().Points)
	}
}

func TestTheClickDeviationIsKeptWithTheMarks(t *testing.T) {
	w := blank(t)
	must(t, w.UseClickSD(3))
	if w.UndoName() != "" {
		t.Errorf("before any gesture the deviation became a step %q", w.UndoName())
	}
	must(t, w.SetHand(hand.Left, hand.Palmar))
	must(t, w.Place(Spot{Kind: ScalePoint, N: 0}, plane.Pt[plane.Pixel](3, 90)))
	must(t, w.UseClickSD(1.5))
	if w.UndoName() != "click deviation 1.5 px" {
		t.Errorf("the step is called %q", w.UndoName())
	}
	if got := reopen(t, w).State().ClickSD; got != 1.5 {
		t.Errorf("after reopening the deviation is %v", got)
	}
}
