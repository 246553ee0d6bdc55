package cards

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"

	"ogive/assets"
	"ogive/geometry/arch"
	"ogive/geometry/hand"
	"ogive/geometry/norms"
	"ogive/geometry/plane"
	"ogive/geometry/reading"
	"ogive/geometry/scale"
	"ogive/ui/look"
	"ogive/ui/marking"
)

func mm(v, u float64) *plane.Estimate[plane.Millimetre] {
	return &plane.Estimate[plane.Millimetre]{Value: plane.Millimetre(v), U95: plane.Millimetre(u)}
}

func deg(v, u float64) *plane.Estimate[plane.Angle] {
	return &plane.Estimate[plane.Angle]{Value: plane.Degrees(v), U95: plane.Degrees(u)}
}

func ratio(v, u float64) *plane.Estimate[plane.Ratio] {
	return &plane.Estimate[plane.Ratio]{Value: plane.Ratio(v), U95: plane.Ratio(u)}
}

func table(t testing.TB) norms.Table {
	t.Helper()
	table, err := norms.Parse(assets.NormalValues)
	if err != nil {
		t.Fatal(err)
	}
	return table
}

const noTilt = "Scale by 131 ticks found between the ends of the ruler, which show no tilt across it: up to 10 degrees either way are allowed for."

// threeWebs is a reading of the back of a hand: the second web certainly too
// deep, the third well, the fourth in doubt and of unsure shape.
func threeWebs(t testing.TB) marking.Reading {
	t.Helper()
	webs := []reading.Web{
		{Web: hand.SecondWeb, Index: ratio(0.31, 0.03), Depth: mm(19.3, 0.8), Span: mm(11.2, 0.5), Rise: mm(7.9, 0.4), Flare: deg(4, 2), CrownAngle: deg(180, 9), Shape: arch.U, ShapeSure: true},
		{Web: hand.ThirdWeb, Index: ratio(0.55, 0.02), Depth: mm(13.1, 0.7), Span: mm(8.4, 0.3), Rise: mm(7.2, 0.3), Flare: deg(3, 2), CrownAngle: deg(118, 6), Shape: arch.Gothic, ShapeSure: true},
		{Web: hand.FourthWeb, Index: ratio(0.44, 0.03), Depth: mm(12.2, 0.7), Span: mm(10.1, 0.5), Rise: mm(6.0, 0.4), Flare: deg(6, 3), CrownAngle: deg(164, 12), Shape: arch.Gothic, ShapeAlso: []arch.Shape{arch.U}, Warnings: []string{"The border ends before the arch does: trace it further along both fingers."}},
	}
	limits := table(t)
	var spans []norms.WebSpan
	for _, w := range webs {
		spans = append(spans, norms.WebSpan{Web: w.Web, Span: *w.Span})
	}
	for i, judged := range limits.JudgeSpans(spans) {
		webs[i].Verdicts = append(limits.JudgeIndex(hand.Dorsal, *webs[i].Index), judged...)
	}
	return marking.Reading{Scaled: true, Reading: reading.Reading{
		Side: hand.Right, View: hand.Dorsal, Method: scale.ByRuler, Webs: webs,
		Warnings: []string{noTilt}, Usual: []string{noTilt},
	}}
}

// junction is a reading of a web looked into.
func junction(t testing.TB) marking.Reading {
	t.Helper()
	w := reading.Web{Web: hand.ThirdWeb, Slope: deg(61, 4)}
	w.Verdicts = table(t).JudgeSlope(*w.Slope)
	return marking.Reading{Scaled: true, Reading: reading.Reading{Side: hand.Right, View: hand.WebView, Webs: []reading.Web{w}}}
}

var (
	dorsal  = marking.State{Side: hand.Right, View: hand.Dorsal}
	webView = marking.State{Side: hand.Right, View: hand.WebView}
)

func inWindow(t testing.TB, v fyne.ThemeVariant, height float32) (*Cards, fyne.Window) {
	t.Helper()
	test.NewTempApp(t).Settings().SetTheme(look.Theme(v))
	c := New()
	w := test.NewTempWindow(t, container.NewPadded(c.Content()))
	w.Resize(fyne.NewSize(330, height))
	return c, w
}

