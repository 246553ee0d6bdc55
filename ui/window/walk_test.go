package window

import (
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/geometry/scale"
	"ogive/imaging/phantom"
	"ogive/imaging/wording"
	"ogive/ui/marking"
)

func TestAFreshPhotographIsAskedWhichHandItShowsAndTakesNoMarkBefore(t *testing.T) {
	s := newScene(t)
	s.opened()
	if !s.asking.panel.Visible() {
		t.Error("nobody asks which hand it is")
	}
	s.place(plane.Pt[plane.Pixel](10, 10))
	if n := len(s.work.State().Points); n != 0 {
		t.Errorf("%d points were placed on a hand that is not known", n)
	}
	s.asking.tiles[1].Tapped(nil)
	if st := s.work.State(); st.Side != hand.Right || st.View != hand.Dorsal || s.asking.panel.Visible() {
		t.Errorf("the second tile says %v %v; asked still: %v", st.Side, st.View, s.asking.panel.Visible())
	}
	if got := s.win.Title(); got != "hand.jpg – Right hand, back of the hand – Ogive" {
		t.Errorf("the title is %q", got)
	}
}

func TestASideIsNeverGuessedFromTheViewAlone(t *testing.T) {
	s := newScene(t)
	s.opened()
	s.asking.onLater()
	if s.asking.panel.Visible() || s.notices.shown[aboutHand] == nil {
		t.Error("put aside, the question is forgotten or still in the way")
	}
	s.bar.view.buttons[1].OnTapped()
	if st := s.work.State(); st.Side != 0 || !s.asking.panel.Visible() {
		t.Errorf("choosing a view made it the %v hand; asked again: %v", st.Side, s.asking.panel.Visible())
	}
}

func TestTwelveClicksLeadFromThePhotographToTrueFiguresWhereProposalsAreRight(t *testing.T) {
	s := newScene(t)
	_, truth := s.opened()
	clicks := 1
	s.asking.tiles[1].Tapped(nil)
	for _, end := range []plane.PixelPoint{truth.Ruler.From, truth.Ruler.To} {
		s.board.OnPlace(end)
		clicks++
	}
	if !s.length.panel.Visible() {
		t.Fatal("nobody asks how long the ruler is")
	}
	s.length.entry.SetText(plainNumber(float64(truth.Ruler.Length)))
	s.length.entry.OnSubmitted("")
	s.until("webs are proposed", s.proposed)
	for {
		spot, more := s.wanted()
		if !more {
			break
		}
		if spot.Kind != marking.JointPoint {
			t.Fatalf("%v is asked for though all three webs are proposed", spot)
		}
		s.board.OnPlace(truth.Joints[spot.Digit][spot.Joint])
		clicks++
	}
	s.press(fyne.KeyReturn)
	s.settled()
	if s.proposed() || clicks > 12 {
		t.Errorf("%d clicks; proposals left: %v", clicks, s.proposed())
	}
	if len(s.reading.Webs) != 3 {
		t.Fatalf("%d webs were read: %v", len(s.reading.Webs), s.reading.Problems)
	}
	for i, web := range s.reading.Webs {
		if web.Index == nil || !web.Index.Holds(truth.Webs[i].Index) {
			t.Errorf("%v: index %v, the truth is %.4f", web.Web, web.Index, truth.Webs[i].Index)
		}
		if len(web.Verdicts) == 0 {
			t.Errorf("%v has no verdict", web.Web)
		}
	}
}

func TestRefusedProposalsDoNotComeBack(t *testing.T) {
	s := newScene(t)
	_, truth := s.opened()
	s.tellHand(truth.Side, truth.View)
	s.board.OnPlace(truth.Ruler.From)
	s.board.OnPlace(truth.Ruler.To)
	s.tellLength(truth.Ruler.Length)
	s.until("webs are proposed", s.proposed)
	if !s.offer.panel.Visible() {
		t.Error("nothing is said of the proposals")
	}
	s.press(fyne.KeyEscape)
	s.settled()
	if s.proposed() || s.offer.panel.Visible() {
		t.Error("Esc did not refuse the proposals")
	}
	if spot, _ := s.wanted(); spot.Kind != marking.JointPoint {
		t.Errorf("after refusing, %v is asked for", spot)
	}
}

