package column

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"

	"ogive/ui/look"
)

func newApp(t *testing.T) { test.NewTempApp(t).Settings().SetTheme(look.Theme(theme.VariantLight)) }

func TestWhatWasWrittenIsToldOnceWithEnterOrOnLeaving(t *testing.T) {
	newApp(t)
	f, other := NewNumber("mm"), NewField("")
	w := test.NewTempWindow(t, container.NewVBox(f, other))
	var told []string
	f.OnDone = func(text string) { told = append(told, text) }
	w.Canvas().Focus(f)
	test.Type(f, "36")
	if len(told) != 0 {
		t.Fatalf("told %q while it was written", told)
	}
	f.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	w.Canvas().Focus(other)
	if len(told) != 1 || told[0] != "36" {
		t.Errorf("told %q", told)
	}
	w.Canvas().Focus(f)
	test.Type(f, "2")
	w.Canvas().Focus(other)
	if len(told) != 2 || told[1] == "36" {
		t.Errorf("told %q", told)
	}
}

func TestWhatIsBeingWrittenIsLeftAloneWhileItMeansTheSame(t *testing.T) {
	newApp(t)
	f := NewNumber("mm")
	f.OnDone = func(text string) { f.Fill(text) }
	f.SetText("36,")
	f.Finish()
	if f.Text != "36," {
		t.Errorf("while 36.5 is written the field reads %q", f.Text)
	}
	f.Fill("34")
	if f.Text != "34" {
		t.Errorf("after undo it reads %q", f.Text)
	}
	told := false
	f.OnDone = func(string) { told = true }
	f.Finish()
	if told {
		t.Error("what was shown is told as if it had been written")
	}
}

func TestABlankAtTheEndIsNotTakenAwayWhileWordsFollow(t *testing.T) {
	newApp(t)
	f := NewArea("", 2)
	var told string
	f.OnDone = func(text string) { told = text; f.Fill(text) }
	f.SetText("hair ")
	f.Finish()
	if told != "hair" || f.Text != "hair " {
		t.Errorf("told %q, it reads %q", told, f.Text)
	}
}

func TestNumbersAreReadWithPointOrComma(t *testing.T) {
	for text, want := range map[string]struct {
		v         float64
		given, ok bool
	}{"36.5": {36.5, true, true}, " 36,5 ": {36.5, true, true}, "": {0, false, true}, "-3": {-3, true, false}, "0": {0, true, false}, "thick": {0, true, false}, "NaN": {0, true, false}} {
		v, given, ok := Number(text)
		if given != want.given || ok != want.ok || ok && v != want.v {
			t.Errorf("%q is read as %v, %t, %t", text, v, given, ok)
		}
	}
}

func TestTextTakesTheHeightItNeedsAndNoneWithoutWords(t *testing.T) {
	newApp(t)
	b := Body("Tape each digit once around where it is joined, and write down what the tape says.")
	if wide, slim := b.HeightAt(900), b.HeightAt(180); slim < 2*wide {
		t.Errorf("in 180 it is %v high, in 900 %v", slim, wide)
	}
	b.Set("")
	if h := b.HeightAt(180); h != 0 {
		t.Errorf("without words it is %v high", h)
	}
	n := NewNotice("")
	if n.HeightAt(300) != 0 || n.Visible() {
		t.Error("a notice without words is seen")
	}
}

func TestAPageIsAsHighAsWhatStandsOnIt(t *testing.T) {
	newApp(t)
	p, words := NewPage(), Body("")
	f := NewMainFigure("Remains")
	f.Set("2.2 ± 0.4 cm²", "")
	p.Add(Heading("Skin"), words, f)
	w := test.NewTempWindow(t, p.Object())
	w.Resize(fyne.NewSize(340, 100))
	before := p.inner.MinSize().Height
	words.Set("One line more.")
	p.Arrange()
	if after := p.inner.MinSize().Height; after <= before || before < 60 {
		t.Errorf("%v high, with a line more %v", before, after)
	}
	if end := f.value.Position().X + f.value.Size().Width; end > 340 {
		t.Errorf("the figure ends at %v of 340", end)
	}
}

func TestAnAreaIsAsHighAsItsText(t *testing.T) {
	newApp(t)
	a := NewArea("", 2)
	least := a.HeightAt(300)
	a.Fill(strings.Repeat("What we plan to do, in plain words. ", 12))
	h := a.HeightAt(300)
	a.Resize(fyne.NewSize(300, h))
	if lines := h / fyne.MeasureText("x", look.Size(theme.SizeNameText), fyne.TextStyle{}).Height; h <= 2*least || lines < 10 || lines > 16 {
		t.Errorf("%v high, empty %v", h, least)
	}
}

func TestWhatFindsNoRoomBesideStandsInTheNextLine(t *testing.T) {
	newApp(t)
	a, b := NewField(""), NewField("")
	l := Line(a, b)
	if wide, slim := l.HeightAt(600), l.HeightAt(a.MinSize().Width+4); slim <= wide || b.Position().X != 0 {
		t.Errorf("%v and %v high, the second at %v", wide, slim, b.Position())
	}
}