func TestStatesLookAsTheyDid(t *testing.T) {
	for name, v := range map[string]fyne.ThemeVariant{"light": theme.VariantLight, "dark": theme.VariantDark} {
		c, w := inWindow(t, v, 1000)
		c.Show(threeWebs(t), dorsal)
		c.Select(hand.ThirdWeb)
		test.AssertRendersToImage(t, "three-"+name+".png", w.Canvas())
	}
	c, w := inWindow(t, theme.VariantLight, 480)
	test.AssertRendersToImage(t, "empty-light.png", w.Canvas())
	c.Show(junction(t), webView)
	test.AssertRendersToImage(t, "slope-light.png", w.Canvas())
}

// said is every visible text of a card.
func said(c *card) string {
	all := []string{c.title.Text, c.sub.Text, c.leading.Text, c.leadName.Text}
	for _, r := range c.rows {
		if r.name.Visible() {
			all = append(all, r.name.Text+" "+r.value.Text)
		}
	}
	for _, s := range c.signs {
		if s.Visible() {
			verdict, limit := s.Words()
			all = append(all, verdict, limit)
		}
	}
	if c.warnings.Visible() {
		all = append(all, c.warnings.Text)
	}
	return strings.Join(all, "\n")
}

func TestACardSaysEverythingThatWasRead(t *testing.T) {
	c, _ := inWindow(t, theme.VariantLight, 900)
	c.Show(threeWebs(t), dorsal)
	for web, want := range map[hand.Web]string{
		hand.SecondWeb: "Second web\nindex to middle\n0.31 ± 0.03\ndorsal web index\nDepth 19.3 ± 0.8 mm\nSpan 11.2 ± 0.5 mm\nCrown angle 180 ± 9°\nShape U\n" +
			"index: too deep\nlimit 0.45 (published values)\nspan: too wide? (doubtful)\nlimit 11.1 mm (other webs of the same hand)",
		hand.FourthWeb: "Fourth web\nring to little\n0.44 ± 0.03\ndorsal web index\nDepth 12.2 ± 0.7 mm\nSpan 10.1 ± 0.5 mm\nCrown angle 164 ± 12°\nShape gothic or U\n" +
			"index: too deep? (doubtful)\nlimit 0.45 (published values)\nspan: within limits\nlimit 12.3 mm (other webs of the same hand)\n" +
			"The border ends before the arch does: trace it further along both fingers.",
	} {
		if got := said(c.cards[web]); got != want {
			t.Errorf("the card says\n%s\nwant\n%s", got, want)
		}
	}
	c.Show(junction(t), webView)
	want := "Third web\nmiddle to ring\n61 ± 4°\nslope\nslope: too steep\nlimit 50° (published values)"
	if got := said(c.cards[hand.ThirdWeb]); got != want {
		t.Errorf("looking into a web the card says\n%s\nwant\n%s", got, want)
	}
	if c.cards[hand.SecondWeb].Visible() || c.cards[hand.ThirdWeb].arch.Visible() {
		t.Error("a web that is no longer read, or an arch that was not fitted, is still shown")
	}
}

func TestAVHasNoSpan(t *testing.T) {
	_, rest := figures(reading.Web{Shape: arch.V, ShapeSure: true, Index: ratio(0.5, 0.01), Span: mm(0, 0), CrownAngle: deg(40, 3)}, hand.Dorsal)
	for _, f := range rest {
		if f.Name == "span" {
			t.Errorf("a V is given a span of %s", f.Value)
		}
	}
	if len(rest) != 2 {
		t.Errorf("a V has the figures %v", rest)
	}
}