func TestIntoTheWebTheLongAxisAndTheJunctionGiveTheSlope(t *testing.T) {
	s := newScene(t)
	c := phantom.RandomWebView(5)
	c.Width, c.Height = 1000, 750
	picture, err := c.Render()
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "web.jpg")
	write(t, path, picture.JPEG)
	s.Open(path)
	s.until("the photograph is open", func() bool { return s.work != nil })
	s.tellHand(picture.Truth.Side, hand.WebView)
	marks, reference := picture.Truth.Marks(0, rand.New(rand.NewPCG(1, 1)))
	if r, ruler := reference.(scale.Ruler); ruler {
		s.tellLength(r.Length)
	} else {
		s.tellMethod(scale.ByCard, marking.BankCard)
	}
	s.guide.OnStep(marking.Junction)
	junction := marks.Junctions[0]
	for _, at := range junction.Axis {
		s.board.OnPlace(at)
	}
	for n := range 4 {
		s.board.OnPlace(junction.Line[n*(len(junction.Line)-1)/3])
	}
	for _, at := range reference.Points() {
		s.board.OnPlace(at)
	}
	s.settled()
	if len(s.reading.Webs) != 1 || s.reading.Webs[0].Slope == nil {
		t.Fatalf("no slope was read: %+v, %v", s.reading.Webs, s.reading.Problems)
	}
	if slope := *s.reading.Webs[0].Slope; !slope.Holds(picture.Truth.Junctions[0].Slope) {
		t.Errorf("the slope is %v, the truth %.1f°", wording.Degrees(slope), picture.Truth.Junctions[0].Slope.Degrees())
	}
	if s.proposed() {
		t.Error("borders were proposed in the web view")
	}
	s.keep(s.still(), "web-view")
}

func TestUndoAndRedoNameTheirGestureInTheMenu(t *testing.T) {
	s := newScene(t)
	_, truth := s.opened()
	s.tellHand(truth.Side, truth.View)
	s.board.OnPlace(truth.Ruler.From)
	undo := menuItem(t, s, "Edit", 0)
	if undo.Label != "Undo place first scale point  (Ctrl+Z)" || undo.Disabled {
		t.Fatalf("the menu offers %q (greyed out %v)", undo.Label, undo.Disabled)
	}
	undo.Action()
	if n := len(s.work.State().Points); n != 0 {
		t.Errorf("after undoing %d points are left", n)
	}
	redo := menuItem(t, s, "Edit", 1)
	if redo.Label != "Redo place first scale point  (Ctrl+Y)" {
		t.Fatalf("the menu offers %q", redo.Label)
	}
	redo.Action()
	if n := len(s.work.State().Points); n != 1 {
		t.Errorf("after redoing there are %d points", n)
	}
}

func TestChangingTheHandLaterIsPossibleAndNamed(t *testing.T) {
	s := newScene(t)
	s.opened()
	s.tellHand(hand.Right, hand.Dorsal)
	s.bar.side.buttons[0].OnTapped()
	if st := s.work.State(); st.Side != hand.Left || s.work.UndoName() != "hand and view" {
		t.Errorf("it is the %v hand now, undo says %q", st.Side, s.work.UndoName())
	}
}

func TestADraggedPointIsReadWhileItMovesAndIsOneStepOfTheHistory(t *testing.T) {
	s := newScene(t)
	_, truth := s.opened()
	s.finished(truth)
	spot := marking.Spot{Kind: marking.JointPoint, Digit: hand.Ring, Joint: hand.PIP}
	from, before := s.work.State().Points[spot], s.reading.Webs[1].Index.Value
	for i := range 20 {
		s.board.OnDrag(spot, from.Add(plane.Vec(0, plane.Pixel(-2*i))))
	}
	s.settled()
	if after := s.reading.Webs[1].Index.Value; after >= before {
		t.Errorf("with the PIP joint dragged distally the index went from %v to %v", before, after)
	}
	s.board.OnDrop(spot)
	if got := s.work.UndoName(); got != "move ring PIP" {
		t.Errorf("the drag is called %q", got)
	}
	s.undo()
	if at := s.work.State().Points[spot]; at != from {
		t.Errorf("undoing leaves the joint at %v, it was at %v", at, from)
	}
}

func TestAPulledBorderIsKeptAndNamed(t *testing.T) {
	s := newScene(t)
	_, truth := s.opened()
	s.finished(truth)
	edge := s.reading.Edges[hand.ThirdWeb]
	from := edge[len(edge)/4]
	to := from.Add(plane.Vec[plane.Pixel](6, 0))
	s.board.OnDragEdge(hand.ThirdWeb, from, from.Mid(to))
	s.settled()
	s.board.OnDragEdge(hand.ThirdWeb, from, to)
	s.board.OnDropEdge(hand.ThirdWeb)
	s.settled()
	if got := s.work.UndoName(); got != "pull third web border" {
		t.Errorf("the drag is called %q", got)
	}
	if nearest := near(s.reading.Edges[hand.ThirdWeb], to); nearest > 0.01 {
		t.Errorf("the border passes %.2f px from where it was pulled to", float64(nearest))
	}
}

