package values

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"

	"github.com/google/go-cmp/cmp"

	"ogive/assets"
	"ogive/geometry/norms"
	"ogive/ui/look"
)

func own(t *testing.T) norms.Table {
	t.Helper()
	table, err := norms.Parse(assets.NormalValues)
	if err != nil {
		t.Fatal(err)
	}
	return table
}

// opened is the dialog on a window; got is what was taken into use.
func opened(t *testing.T, v fyne.ThemeVariant, current norms.Table) (f *form, w fyne.Window, got *[]norms.Table) {
	t.Helper()
	test.NewTempApp(t).Settings().SetTheme(look.Theme(v))
	w = test.NewTempWindow(t, canvas.NewRectangle(look.Colour(look.Hairline)))
	w.Resize(fyne.NewSize(720, 560))
	got = &[]norms.Table{}
	f = open(w, current, own(t), func(n norms.Table) { *got = append(*got, n) })
	return f, w, got
}

func TestTheTableLooksAsItDid(t *testing.T) {
	_, w, _ := opened(t, theme.VariantLight, own(t))
	test.AssertRendersToImage(t, "values-light.png", w.Canvas())
	f, w, _ := opened(t, theme.VariantDark, own(t))
	f.bands[0].low.SetText("0.9")
	test.AssertRendersToImage(t, "wrong-dark.png", w.Canvas())
}

func TestLimitsLeftAloneStayAsPublished(t *testing.T) {
	f, _, got := opened(t, theme.VariantLight, own(t))
	test.Tap(f.use)
	if len(*got) != 1 {
		t.Fatalf("taken into use %d times", len(*got))
	}
	if d := cmp.Diff(own(t), (*got)[0]); d != "" {
		t.Errorf("changed without being edited:\n%s", d)
	}
}

func TestAnEditedLimitIsTheUsersOwnAndSaysSo(t *testing.T) {
	f, _, got := opened(t, theme.VariantLight, own(t))
	f.bands[0].low.SetText(" 0,4 ")
	f.least.SetText("1.5")
	test.Tap(f.use)
	b, s := (*got)[0].Bands[0], (*got)[0].Span
	if b.Low != 0.4 || b.High != 0.67 || b.Against != "your own limits" {
		t.Errorf("the band is %v to %v against %q", b.Low, b.High, b.Against)
	}
	if s.Least != 1.5 || s.Fraction != 0.1 || !strings.Contains(s.Reason, "set by you") {
		t.Errorf("the tolerance is %v and %v because: %s", s.Least, s.Fraction, s.Reason)
	}
	if slope := (*got)[0].Bands[1]; slope.Against != "published values" {
		t.Errorf("the slope, which was not edited, is judged against %q", slope.Against)
	}
	again, _, _ := opened(t, theme.VariantLight, (*got)[0])
	if again.bands[0].low.Text != "0.4" || again.least.Text != "1.5" {
		t.Errorf("opened again it shows %q and %q", again.bands[0].low.Text, again.least.Text)
	}
}

func TestOneStepLeadsBackToTheProgramsOwnValues(t *testing.T) {
	edited := own(t)
	edited.Bands = append([]norms.Band{}, edited.Bands...)
	edited.Bands[0].Low, edited.Bands[0].Against = 0.3, "your own limits"
	f, _, got := opened(t, theme.VariantLight, edited)
	test.Tap(f.back)
	test.Tap(f.use)
	if d := cmp.Diff(own(t), (*got)[0]); d != "" {
		t.Errorf("not the program's own values:\n%s", d)
	}
}

func TestAnythingWrongIsSaidInAPlainSentenceAndNotUsed(t *testing.T) {
	for _, c := range []struct {
		enter func(*form)
		want  string
	}{
		{func(f *form) { f.bands[0].low.SetText("deep") }, "Dorsal web index: “deep” is no number. Write it like 0.45."},
		{func(f *form) { f.bands[0].low.SetText("") }, "Dorsal web index: “” is no number. Write it like 0.45."},
		{func(f *form) { f.bands[0].high.SetText("0.45") }, "Dorsal web index: the lower limit must lie below the upper one."},
		{func(f *form) { f.bands[1].high.SetText("91") }, "Slope: 91 lies outside 0 to 90."},
		{func(f *form) { f.percent.SetText("100") }, "Tolerance of the span: 100 lies outside 0 to 99."},
		{func(f *form) { f.least.SetText("-1") }, "Tolerance of the span: -1 lies outside 0 to 50."},
		{func(f *form) { f.least.SetText("NaN") }, "Tolerance of the span: “NaN” is no number. Write it like 0.45."},
	} {
		f, _, got := opened(t, theme.VariantLight, own(t))
		c.enter(f)
		if f.trouble.Text != c.want || !f.trouble.Visible() {
			t.Errorf("it says %q, want %q", f.trouble.Text, c.want)
		}
		test.Tap(f.use)
		if len(*got) != 0 {
			t.Errorf("%q was taken into use", c.want)
		}
		f.fill(own(t))
		if f.trouble.Visible() || f.use.Disabled() {
			t.Errorf("after mending it still says %q", f.trouble.Text)
		}
	}
}