func TestWarningsStandAtTheTopAndLeadToHelp(t *testing.T) {
	c, _ := inWindow(t, theme.VariantLight, 900)
	helped := 0
	c.OnHelp = func() { helped++ }
	if c.notices.Visible() {
		t.Error("an empty column warns of something")
	}
	r := threeWebs(t)
	r.Problems = []string{"third web: the border could not be traced"}
	r.Warnings = append(r.Warnings, "the ruler contradicts the length of 13 mm")
	c.Show(r, dorsal)
	want := "Third web: the border could not be traced\nThe ruler contradicts the length of 13 mm"
	if c.notices.label.Text != want || !c.notices.Visible() {
		t.Errorf("it warns %q, want %q", c.notices.label.Text, want)
	}
	for _, web := range hand.Webs[1:] {
		if y := c.cards[web].Position().Y; y < c.notices.Position().Y+c.notices.Size().Height {
			t.Errorf("the %v stands at %.0f, above or on the warnings", web, y)
		}
	}
	test.Tap(c.notices.help)
	if helped != 1 {
		t.Errorf("the link was followed %d times", helped)
	}
	r.Problems, r.Warnings = nil, []string{noTilt}
	c.Show(r, dorsal)
	if c.notices.Visible() {
		t.Error("what has been mended is still warned of")
	}
}

func TestWhatIsTrueOfEveryRulerIsAFootnoteThatLeadsToHelp(t *testing.T) {
	c, _ := inWindow(t, theme.VariantLight, 900)
	helped := 0
	c.OnHelp = func() { helped++ }
	c.Show(threeWebs(t), dorsal)
	if c.notices.Visible() || !c.foot.Visible() || c.foot.label.Text != noTilt {
		t.Errorf("the notice is shown: %v, the footnote says %q", c.notices.Visible(), c.foot.label.Text)
	}
	if last := c.cards[hand.FourthWeb]; c.foot.Position().Y < last.Position().Y+last.Size().Height {
		t.Error("the footnote stands above the last card or on it")
	}
	c.foot.help.OnTapped()
	if helped != 1 {
		t.Errorf("the link was followed %d times", helped)
	}
	c.Show(junction(t), webView)
	if c.foot.Visible() {
		t.Error("a reading without remarks has a footnote")
	}
}

func TestTheVerdictsOfAllWebsStayInSightHoweverLowTheColumn(t *testing.T) {
	c, w := inWindow(t, theme.VariantLight, 900)
	c.Show(threeWebs(t), dorsal)
	for _, height := range []float32{900, 220} {
		w.Resize(fyne.NewSize(330, height))
		c.scroll.ScrollToBottom()
		top := fyne.CurrentApp().Driver().AbsolutePositionForObject(c.summary).Y
		if bottom := top + c.summary.MinSize().Height; !c.summary.Visible() || top < 0 || bottom > fyne.CurrentApp().Driver().AbsolutePositionForObject(c.scroll).Y {
			t.Errorf("in a window %.0f high the summary lies from %.0f to %.0f", height, top, bottom)
		}
		if c.scroll.Size().Height < 80 {
			t.Errorf("in a window %.0f high the cards have %.0f left", height, c.scroll.Size().Height)
		}
	}
}

func TestTheEmptyColumnSaysWhatItWaitsFor(t *testing.T) {
	c, _ := inWindow(t, theme.VariantLight, 500)
	traced := marking.Reading{Edges: map[hand.Web][]plane.PixelPoint{hand.ThirdWeb: {{X: 1, Y: 2}}}}
	for _, e := range []struct {
		r    marking.Reading
		s    marking.State
		want string
	}{
		{marking.Reading{}, marking.State{}, "wait for the scale, the joints"},
		{marking.Reading{}, dorsal, "wait for the scale"},
		{traced, dorsal, "The borders are traced."},
		{marking.Reading{Scaled: true}, dorsal, "wait for a web"},
		{marking.Reading{Scaled: true}, webView, "The slope waits"},
	} {
		c.Show(e.r, e.s)
		if !c.empty.Visible() || !strings.Contains(c.empty.waits.Text, e.want) {
			t.Errorf("it says %q, want %q", c.empty.waits.Text, e.want)
		}
	}
	c.Show(threeWebs(t), dorsal)
	if c.empty.Visible() {
		t.Error("beside the cards it still says what will come")
	}
}

