package beside

import (
	"image"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"

	"ogive/geometry/hand"
	"ogive/geometry/norms"
	"ogive/imaging/measure"
	"ogive/imaging/wording"
)

// said is every visible text of a card.
func said(c *card) string {
	lines := []string{c.title.Text, c.sub.Text, c.shapes.Text}
	for _, r := range c.rows {
		lines = append(lines, r.name.Text+" "+r.difference.Text)
		if r.sign.Visible() {
			verdict, limit := r.sign.Words()
			lines = append(lines, verdict+"; "+limit)
		}
	}
	return strings.Join(lines, "\n")
}

func shown(t *testing.T) *Room {
	t.Helper()
	r, _ := room(t, theme.VariantLight, small700())
	h := hands(t)
	r.Show(h[0], h[1])
	return r
}

func TestEveryWebTellsItsDifferencesAndWhatTheyComeTo(t *testing.T) {
	r := shown(t)
	if !r.ready || !r.body.Visible() || r.plain.object.Visible() {
		t.Fatal("the room is not shown")
	}
	third := said(r.sheet.cards[hand.ThirdWeb])
	for _, want := range []string{"Third web\nmiddle to ring\nboth gothic", "Dorsal web index −0.1", "too deep, certain; limit 0.5", "(other hand), tolerance included", "Depth +", "Span ", "Crown angle "} {
		if !strings.Contains(third, want) {
			t.Errorf("the third web lacks %q:\n%s", want, third)
		}
	}
	if text := said(r.sheet.cards[hand.FourthWeb]); strings.Count(text, norms.NoDifference) != 3 {
		t.Errorf("the fourth web, which is alike on both hands, says\n%s", text)
	}
	if r.sheet.cards[hand.FirstWeb].Visible() {
		t.Error("a web that was not read has a card")
	}
	for _, want := range []string{"Second web: span: too narrow", "Third web: index: too deep, depth: too deep", "Fourth web: no difference that can be told"} {
		if !strings.Contains(r.sheet.summary.Text, want) {
			t.Errorf("the summary lacks %q:\n%s", want, r.sheet.summary.Text)
		}
	}
	if !strings.Contains(r.sheet.residual.Text, "mm") || !strings.Contains(r.sheet.means.Text, "Distrust") {
		t.Errorf("residual %q, %q", r.sheet.residual.Text, r.sheet.means.Text)
	}
	if r.sheet.notice.Visible() {
		t.Errorf("of hands of one size it reminds: %q", r.sheet.notice.Words())
	}
}

func TestTheGhostLiesOnTheOperatedHandOnly(t *testing.T) {
	r := shown(t)
	if lines := ghosts(r.pair); len(lines) != 3 {
		t.Errorf("%d ghosts of 3 webs", len(lines))
	}
	if len(sceneOf(r.pair.Other).Lines) != 0 {
		t.Error("a ghost lies on the other hand")
	}
}

func TestSwappingTakesTheOtherHandAsOperated(t *testing.T) {
	r := shown(t)
	before := *r.pair.Comparison.Webs[1].Index
	test.Tap(r.head.swap)
	after := *r.pair.Comparison.Webs[1].Index
	if before.Value != -after.Value || r.head.title.Text != "Operated left hand beside the right hand" {
		t.Errorf("the difference was %v and is %v; title %q", before.Value, after.Value, r.head.title.Text)
	}
	if text := said(r.sheet.cards[hand.ThirdWeb]); !strings.Contains(text, "too shallow, certain") {
		t.Errorf("the third web says\n%s", text)
	}
}

func TestTwoSittingsAreLaterMinusEarlierByIndex(t *testing.T) {
	r, _ := room(t, theme.VariantLight, small700())
	h := hands(t)
	r.Show(h[0], h[2])
	if r.head.title.Text != "Two sittings of the right hand" || !strings.Contains(r.head.said.Text, "later minus earlier") {
		t.Errorf("title %q, %q", r.head.title.Text, r.head.said.Text)
	}
	if !r.sheet.notice.Visible() || !strings.Contains(r.sheet.notice.Words(), "compare its index, not its millimetres") {
		t.Errorf("of a hand that grew it says %q", r.sheet.notice.Words())
	}
	for _, c := range r.sheet.cards {
		if c.Visible() && (c.rows[1].sign.Visible() || c.rows[2].sign.Visible()) {
			t.Errorf("millimetres of a hand that grew are judged:\n%s", said(c))
		}
	}
}

func TestALongerDigitIsRemindedOfAboveTheCards(t *testing.T) {
	r, _ := room(t, theme.VariantLight, small700())
	h := hands(t)
	long := h[0]
	long.Marks.Marks.Joints = lengthened(h[0], hand.Ring)
	r.Show(long, h[1])
	if text := r.sheet.notice.Words(); !r.sheet.notice.Visible() || !strings.Contains(text, "The ring digit of the operated hand is longer") || !strings.Contains(text, "look again before any separation") {
		t.Errorf("it reminds %q", text)
	}
	if card := r.sheet.cards[hand.SecondWeb]; r.sheet.notice.Position().Y >= card.Position().Y {
		t.Error("the reminder stands below the cards")
	}
}

