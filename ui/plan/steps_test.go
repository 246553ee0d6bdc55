package plan

import (
	"errors"
	"reflect"
	"strings"
	"sync"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"

	"ogive/geometry/arch"
	"ogive/geometry/hand"
	"ogive/geometry/plan"
	"ogive/geometry/plane"
	"ogive/imaging/planfile"
	"ogive/imaging/planning"
)

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