func TestACardLeadsToItsWeb(t *testing.T) {
	c, _ := inWindow(t, theme.VariantLight, 900)
	var chosen []hand.Web
	c.OnSelectWeb = func(w hand.Web) { chosen = append(chosen, w) }
	c.Show(threeWebs(t), dorsal)
	test.Tap(c.cards[hand.FourthWeb])
	if len(chosen) != 1 || chosen[0] != hand.FourthWeb {
		t.Errorf("chose %v", chosen)
	}
	c.Select(hand.FourthWeb)
	for _, web := range hand.Webs {
		if got, want := c.cards[web].rail.Visible(), web == hand.FourthWeb; got != want {
			t.Errorf("the %v is marked as chosen: %v", web, got)
		}
	}
}

func TestCardsNeverOverlap(t *testing.T) {
	c, w := inWindow(t, theme.VariantLight, 900)
	c.Show(threeWebs(t), dorsal)
	for _, width := range []float32{330, 460, 320} {
		w.Resize(fyne.NewSize(width, 900))
		y := float32(0)
		for _, o := range []fyne.CanvasObject{c.notices, c.cards[hand.SecondWeb], c.cards[hand.ThirdWeb], c.cards[hand.FourthWeb]} {
			if o.Position().Y < y {
				t.Errorf("at a width of %.0f something begins at %.0f, where the one before ends at %.0f", width, o.Position().Y, y)
			}
			y = o.Position().Y + o.Size().Height
		}
		if content := c.scroll.Content.Size().Height; content < y {
			t.Errorf("at a width of %.0f the cards end at %.0f and can be scrolled to %.0f", width, y, content)
		}
	}
}

func TestWidthsCanBeComparedByEye(t *testing.T) {
	c, _ := inWindow(t, theme.VariantLight, 900)
	c.Show(threeWebs(t), dorsal)
	f := c.cards[hand.SecondWeb].drawing.f
	for _, web := range []hand.Web{hand.ThirdWeb, hand.FourthWeb} {
		if c.cards[web].drawing.f != f {
			t.Errorf("the %v is drawn at %v, the second web at %v", web, c.cards[web].drawing.f, f)
		}
	}
	r := threeWebs(t)
	r.Webs[1].Span.Value += 0.2
	c.Show(r, dorsal)
	if c.cards[hand.SecondWeb].drawing.f != f {
		t.Error("a small movement of one web changes the size of all drawings")
	}
}

func TestFramesShowEveryArchWhole(t *testing.T) {
	for _, span := range []float64{2, 8, 20, 45} {
		w := reading.Web{Shape: arch.Round, Span: mm(span, 1), Rise: mm(span/2, 1), Flare: deg(0, 1), CrownAngle: deg(180, 1)}
		f := frameFor([]reading.Web{w})
		if float64(f.width) < span*1.2 || float64(f.width)*archRise/archSide < span/2*1.2 {
			t.Errorf("a round arch of span %g mm is drawn in a frame %v mm wide", span, f.width)
		}
	}
}

func TestTheCautionStandsUnderTheCardsOrAmongThem(t *testing.T) {
	c, w := inWindow(t, theme.VariantLight, 900)
	c.Show(threeWebs(t), dorsal)
	for _, height := range []float32{900, 300, 900} {
		w.Resize(fyne.NewSize(330, height))
		if c.caution[0].Visible() == c.caution[1].Visible() {
			t.Errorf("in a window %.0f high the caution is shown twice or not at all", height)
		}
		last := c.cards[hand.FourthWeb]
		if c.caution[1].Visible() && c.caution[1].Position().Y < last.Position().Y+last.Size().Height {
			t.Error("the caution lies on the last card")
		}
	}
}

// A dragged point moves every figure of two webs.
func BenchmarkShow(b *testing.B) {
	c, _ := inWindow(b, theme.VariantLight, 900)
	r := threeWebs(b)
	for i := 0; b.Loop(); i++ {
		by := float64(i%50) / 100
		for n := range r.Webs {
			r.Webs[n].Index = ratio(0.3+by/3, 0.03)
			r.Webs[n].Depth = mm(15+by, 0.8)
			r.Webs[n].Span = mm(9+by, 0.5)
		}
		c.Show(r, dorsal)
	}
}
