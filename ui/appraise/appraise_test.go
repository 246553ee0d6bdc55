package appraise

import (
	"errors"
	"flag"
	"image/png"
	"os"
	"path/filepath"
	"sync"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"

	"ogive/geometry/hand"
	"ogive/imaging/appraisal"
	"ogive/imaging/casebook"
	"ogive/ui/look"
)

var shots = flag.String("shots", "", "a folder for pictures of the form, to be looked at")

var (
	third  = appraisal.Web(hand.Left, hand.ThirdWeb)
	fourth = appraisal.Web(hand.Left, hand.FourthWeb)
	about  = casebook.Case{Code: "S-012", Hand: casebook.LeftHand, Joins: []casebook.Join{
		{Hand: hand.Left, Web: hand.ThirdWeb}, {Hand: hand.Left, Web: hand.FourthWeb}}}
)

// kept is what has been saved, the last one last.
type kept struct {
	sync.Mutex
	all  []appraisal.Appraisal
	fail error
}

func (k *kept) save(a appraisal.Appraisal) error {
	k.Lock()
	defer k.Unlock()
	if k.fail != nil {
		return k.fail
	}
	if _, err := a.Encode(); err != nil {
		return err
	}
	k.all = append(k.all, a)
	return nil
}

func (k *kept) last(t *testing.T) appraisal.Appraisal {
	t.Helper()
	k.Lock()
	defer k.Unlock()
	if len(k.all) == 0 {
		t.Fatal("nothing was kept")
	}
	return k.all[len(k.all)-1]
}

// shown is the form on a window. What comes back from beside it runs at once in
// Finish.
type shown struct {
	*Form
	t     *testing.T
	kept  *kept
	queue chan func()
	win   fyne.Window
}

func show(t *testing.T, a appraisal.Appraisal, figures map[Beside]string) *shown {
	t.Helper()
	test.NewTempApp(t).Settings().SetTheme(look.Theme(theme.VariantLight))
	s := &shown{Form: New(), t: t, kept: &kept{}, queue: make(chan func(), 1000)}
	s.do = func(f func()) { s.queue <- f }
	s.OnSave = s.kept.save
	s.win = test.NewTempWindow(t, s.Object())
	s.win.Resize(fyne.NewSize(740, 640))
	s.Form.Show(about, a, figures)
	return s
}

func (s *shown) finish() {
	s.Finish()
	for {
		select {
		case f := <-s.queue:
			f()
		default:
			return
		}
	}
}

func (s *shown) row(k appraisal.Key) *row {
	s.t.Helper()
	for _, section := range s.sections {
		for _, r := range section.rows {
			if r.finding.Key == k {
				return r
			}
		}
	}
	s.t.Fatalf("the form has no %s", k)
	return nil
}

func (s *shown) keep(name string) {
	if *shots == "" {
		return
	}
	f, err := os.Create(filepath.Join(*shots, name+".png"))
	if err != nil {
		s.t.Fatal(err)
	}
	if err := png.Encode(f, s.win.Canvas().Capture()); err != nil {
		s.t.Fatal(err)
	}
	if err := f.Close(); err != nil {
		s.t.Fatal(err)
	}
}

func TestEveryFindingOfTheVocabularyCanBeGivenAndIsKeptAtOnce(t *testing.T) {
	s := show(t, appraisal.Appraisal{Observer: "AB"}, nil)
	for _, finding := range appraisal.Vocabulary {
		r := s.row(finding.Key)
		r.answers.Choose(len(finding.Choices) - 1)
		s.finish()
		g, ok := s.kept.last(t).At(finding.Key, r.place())
		if want := finding.Choices[len(finding.Choices)-1].Key; !ok || g.Choice != want {
			t.Errorf("%s: kept %+v, want %s", finding.Key, g, want)
		}
	}
	if got := s.kept.last(t); len(got.Findings) != len(appraisal.Vocabulary) || got.Observer != "AB" {
		t.Errorf("kept %d of %d findings, by %q", len(got.Findings), len(appraisal.Vocabulary), got.Observer)
	}
}

func TestAnAnswerIsTakenBackByChoosingItAgain(t *testing.T) {
	s := show(t, appraisal.Appraisal{}, nil)
	r := s.row(appraisal.Feel)
	r.answers.Choose(1)
	r.answers.Choose(1)
	s.finish()
	if last := s.kept.last(t); !last.Empty() {
		t.Errorf("kept %+v", last.Findings)
	}
}

func TestEachWebHasFindingsOfItsOwn(t *testing.T) {
	var a appraisal.Appraisal
	a.Set(appraisal.Given{Finding: appraisal.Feel, Place: third, Choice: "soft"})
	a.Set(appraisal.Given{Finding: appraisal.Feel, Place: fourth, Choice: "thickened", Note: "radial side"})
	s := show(t, a, map[Beside]string{{appraisal.MeasuredCreep, fourth}: "12 ± 5 %"})
	r := s.row(appraisal.Feel)
	if r.answers.Chosen != 0 || r.note.Visible() || r.measured.Visible() {
		t.Errorf("the third web shows answer %d, note %t, figure %t", r.answers.Chosen, r.note.Visible(), r.measured.Visible())
	}
	s.sections[0].now = 1
	s.refill()
	if r.answers.Chosen != 1 || r.note.Text != "radial side" || !r.note.Visible() || r.measured.Text != "measured: 12 ± 5 %" || !r.measured.Visible() {
		t.Errorf("the fourth web shows answer %d, note %q, figure %q", r.answers.Chosen, r.note.Text, r.measured.Text)
	}
	s.finish()
	if len(s.kept.all) != 0 {
		t.Errorf("looking at another web was kept as a change: %+v", s.kept.all)
	}
	r.note.SetText("ulnar side")
	s.finish()
	if g, _ := s.kept.last(t).At(appraisal.Feel, fourth); g.Note != "ulnar side" || g.Choice != "thickened" {
		t.Errorf("kept %+v", g)
	}
	if g, _ := s.kept.last(t).At(appraisal.Feel, third); g.Choice != "soft" {
		t.Errorf("the third web became %+v", g)
	}
}

