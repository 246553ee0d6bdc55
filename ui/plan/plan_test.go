package plan

import (
	"errors"
	"fmt"
	"math"
	"reflect"
	"strings"
	"sync"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"

	"ogive/geometry/arch"
	"ogive/geometry/flap"
	"ogive/geometry/hand"
	"ogive/geometry/plan"
	"ogive/geometry/plane"
	"ogive/imaging/planfile"
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

func TestFiguresFollowWhileAHandleIsDraggedAndAreKeptOnlyWhenItIsDropped(t *testing.T) {
	r := shown(t)
	var kept, told int
	r.OnSave = func(planfile.File) error { kept++; return nil }
	r.OnChanged = func(planning.Plan) { told++ }
	card := r.column.panes[archTab].(*archPane).card
	before := value(card, "Span")
	g, _ := r.grip(archID(plan.SpanRight))
	r.plate.OnDragHandle(g.ID, g.At.Add(plane.Vec[plane.Pixel](9, 0)))
	if value(card, "Span") == before {
		t.Error("the figures wait for the drop")
	}
	r.Finish()
	if kept+told != 0 || r.UndoName() != "" {
		t.Errorf("while dragged the plan was kept %d times and told %d times; step %q", kept, told, r.UndoName())
	}
	r.plate.OnDropHandle(g.ID)
	r.Finish()
	if kept != 1 || told != 1 {
		t.Errorf("when dropped the plan was kept %d times and told %d times", kept, told)
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

func TestStepsAreUndoneAndDoneAgainWithTheirNames(t *testing.T) {
	r := shown(t)
	first := r.File()
	pull(t, r, archID(plan.Crown), plane.Vec[plane.Pixel](0, 9))
	moved := r.File()
	r.column.open(flapTab)
	pull(t, r, "flap 1", plane.Vec[plane.Pixel](4, 0))
	last := r.File()
	k := r.keyboard
	k.TypedShortcut(&fyne.ShortcutUndo{})
	if !reflect.DeepEqual(r.File(), moved) || r.RedoName() != "move a point of the flap" || r.UndoName() != "move the crown" {
		t.Errorf("after one undo: undo %q, redo %q", r.UndoName(), r.RedoName())
	}
	k.TypedShortcut(&fyne.ShortcutUndo{})
	k.TypedShortcut(&fyne.ShortcutUndo{})
	if !reflect.DeepEqual(r.File(), first) || r.UndoName() != "" {
		t.Error("undone, the plan is not what it was")
	}
	k.TypedShortcut(&fyne.ShortcutRedo{})
	k.TypedShortcut(&desktop.CustomShortcut{KeyName: fyne.KeyZ, Modifier: fyne.KeyModifierShortcutDefault | fyne.KeyModifierShift})
	if !reflect.DeepEqual(r.File(), last) || r.RedoName() != "" {
		t.Error("done again, the plan is not what it became")
	}
	if got := planning.Of(r.file, r.model.Here, r.model.Other); !reflect.DeepEqual(got.Webs, r.plan.Webs) {
		t.Error("after redo the figures are not those of the plan")
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
	if !pane.withdrawn.Visible() || !strings.Contains(pane.withdrawn.label.Text, "the PIP joint of the ring") || !pane.thirds.Disabled() || pane.arch.Disabled() {
		t.Errorf("it says %q", pane.withdrawn.label.Text)
	}
}

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
		t.Errorf("at the beginning it warns %q", pane.narrow.label.Text)
	}
	for range 9 {
		test.Tap(pane.more)
	}
	r.choose("zigzag 2")
	g, _ := r.grip("zigzag 2")
	broad, _ := r.grip("zigzag 0")
	if !pane.narrow.Visible() || !strings.Contains(pane.narrow.label.Text, "Both faces: all tips are narrower than 30°") || !strings.HasPrefix(g.name, "narrow: ") || !strings.Contains(g.name, "; limbs ") || g.Shape == broad.Shape {
		t.Errorf("of a tip %q it warns %q", g.name, pane.narrow.label.Text)
	}
	if !strings.Contains(pane.trade.Text, "Narrow flaps leave scars almost across") {
		t.Errorf("the trade reads %q", pane.trade.Text)
	}
}

func TestAlternativesAreCopiedNamedChosenAndRemoved(t *testing.T) {
	r := shown(t)
	r.copyAlternative()
	if w := r.kept(); len(w.Alternatives) != 2 || w.Alternatives[1].Name != "proposed 2" || r.alternative != 1 || w.Chosen != "proposed" {
		t.Fatalf("after a copy: %d, in hand %d, chosen %q", len(w.Alternatives), r.alternative, w.Chosen)
	}
	pull(t, r, archID(plan.Crown), plane.Vec[plane.Pixel](0, 10))
	if w := r.kept(); w.Alternatives[0].Arch.Crown == w.Alternatives[1].Arch.Crown {
		t.Error("the copy shares its arch with what it was copied from")
	}
	if r.refuseName("proposed") == nil || r.refuseName("") == nil {
		t.Error("a name is given twice, or none")
	}
	r.rename("deeper")
	row := r.column.alternatives.rows[1]
	row.Tapped(&fyne.PointEvent{Position: fyne.NewPos(20, 10)})
	if w := r.kept(); w.Chosen != "deeper" || r.plan.Webs[0].Chosen != 1 || row.said.Text != "goes on the sheet" {
		t.Errorf("chosen is %q, row says %q", w.Chosen, row.said.Text)
	}
	if whole := planning.Of(r.file, r.model.Here, r.model.Other); !reflect.DeepEqual(whole.Webs, r.plan.Webs) {
		t.Error("with two alternatives the plan is not what it would be if it were reckoned anew")
	}
	r.removeAlternative()
	if w := r.kept(); len(w.Alternatives) != 1 || w.Chosen != "" || r.alternative != 0 || r.plan.Webs[0].Chosen != 0 {
		t.Errorf("after the removal: %d, chosen %q, in hand %d", len(w.Alternatives), w.Chosen, r.alternative)
	}
	r.removeAlternative()
	if !r.column.empty.begin.Visible() || !strings.HasPrefix(r.column.empty.title.Text, "No arch is planned for the third web yet") || len(r.grips()) != 0 {
		t.Errorf("with nothing left it says %q", r.column.empty.title.Text)
	}
	r.Undo()
	r.Undo()
	if w := r.kept(); len(w.Alternatives) != 2 || w.Chosen != "deeper" || r.alternative != 1 {
		t.Errorf("undone: %d, chosen %q, in hand %d", len(w.Alternatives), w.Chosen, r.alternative)
	}
}

func TestAPlanCanBeginWithNoWebAtAll(t *testing.T) {
	r := shown(t)
	m := model(t)
	m.File.Webs, m.Notes = nil, []string{"nothing is joined."}
	r.Show(m)
	e := r.column.empty
	if !e.choose.Visible() || !strings.Contains(e.text.Text, "Nothing is joined.") {
		t.Fatalf("it says %q, %q", e.title.Text, e.text.Text)
	}
	test.Tap(e.webs[hand.ThirdWeb-hand.FirstWeb])
	if r.web != hand.ThirdWeb || r.now() == nil || r.now().Arch == nil || e.choose.Visible() {
		t.Fatal("the third web is not planned")
	}
	test.Tap(e.webs[0])
	if r.web != hand.FirstWeb || r.now() != nil || e.text.Text == "" {
		t.Errorf("of the first web, whose joints are not marked, it says %q", e.text.Text)
	}
	test.Tap(e.byHand)
	if a := r.now(); a == nil || a.Arch == nil || a.Arch.Figures.Span == nil || a.Arch.Arch.Shape != arch.Gothic {
		t.Fatal("no arch is drawn by hand")
	}
	r.removeAlternative()
	test.Tap(e.drop)
	if len(r.file.Webs) != 1 || r.web != hand.ThirdWeb {
		t.Errorf("%d webs are planned, in hand %v", len(r.file.Webs), r.web)
	}
}

func TestAProposalSaysWhereItComesFromAndHowSureItIs(t *testing.T) {
	r := shown(t)
	pane := r.column.panes[archTab].(*archPane)
	if pane.proposed.Text != "Proposed from the other hand, mirrored" || !strings.Contains(pane.reasons.Text, "the crown's place to within") || !strings.Contains(pane.reasons.Text, "±") {
		t.Errorf("it says %q: %q", pane.proposed.Text, pane.reasons.Text)
	}
	r.proposeAnew()
	if w := r.kept(); len(w.Alternatives) != 2 || w.Chosen != "proposed" {
		t.Errorf("%d alternatives, chosen %q", len(w.Alternatives), w.Chosen)
	}
	m := model(t)
	m.Other = nil
	r.Show(m)
	if pane.proposed.Text != "Proposed from the free webs of this hand" {
		t.Errorf("without the other hand it says %q", pane.proposed.Text)
	}
}

// While one state is being kept, of those that wait only the latest is kept, and
// none overtakes another.
func TestStatesAreKeptInOrderAndTheLastOneAlways(t *testing.T) {
	r := shown(t)
	var lock sync.Mutex
	var spans []plane.Millimetre
	begun, goOn := make(chan bool), make(chan bool)
	first := true
	r.OnSave = func(f planfile.File) error {
		if first {
			first = false
			begun <- true
			<-goOn
		}
		lock.Lock()
		defer lock.Unlock()
		spans = append(spans, f.Webs[0].Alternatives[0].Arch.Form.Span)
		return nil
	}
	pull(t, r, archID(plan.SpanRight), plane.Vec[plane.Pixel](4, 0))
	<-begun
	for range 3 {
		pull(t, r, archID(plan.SpanRight), plane.Vec[plane.Pixel](4, 0))
	}
	close(goOn)
	r.Finish()
	if len(spans) != 2 || spans[0] >= spans[1] || spans[1] != r.file.Webs[0].Alternatives[0].Arch.Form.Span {
		t.Errorf("kept the spans %v; the plan has %v", spans, r.file.Webs[0].Alternatives[0].Arch.Form.Span)
	}
}

func TestWhatCouldNotBeKeptIsSaid(t *testing.T) {
	r := shown(t)
	r.OnSave = func(planfile.File) error { return errors.New("the disk is full") }
	pull(t, r, archID(plan.Crown), plane.Vec[plane.Pixel](0, 4))
	r.Finish()
	if r.head.said.Text != "Not kept: the disk is full." {
		t.Errorf("it says %q", r.head.said.Text)
	}
}

func TestEveryStateOfThePlanCanBeWrittenAndReadBack(t *testing.T) {
	r := shown(t)
	r.copyAlternative()
	r.reshape(arch.V)
	r.column.open(zigzagTab)
	r.count(4)
	r.take(hand.ThirdWeb)
	data, err := r.File().Encode()
	if err != nil {
		t.Fatal(err)
	}
	if back, err := planfile.Parse(data); err != nil || len(back.Webs[0].Alternatives) != 2 || back.Webs[0].Alternatives[1].Arch.Form.Shape != arch.V {
		t.Errorf("%v: %+v", err, back.Webs)
	}
}

func TestAPanelIsShownDrawsAndChangesThePlanAsOneStep(t *testing.T) {
	r := shown(t)
	opened, placed := 0, 0
	p := Panel{Title: "Skin", Object: &fyne.Container{}, OnShow: func() { opened++ }, OnPlace: func(plane.PixelPoint) { placed++ }}
	r.Add(p)
	r.column.open(ownTabs)
	if opened != 1 || r.column.scroll.Visible() || !p.Object.Visible() {
		t.Errorf("opened %d times", opened)
	}
	r.plate.OnPlace(plane.Pt[plane.Pixel](10, 10))
	if placed != 1 {
		t.Error("a click does not come to the panel")
	}
	r.Change("tape the girths", func(f *planfile.File) {
		f.Webs[0].Girths = &planfile.Girths{Radial: planfile.Girth{Taped: 58}, Ulnar: planfile.Girth{Taped: 55}}
	})
	if r.UndoName() != "tape the girths" || r.Plan().Webs[0].Skin == nil {
		t.Errorf("step %q", r.UndoName())
	}
	r.Undo()
	if r.Plan().Webs[0].Skin != nil || r.column.tab != ownTabs {
		t.Error("undone, the girths stay, or the panel is gone")
	}
}

// What waits while a plan is begun for another web, and when a handle is dropped.
func BenchmarkBeginAndDrop(b *testing.B) {
	b.Run("begin", func(b *testing.B) {
		m := model(b)
		for b.Loop() {
			if _, err := planning.Begin(m.Here, m.Other, hand.ThirdWeb); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("drop", func(b *testing.B) {
		r := shown(b)
		for range 3 {
			r.copyAlternative()
		}
		for i := 0; b.Loop(); i++ {
			g, _ := r.grip(archID(plan.Crown))
			r.plate.OnDragHandle(g.ID, g.At.Add(plane.Vec(plane.Pixel(i%5-2), 1)))
			r.plate.OnDropHandle(g.ID)
		}
	})
	b.Run("drag and paint the board", func(b *testing.B) {
		r := shown(b)
		g, _ := r.grip(archID(plan.Crown))
		picture := r.plate.CreateRenderer().Objects()[0].(*canvas.Raster)
		w, h := int(r.plate.Size().Width), int(r.plate.Size().Height)
		for i := 0; b.Loop(); i++ {
			r.plate.OnDragHandle(g.ID, g.At.Add(plane.Vec(plane.Pixel(i%5-2), 1)))
			picture.Generator(w, h)
		}
	})
}

// From the event of a drag to new figures in the card, without painting the board.
func BenchmarkDragToFigures(b *testing.B) {
	for tab, id := range map[int]string{archTab: archID(plan.SpanRight), flapTab: "flap 1", zigzagTab: "zigzag 2"} {
		b.Run([]string{"arch", "flap", "zigzag"}[tab], func(b *testing.B) {
			r := shown(b)
			r.column.open(tab)
			g, ok := r.grip(id)
			if !ok {
				b.Fatal("no such handle")
			}
			for i := 0; b.Loop(); i++ {
				r.plate.OnDragHandle(id, g.At.Add(plane.Vec(plane.Pixel(i%9), 1)))
			}
			b.ReportMetric(float64(b.Elapsed().Microseconds())/float64(b.N)/1000, "ms/drag")
		})
	}
}