func near(line []plane.PixelPoint, p plane.PixelPoint) plane.Pixel {
	best := plane.Pixel(1e9)
	for _, q := range line {
		best = min(best, q.Distance(p))
	}
	return best
}

func TestTheKeysMoveWalkTakeBackAndSkip(t *testing.T) {
	s := newScene(t)
	s.opened()
	s.tellHand(hand.Right, hand.Dorsal)
	first, second := marking.Spot{Kind: marking.ScalePoint, N: 0}, marking.Spot{Kind: marking.ScalePoint, N: 1}
	s.board.OnPlace(plane.Pt[plane.Pixel](100, 100))
	s.board.OnPlace(plane.Pt[plane.Pixel](300, 100))
	s.tellLength(20)

	s.press(fyne.KeyRight)
	s.press(fyne.KeyUp)
	s.keyboard.KeyDown(&fyne.KeyEvent{Name: "LeftShift"})
	s.press(fyne.KeyDown)
	s.keyboard.KeyUp(&fyne.KeyEvent{Name: "LeftShift"})
	if at := s.work.State().Points[second]; at != plane.Pt[plane.Pixel](301, 109) {
		t.Errorf("right, up and shift-down moved the point to %v", at)
	}
	s.press(fyne.KeyTab)
	if s.selected == nil || *s.selected != first {
		t.Errorf("Tab from the last point selects %v", s.selected)
	}
	s.keyboard.KeyDown(&fyne.KeyEvent{Name: "RightShift"})
	s.press(fyne.KeyTab)
	s.keyboard.KeyUp(&fyne.KeyEvent{Name: "RightShift"})
	if s.selected == nil || *s.selected != second {
		t.Errorf("Shift+Tab selects %v", s.selected)
	}
	if remove := menuItem(t, s, "Edit", 7); remove.Label != "Remove the selected point  (Delete)" || remove.Disabled {
		t.Errorf("with a point selected the menu offers %q, greyed out %v", remove.Label, remove.Disabled)
	}
	s.press(fyne.KeyEscape)
	if s.selected != nil {
		t.Errorf("after Esc %v is selected", *s.selected)
	}
	s.keyboard.TypedRune('s')
	if joint := (marking.Spot{Kind: marking.JointPoint, Digit: hand.IndexFinger, Joint: hand.MCP}); !s.work.State().Skipped[joint] {
		t.Error("S did not skip the joint that was asked for")
	}
	s.press(fyne.KeyBackspace)
	if _, there := s.work.State().Points[second]; there {
		t.Error("Backspace left the point placed last")
	}
	s.press(fyne.KeyBackspace)
	if n := len(s.work.State().Points); n != 0 {
		t.Errorf("after taking back both points %d are left", n)
	}
}

func TestAStepDoneFirstIsAskedForFirst(t *testing.T) {
	s := newScene(t)
	s.opened()
	s.tellHand(hand.Right, hand.Dorsal)
	s.guide.OnStep(marking.Webs)
	if spot, _ := s.wanted(); spot.Kind != marking.SeedPoint {
		t.Fatalf("with the webs chosen %v is asked for", spot)
	}
	for range 9 {
		spot, _ := s.wanted()
		s.board.OnPlace(plane.Pt(plane.Pixel(100+40*int(spot.Web)), plane.Pixel(100+20*spot.N)))
	}
	if spot, _ := s.wanted(); spot.Kind != marking.ScalePoint {
		t.Errorf("after the webs %v is asked for", spot)
	}
}

