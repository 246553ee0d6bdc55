package choice

import (
	"fyne.io/fyne/v2"
	"testing"

	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"

	"ogive/ui/look"
)

func newApp(t *testing.T) { test.NewTempApp(t).Settings().SetTheme(look.Theme(theme.VariantLight)) }

func TestTheAnswerThatHoldsIsTickedAndNothingMoves(t *testing.T) {
	newApp(t)
	c := New("Left", "Right", "Both")
	var told []int
	c.OnChosen = func(i int) { told = append(told, i) }
	c.Resize(c.MinSize())
	before, at := c.MinSize(), c.answers[2].Position()
	test.Tap(c.answers[1])
	test.Tap(c.answers[1])
	c.Resize(c.MinSize())
	if c.answers[1].text() != "✓ Right" || c.answers[0].text() != "Left" || len(told) != 1 || told[0] != 1 {
		t.Errorf("it reads %q and %q, told %v", c.answers[0].text(), c.answers[1].text(), told)
	}
	if after := c.MinSize(); after.Width-before.Width > 1 || before.Width-after.Width > 1 || c.answers[2].Position().X-at.X > 1 {
		t.Errorf("choosing moved the answers: %v, then %v", before, after)
	}
}

func TestAnOptionalAnswerCanBeTakenBack(t *testing.T) {
	newApp(t)
	c := New("simple", "complex")
	c.Optional = true
	test.Tap(c.answers[0])
	test.Tap(c.answers[0])
	if c.Chosen != -1 || c.answers[0].text() != "simple" {
		t.Errorf("chosen %d, %q", c.Chosen, c.answers[0].text())
	}
}

func TestAnswersWithoutRoomGoOnInTheNextLine(t *testing.T) {
	newApp(t)
	c := New("Normal", "Supple: flexible with minimal resistance", "Firm: inflexible, not easily moved")
	one := c.HeightAt(2000)
	if two := c.HeightAt(420); two < 2*one {
		t.Errorf("in 420 it is %v high, in one line %v", two, one)
	}
	for _, b := range c.answers {
		if right := b.Position().X + b.Size().Width; right > 421 {
			t.Errorf("%q ends at %v of 420", b.name, right)
		}
	}
}

func TestWhoMayOnlyLookChoosesNothing(t *testing.T) {
	newApp(t)
	c := New("a", "b")
	c.Disable()
	test.Tap(c.answers[0])
	if c.Chosen != -1 || !c.Disabled() {
		t.Errorf("chosen %d", c.Chosen)
	}
}

func TestAnAnswerTooLongForItsLineIsBroken(t *testing.T) {
	newApp(t)
	c := New("Creep to two thirds of the distance from the base of the web to the PIP crease")
	one := c.HeightAt(2000)
	if h := c.HeightAt(300); h <= one {
		t.Errorf("in 300 it is %v high, in one line %v", h, one)
	}
	for _, l := range c.answers[0].lines {
		if w := l.MinSize().Width; w > 300 {
			t.Errorf("%q is %v wide", l.Text, w)
		}
	}
}

func TestAnswersAreReachedAndChosenByKeys(t *testing.T) {
	newApp(t)
	c := New("a", "b", "c")
	w := test.NewTempWindow(t, c)
	w.Canvas().FocusNext()
	for _, k := range []fyne.KeyName{fyne.KeyRight, fyne.KeySpace} {
		w.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: k})
	}
	if c.Chosen != 1 {
		t.Errorf("right and space chose %d", c.Chosen)
	}
}
