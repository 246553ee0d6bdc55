package plan

import (
	"math"
	"strings"
	"testing"

	"fyne.io/fyne/v2/test"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/imaging/planfile"
)

func TestZigzagsFollowTheirNumberReachAndJoin(t *testing.T) {
	r := shown(t)
	r.column.open(zigzagTab)
	pane := r.column.panes[zigzagTab].(*zigzagPane)
	n, _ := r.number()
	test.Tap(pane.more)
	if got, _ := r.number(); got.flaps != n.flaps+1 || math.Abs(float64(got.reach-n.reach)) > 1e-6 {
		t.Errorf("one more than %d flaps with reach %v is %d with %v", n.flaps, n.reach, got.flaps, got.reach)
	}
	before := value(pane.card, "Narrowest tip")
	pane.reach.OnChanged(12)
	pane.reach.OnChanged(14)
	pane.reach.OnChangeEnded(14)
	if got, _ := r.number(); math.Abs(float64(got.reach-14)) > 1e-6 || r.UndoName() != "change the reach" || len(r.history.done) != 2 {
		t.Errorf("the reach is %v after %d steps", got.reach, len(r.history.done))
	}
	if value(pane.card, "Narrowest tip") == before {
		t.Error("the tips do not follow the reach")
	}
	before = value(pane.card, "Length of the join")
	pull(t, r, "join 1", plane.Vec[plane.Pixel](0, 40))
	if value(pane.card, "Length of the join") == before || !strings.Contains(pane.tips.Text, "Limbs to the creases: ") {
		t.Errorf("the join is %q; %q", before, pane.tips.Text)
	}
}

func TestTheOtherFaceFollowsWhereBothAreWorkedOn(t *testing.T) {
	r := shown(t)
	r.column.open(zigzagTab)
	pane := r.column.panes[zigzagTab].(*zigzagPane)
	palm := func() plane.PixelPoint { return r.kept().Alternatives[0].Zigzag.Palmar[2] }
	before := palm()
	pull(t, r, "zigzag 2", plane.Vec[plane.Pixel](12, 3))
	if palm() == before || len(r.now().Notes) != 0 {
		t.Errorf("the palm does not meet the back: %q", r.now().Notes)
	}
	pane.faces.Choose(int(dorsalFace))
	before = palm()
	pull(t, r, "zigzag 2", plane.Vec[plane.Pixel](0, -30))
	if palm() != before || len(r.now().Notes) == 0 || !strings.Contains(pane.notes.Text, "do not interdigitate") {
		t.Errorf("the palm moved, or the mismatch is not said: %q", pane.notes.Text)
	}
}

func TestOnThePalmThePointsOfThePalmAreDragged(t *testing.T) {
	r := shown(t)
	if r.near() != dorsalFace {
		t.Error("on the back the palm is dragged")
	}
	r.file.View = hand.Palmar
	if r.near() != palmarFace {
		t.Error("on the palm the back is dragged")
	}
	r.alter("only the back", func(_ *planfile.Web, a *planfile.Alternative) { a.Zigzag.Palmar = nil })
	if r.near() != dorsalFace {
		t.Error("where only the back is cut nothing can be dragged")
	}
	r.column.open(zigzagTab)
	r.count(1)
	if z := r.kept().Alternatives[0].Zigzag; len(z.Palmar) != 0 || len(z.Dorsal) == 0 {
		t.Error("a face that had no incision got one")
	}
}

func TestANarrowTipIsMarkedByShapeAndWords(t *testing.T) {
	r := shown(t)
	r.column.open(zigzagTab)
	pane := r.column.panes[zigzagTab].(*zigzagPane)
	if pane.narrow.Visible() {
		t.Errorf("at the beginning it warns %q", pane.narrow.Words())
	}
	for range 9 {
		test.Tap(pane.more)
	}
	r.choose("zigzag 2")
	g, _ := r.grip("zigzag 2")
	broad, _ := r.grip("zigzag 0")
	if !pane.narrow.Visible() || !strings.Contains(pane.narrow.Words(), "Both faces: all tips are narrower than 30°") || !strings.HasPrefix(g.name, "narrow: ") || !strings.Contains(g.name, "; limbs ") || g.Shape == broad.Shape {
		t.Errorf("of a tip %q it warns %q", g.name, pane.narrow.Words())
	}
	if !strings.Contains(pane.trade.Text, "Narrow flaps leave scars almost across") {
		t.Errorf("the trade reads %q", pane.trade.Text)
	}
}