func TestACardOfAnotherSizeIsTypedInTwoFields(t *testing.T) {
	s := newScene(t)
	s.opened()
	s.tellHand(hand.Right, hand.Dorsal)
	s.bar.method.SetSelectedIndex(2)
	if s.win.Canvas().Focused() != s.bar.width {
		t.Fatal("nobody asks for the size of the card")
	}
	s.bar.width.SetText("74")
	s.win.Canvas().Focus(s.bar.height)
	if s.win.Canvas().Focused() != s.bar.height {
		t.Fatal("the second field cannot be reached")
	}
	s.bar.height.SetText("52,5")
	s.bar.height.OnSubmitted("")
	if st := s.work.State(); st.Method != scale.ByCard || st.Card != (marking.CardSize{Width: 74, Height: 52.5}) {
		t.Errorf("the scale is by %s of %v", st.Method, st.Card)
	}
	s.bar.method.SetSelectedIndex(1)
	if st := s.work.State(); st.Card != marking.BankCard {
		t.Errorf("the bank card is %v", st.Card)
	}
	if s.bar.otherCard.Visible() || s.bar.ruler.Visible() {
		t.Error("a bank card still asks for a size")
	}
}

func TestKeysGoToAFieldWhileANumberIsTyped(t *testing.T) {
	s := newScene(t)
	s.opened()
	s.tellHand(hand.Right, hand.Dorsal)
	s.win.Canvas().Focus(s.bar.length)
	s.bar.length.TypedRune('5')
	s.bar.length.TypedRune('0')
	s.board.OnPlace(plane.Pt[plane.Pixel](100, 100))
	if got := s.work.State().Length; got != 50 {
		t.Errorf("the length typed before a click on the photograph is %v", got)
	}
	if s.win.Canvas().Focused() != s.keyboard {
		t.Error("after the click the keys do not belong to the photograph")
	}
}

func TestClosingAsksNothingAndReopeningBringsTheMarksBack(t *testing.T) {
	s := newScene(t)
	path, truth := s.opened()
	s.finished(truth)
	count := len(s.work.State().Points)
	s.close()
	if s.win.Canvas().Overlays().Top() != nil {
		t.Error("closing asks something")
	}
	again := newScene(t)
	again.Open(path)
	again.until("the photograph is open again", func() bool { return again.work != nil })
	if got := len(again.work.State().Points); got != count || again.asking.panel.Visible() {
		t.Errorf("%d of %d points came back; asked for the hand again: %v", got, count, again.asking.panel.Visible())
	}
}

func TestMarksThatCannotBeWrittenStayInSightUntilTheyCan(t *testing.T) {
	s := newScene(t)
	s.opened()
	s.tellHand(hand.Right, hand.Dorsal)
	inTheWay(t, s.work.KeptIn())
	s.board.OnPlace(plane.Pt[plane.Pixel](100, 100))
	one := s.notices.shown[aboutSaving]
	if one == nil || !strings.Contains(one.text, "not on the disk") || !one.lasting {
		t.Fatalf("of marks that are not written is said: %q", s.notices.texts())
	}
	s.board.OnPlace(plane.Pt[plane.Pixel](300, 100))
	if s.notices.shown[aboutSaving] == nil || len(s.work.State().Points) != 2 {
		t.Error("the sentence went away, or a mark was lost")
	}
	other := filepath.Join(t.TempDir(), "other.jpg")
	write(t, other, aHand(t).JPEG)
	s.Open(other)
	if said := s.notices.shown[aboutOpening]; said == nil || !strings.Contains(said.text, "no other one is opened") {
		t.Errorf("of opening another photograph now is said: %q", s.notices.texts())
	}
	s.close()
	if s.win.Canvas().Overlays().Top() == nil {
		t.Error("the window closes over marks that are nowhere else")
	}
	s.win.Canvas().Overlays().Remove(s.win.Canvas().Overlays().Top())
	if err := os.RemoveAll(s.work.KeptIn()); err != nil {
		t.Fatal(err)
	}
	s.tellLength(20)
	if s.notices.shown[aboutSaving] != nil {
		t.Error("the sentence stays though the marks are written")
	}
	if data, err := os.ReadFile(s.work.KeptIn()); err != nil || !strings.Contains(string(data), "300") {
		t.Errorf("after the mend the disk holds %q (%v)", data, err)
	}
}

// inTheWay puts a folder where the marks file belongs, which stands for every
// reason for which writing fails.
func inTheWay(t *testing.T, path string) {
	t.Helper()
	if err := os.RemoveAll(path); err != nil {
		t.Fatal(err)
	}
	if err := os.MkdirAll(path+"/full", 0o755); err != nil {
		t.Fatal(err)
	}
}

func menuItem(t *testing.T, s *scene, menu string, n int) *fyne.MenuItem {
	t.Helper()
	for _, m := range s.win.MainMenu().Items {
		if m.Label == menu {
			return m.Items[n]
		}
	}
	t.Fatalf("there is no menu %q", menu)
	return nil
}
