package sign

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"

	"ogive/geometry/norms"
	"ogive/ui/look"
)

func newApp(t *testing.T) { test.NewTempApp(t).Settings().SetTheme(look.Theme(theme.VariantLight)) }

func TestVerdictsAreToldApartWithoutColour(t *testing.T) {
	newApp(t)
	seen := map[string]State{}
	for _, v := range []norms.Verdict{
		{Figure: "index", Finding: "too deep", Certain: true},
		{Figure: "index", Finding: "too deep"},
		{Figure: "index", Finding: norms.WithinLimits, Certain: true},
		{Figure: "index", Finding: norms.NoDifference},
	} {
		s := New()
		s.Say(v)
		s.Resize(fyne.NewSize(100, 40))
		img := s.draw(100, 40)
		shape := make([]byte, 0, 4000)
		for y := range 40 {
			for x := range 100 {
				_, _, _, a := img.At(x, y).RGBA()
				shape = append(shape, byte(a>>8))
			}
		}
		if other, taken := seen[string(shape)]; taken {
			t.Errorf("states %d and %d have the same shape", other, s.State())
		}
		seen[string(shape)] = s.State()
	}
}

func TestOnlyWhatIsDoubtfulIsSlantedAndSaidToBeDoubtful(t *testing.T) {
	newApp(t)
	for v, want := range map[norms.Verdict]bool{
		{Figure: "index", Finding: "too deep", Certain: true}:          false,
		{Figure: "index", Finding: "too deep"}:                         true,
		{Figure: "index", Finding: norms.WithinLimits, Certain: true}:  false,
		{Figure: "index", Finding: norms.WithinLimits, Certain: false}: true,
		{Figure: "index", Finding: norms.NoDifference}:                 false,
	} {
		s := New()
		s.Say(v)
		words, _ := s.Words()
		if strings.Contains(words, "doubtful") != want || s.words.TextStyle.Italic != want {
			t.Errorf("%+v is worded %q, slanted %v", v, words, s.words.TextStyle.Italic)
		}
	}
}

func TestALongLimitIsWrittenSmallerRatherThanOverTheEdge(t *testing.T) {
	newApp(t)
	s := New()
	s.SayAs(norms.Verdict{Figure: "index", Finding: "too deep", Certain: true}, "too deep", "limit 11.1 mm (other webs of the same hand)")
	high := s.HeightAt(200)
	s.Resize(fyne.NewSize(200, high))
	s.Refresh()
	if end := s.limit.Position().X + s.limit.MinSize().Width; end > 200-9 {
		t.Errorf("the limit ends at %.0f of 200, where the flag's notch begins at 191", end)
	}
}

func TestAQuietSignIsLowOnlyWhereNoDifferenceCanBeTold(t *testing.T) {
	newApp(t)
	loud, quiet := New(), New()
	quiet.Quiet = true
	deep, same := norms.Verdict{Figure: "index", Finding: "too deep"}, norms.Verdict{Figure: "index", Finding: norms.NoDifference}
	loud.Say(deep)
	quiet.Say(deep)
	if a, b := loud.HeightAt(200), quiet.HeightAt(200); a != b {
		t.Errorf("a doubtful verdict is %v high, quiet %v", a, b)
	}
	loud.Say(same)
	if !quiet.Say(same) {
		t.Error("that the height has changed is not told")
	}
	if a, b := loud.HeightAt(200), quiet.HeightAt(200); b >= a {
		t.Errorf("no difference is %v high, quiet %v", a, b)
	}
}