// The Vancouver Scar Scale adds vascularity 0-3, pigmentation 0-2, pliability
// 0-5 and height 0-3 (Sullivan T et al. 1990, from memory).
func TestAScarHasATotalOnceAllItemsAreGiven(t *testing.T) {
	s := show(t, appraisal.Appraisal{}, nil)
	for i, k := range appraisal.ScarScale {
		if want := "Vancouver Scar Scale: no total yet, " + string(rune('0'+i)) + " of 4 items given"; s.total.Text != want {
			t.Errorf("it says %q, want %q", s.total.Text, want)
		}
		s.row(k).answers.Choose(2)
	}
	if want := "Vancouver Scar Scale: 8 of 13"; s.total.Text != want {
		t.Errorf("it says %q, want %q", s.total.Text, want)
	}
	s.finish()
}

func TestWhatCannotBeKeptIsSaidAndKeptWithTheNextChange(t *testing.T) {
	s := show(t, appraisal.Appraisal{}, nil)
	s.kept.fail = errors.New("the disk is full; make room")
	s.row(appraisal.Look).answers.Choose(0)
	s.finish()
	if s.state.Text != "Not kept: the disk is full; make room." {
		t.Errorf("it says %q", s.state.Text)
	}
	s.kept.fail = nil
	s.remarks.SetText("Seen with the mother.")
	s.finish()
	if g, _ := s.kept.last(t).At(appraisal.Look, third); g.Choice != "natural" || s.kept.last(t).Remarks != "Seen with the mother." {
		t.Errorf("kept %+v", s.kept.last(t))
	}
	if s.state.Text != "✓ Kept, with everything so far" {
		t.Errorf("it says %q", s.state.Text)
	}
}

func TestWhoMayOnlyReadChangesNothing(t *testing.T) {
	s := show(t, appraisal.Appraisal{}, nil)
	s.ReadOnly(true)
	r := s.row(appraisal.Look)
	for _, o := range test.LaidOutObjects(r.answers) {
		if b, ok := o.(fyne.Tappable); ok {
			b.Tapped(&fyne.PointEvent{})
		}
	}
	s.finish()
	if len(s.kept.all) != 0 || r.answers.Chosen != -1 || !s.remarks.Disabled() {
		t.Errorf("kept %+v", s.kept.all)
	}
}

func TestACaseWithoutJoinsOffersAllWebsOfTheAffectedHands(t *testing.T) {
	for _, c := range []struct {
		hands casebook.Hands
		want  int
	}{{casebook.LeftHand, 4}, {casebook.RightHand, 4}, {casebook.BothHands, 8}} {
		if got := places(casebook.Case{Hand: c.hands}); len(got) != c.want {
			t.Errorf("%s: %d webs, want %d", c.hands, len(got), c.want)
		}
	}
	if got := digitsBeside([]appraisal.Place{third, fourth}); len(got) != 3 {
		t.Errorf("beside the third and the fourth web lie %v", got)
	}
}

func TestTheFormHasRoomInLightAndDark(t *testing.T) {
	var a appraisal.Appraisal
	a.Set(appraisal.Given{Finding: appraisal.Look, Place: third, Choice: "near"})
	a.Set(appraisal.Given{Finding: appraisal.Feel, Place: third, Choice: "thickened", Note: "radial side"})
	a.Set(appraisal.Given{Finding: appraisal.Pliability, Place: third, Choice: "firm"})
	s := show(t, a, map[Beside]string{{appraisal.MeasuredIndex, third}: "0.47 ± 0.02, dorsal", {appraisal.MeasuredCreep, third}: "0.12 ± 0.05"})
	for name, variant := range map[string]fyne.ThemeVariant{"light": theme.VariantLight, "dark": theme.VariantDark} {
		fyne.CurrentApp().Settings().SetTheme(look.Theme(variant))
		for size, wide := range map[string]float32{"small": 740, "large": 1320} {
			s.win.Resize(fyne.NewSize(wide, 640))
			if least := s.Object().MinSize(); least.Width > 740 {
				t.Errorf("the form needs %v", least)
			}
			s.scroll.ScrollToTop()
			s.keep("appraise-" + name + "-" + size)
			s.scroll.ScrollToBottom()
			s.keep("appraise-end-" + name + "-" + size)
			for _, section := range s.sections {
				for _, r := range section.rows {
					if end := r.answers.Position().X + r.answers.Size().Width; end > wide {
						t.Errorf("%s ends at %v of %v", r.finding.Key, end, wide)
					}
				}
			}
		}
	}
}