func TestAnUnmarkedPhotographLeadsToItsMarking(t *testing.T) {
	r, _ := room(t, theme.VariantLight, small700())
	h := hands(t)
	bare := h[1]
	bare.Marks.Marks.Webs, bare.Key = nil, "seven"
	var opened []string
	r.OnOpen = func(s Side) { opened = append(opened, s.Key) }
	r.Show(h[0], bare)
	if r.body.Visible() || !r.plain.object.Visible() || !strings.HasPrefix(r.plain.why.Text, "Left hand, 3 March 2026 is not marked yet.") || !strings.Contains(r.plain.what.Text, "mark the scale") {
		t.Fatalf("it says %q, %q", r.plain.why.Text, r.plain.what.Text)
	}
	if r.plain.open[0].Visible() || !r.plain.open[1].Visible() {
		t.Error("the photograph that lacks marks is not the one offered")
	}
	test.Tap(r.plain.open[1])
	if len(opened) != 1 || opened[0] != "seven" {
		t.Errorf("opened %q", opened)
	}
	r.copyTable()
	if fyne.CurrentApp().Clipboard().Content() != "" {
		t.Error("a table was copied of nothing")
	}
}

func TestDifferentViewsAndNoCommonWebAreExplained(t *testing.T) {
	r, _ := room(t, theme.VariantLight, small700())
	h := hands(t)
	palm := h[1]
	palm.Marks.Marks.View = hand.Palmar
	r.Show(h[0], palm)
	if !strings.Contains(r.plain.why.Text, "different views") || !strings.Contains(r.plain.what.Text, "same view") {
		t.Errorf("it says %q, %q", r.plain.why.Text, r.plain.what.Text)
	}
	one, other := h[0], h[1]
	one.Marks.Marks.Webs, other.Marks.Marks.Webs = one.Marks.Marks.Webs[:1], other.Marks.Marks.Webs[1:]
	r.Show(one, other)
	if !strings.Contains(r.plain.why.Text, "No web is marked on both") || !strings.Contains(r.plain.what.Text, "mark the same web") {
		t.Errorf("it says %q, %q", r.plain.why.Text, r.plain.what.Text)
	}
	r.Show(h[0], h[1])
	if r.plain.object.Visible() || !r.body.Visible() {
		t.Error("the page stays after a pair that can be compared")
	}
}

func TestTheTableIsCopied(t *testing.T) {
	r := shown(t)
	test.Tap(r.head.copy)
	content := fyne.CurrentApp().Clipboard().Content()
	if !strings.Contains(content, "Third web\tdorsal web index\t") || !strings.Contains(content, wording.Caution) || !strings.Contains(content, "right hand, 3 March 2026") {
		t.Errorf("copied:\n%s", content)
	}
}

func TestThePictureIsSavedWholeAndFailuresAreSaid(t *testing.T) {
	r := shown(t)
	path := filepath.Join(t.TempDir(), "beside.png")
	r.save(path)
	f, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	config, kind, err := image.DecodeConfig(f)
	if err != nil || kind != "png" || config.Height <= 840 {
		t.Errorf("saved a %s of %d px height: %v", kind, config.Height, err)
	}
	if !strings.Contains(r.head.said.Text, "saved as") {
		t.Errorf("it says %q", r.head.said.Text)
	}
	r.save(filepath.Join(t.TempDir(), "none", "beside.png"))
	if !strings.Contains(r.head.said.Text, "not saved") {
		t.Errorf("it says %q", r.head.said.Text)
	}
}

func TestWhatIsMeasuredAlreadyIsTakenAsItIs(t *testing.T) {
	r := shown(t)
	a, b := r.sides[0], r.sides[1]
	a.Result, b.Result = &r.pair.Operated, &r.pair.Other
	a.Photograph, b.Photograph = nil, nil // so nothing can be measured anew
	r.Show(a, b)
	if !r.ready || len(r.pair.Comparison.Webs) != 3 {
		t.Errorf("ready %v, %d webs", r.ready, len(r.pair.Comparison.Webs))
	}
	empty := measure.Result{}
	a.Result = &empty
	r.Show(a, b)
	if r.ready || !strings.Contains(r.plain.why.Text, "not marked yet") {
		t.Errorf("of a result without webs it says %q", r.plain.why.Text)
	}
}

func TestALateComparisonIsForgotten(t *testing.T) {
	r, _ := room(t, theme.VariantLight, small700())
	h := hands(t)
	var late []func()
	r.apart = func(work func()) { late = append(late, work) }
	r.Show(h[0], h[2])
	r.Show(h[0], h[1])
	late[1]()
	late[0]()
	if r.pair.Comparison.TwoSittings() {
		t.Error("the photographs shown last are not those compared")
	}
}

func TestACardBringsItsWebIntoSight(t *testing.T) {
	r := shown(t)
	test.Tap(r.sheet.cards[hand.ThirdWeb])
	for web, c := range r.sheet.cards {
		if c.chosen != (web == hand.ThirdWeb) {
			t.Errorf("the %v is marked as chosen: %v", web, c.chosen)
		}
	}
}

func TestCardsNeverOverlap(t *testing.T) {
	r, w := room(t, theme.VariantLight, small700())
	h := hands(t)
	r.Show(h[0], h[1])
	for _, size := range []fyne.Size{small700(), fyne.NewSize(1600, 1000), fyne.NewSize(760, 620)} {
		w.Resize(size)
		y := float32(0)
		for _, web := range hand.Webs[1:] {
			c := r.sheet.cards[web]
			if c.Position().Y < y {
				t.Errorf("at %v the %v begins at %.0f, where the one before ends at %.0f", size, web, c.Position().Y, y)
			}
			y = c.Position().Y + c.Size().Height
		}
		if r.sheet.residual.Position().Y < y {
			t.Errorf("at %v the residual lies on the last card", size)
		}
	}
}
