package beside

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"ogive/geometry/comparison"
	"ogive/geometry/hand"
	"ogive/geometry/norms"
	"ogive/imaging/compared"
	"ogive/imaging/wording"
	"ogive/ui/column"
	"ogive/ui/flow"
	"ogive/ui/label"
	"ogive/ui/look"
)

// sheet is the column of differences: a summary, what must not be overlooked, a
// card for each web, and how far to trust it all.
type sheet struct {
	summary  *widget.Label
	key      *key
	notice   *column.Notice
	cards    map[hand.Web]*card
	residual *widget.Label
	means    *widget.Label
	remarks  *widget.Label
	stack    *flow.Stack
	scroll   *container.Scroll
	object   fyne.CanvasObject
}

func newSheet(reveal func(hand.Web)) *sheet {
	s := &sheet{summary: label.Wrapped(""), key: newKey(), notice: column.NewNotice(""), cards: map[hand.Web]*card{}, residual: label.Wrapped(""), means: label.Caption(""), remarks: label.Caption("")}
	s.summary.TextStyle.Bold, s.residual.TextStyle.Bold = true, true
	objects := []fyne.CanvasObject{s.summary, s.notice, s.key}
	for _, w := range hand.Webs {
		s.cards[w] = newCard(w, func() { reveal(w) })
		s.cards[w].Hide()
		objects = append(objects, s.cards[w])
	}
	objects = append(objects, s.residual, s.means, s.remarks)
	s.stack = &flow.Stack{}
	s.scroll = container.NewVScroll(container.New(s.stack, objects...))
	s.stack.OnHeight = s.scroll.Refresh
	caution := label.Caption("")
	caution.SetText(wording.Caution)
	s.object = container.New(footed{}, s.scroll, caution)
	return s
}

// footed is a column whose last part stands below the first, which scrolls.
type footed struct{}

func (footed) MinSize([]fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(look.Size(look.Column), 200)
}

func (footed) Layout(parts []fyne.CanvasObject, size fyne.Size) {
	h := flow.HeightAt(parts[1], size.Width)
	flow.Put(parts[1], 0, size.Height-h, size.Width, h)
	flow.Put(parts[0], 0, 0, size.Width, size.Height-h)
}

// show brings the column up to date.
func (s *sheet) show(p compared.Pair) {
	s.summary.SetText(summary(p))
	s.key.show(p.Comparison.TwoSittings())
	notices := append([]string{}, p.Comparison.Reminders...)
	if p.Growth() != "" {
		notices = append([]string{growth()}, notices...)
	}
	s.notice.Set(strings.Join(notices, "\n"))
	scale := scaleFor(p.Comparison.Webs)
	seen := map[hand.Web]bool{}
	for _, w := range p.Comparison.Webs {
		seen[w.Web] = true
		s.cards[w.Web].show(p, w, scale)
	}
	for w, c := range s.cards {
		flow.Visible(c, seen[w])
	}
	s.residual.SetText(residual(p))
	s.means.SetText(means(p))
	s.remarks.SetText(strings.Join(append(append([]string{}, p.Comparison.Warnings...), tolerance()), "\n"))
	s.stack.Arrange()
	s.scroll.ScrollToTop()
}

// choose marks the card of a web.
func (s *sheet) choose(w hand.Web) {
	for web, c := range s.cards {
		c.choose(web == w)
	}
}

// summary is one line for each web: what differs, the certain first.
func summary(p compared.Pair) string {
	var lines []string
	for _, w := range p.Comparison.Webs {
		lines = append(lines, wording.WebName(w.Web)+": "+findings(w.Verdicts)+crowns(p, w))
	}
	return strings.Join(lines, "\n")
}

// crowns is the difference of two crown angles that is certain, for which there is
// no verdict.
func crowns(p compared.Pair, w comparison.Web) string {
	if !w.CrownsDiffer() {
		return ""
	}
	for _, f := range p.Figures(w) {
		if f.Name == wording.CrownAngle {
			return "; " + lang.L("crown angle {{.Difference}}", map[string]any{"Difference": f.Difference})
		}
	}
	return ""
}

func findings(verdicts []norms.Verdict) string {
	if len(verdicts) == 0 {
		return lang.L("nothing to judge")
	}
	var certain, doubtful []string
	for _, v := range verdicts {
		switch {
		case v.Finding == norms.NoDifference:
		case v.Certain:
			certain = append(certain, wording.VerdictOf(v))
		default:
			doubtful = append(doubtful, wording.VerdictOf(v))
		}
	}
	if len(certain)+len(doubtful) == 0 {
		return wording.Term(norms.NoDifference)
	}
	return strings.Join(append(certain, doubtful...), ", ")
}
