package plancolour

import (
	"fmt"
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"

	"ogive/geometry/skincolour"
	"ogive/imaging/skin"
	"ogive/imaging/wording"
	"ogive/ui/column"
	"ogive/ui/flow"
)

// results are what the patches say.
type results struct {
	heading *column.Text
	state   *column.Text
	refused *column.Notice // what can't be sampled
	light   *column.Notice // where no neutral patch was used
	tones   *column.Block
	apart   *column.Text
	why     *column.Text // the intervals are wide
	pairs   *column.Block
	which   *column.Text
	reason  *column.Text
	yours   *column.Text
	notes   *column.Text
}

func newResults() *results {
	return &results{
		heading: column.Heading(lang.L("Measured")), state: column.Body(""), refused: column.NewNotice(""), light: column.NewNotice(""),
		tones: column.NewList(), apart: column.Heading(lang.L("Side by side")), pairs: column.NewList(),
		why:   column.Remark(lang.L("The ± is wide since light falls unevenly on a hand: the card lies elsewhere and can't take that out. What the card itself is wrong by cancels within one photograph.")),
		which: column.Heading(lang.L("Which flap the colours speak for")), reason: column.Body(""),
		yours: column.Title(lang.L("The choice is yours.")), notes: column.Remark(""),
	}
}

func (r *results) objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.heading, r.state, r.refused, r.light, r.tones, r.apart, r.why, r.pairs, r.which, r.reason, r.yours, r.notes}
}

// clear leaves nothing but a word on how things stand.
func (r *results) clear(state string) {
	r.state.Set(state)
	for _, n := range []*column.Notice{r.refused, r.light} {
		n.Set("")
	}
	for _, t := range []*column.Text{r.reason, r.notes} {
		t.Set("")
	}
	r.tones.Replace()
	r.pairs.Replace()
	r.heads(false, false)
}

// heads shows the headings of what is there.
func (r *results) heads(pairs, reason bool) {
	flow.Visible(r.apart, pairs)
	flow.Visible(r.why, pairs)
	flow.Visible(r.which, reason)
	flow.Visible(r.yours, reason)
}

// show tells what samples say. Title is what the user calls a photograph.
func (r *results) show(samples []skin.Sample, remarks []string, limits func() (skincolour.Limits, error), title func(string) string) {
	r.clear("")
	r.refused.Set(strings.Join(remarks, "\n"))
	by, err := limits()
	if err != nil {
		r.refused.Set(lang.L("Colours can't be judged: {{.Problem}}", map[string]any{"Problem": err.Error()}))
		return
	}
	if len(samples) == 0 && len(remarks) == 0 {
		r.state.Set(lang.L("Nothing is sampled yet: place a patch of skin."))
	}
	lines, notes := skin.Tell(samples, by)
	var tones, pairs []fyne.CanvasObject
	for i, line := range lines {
		if i < len(samples) {
			tones = append(tones, newTone(samples[i], line))
			continue
		}
		pairs = append(pairs, newPair(line))
	}
	r.tones.Replace(tones...)
	r.pairs.Replace(pairs...)
	r.tell(samples, notes)
	if lacking := unbalanced(samples, title); r.light.Visible() && lacking != title("") {
		r.light.Set(lang.L("Without a neutral patch: {{.Photographs}}.", map[string]any{"Photographs": lacking}) + " " + r.light.Words())
	}
	r.heads(len(pairs) > 0, r.reason.Words() != "")
	flow.Visible(r.yours, r.reason.Words() != "" && len(doubts(samples)) == 0)
}

// tell parts the notes: what must not be overlooked, the reasoning on the flap,
// and the rest.
func (r *results) tell(samples []skin.Sample, notes []string) {
	because := reasoning(samples)
	r.refused.Set(strings.Join(append(words(r.refused), doubts(samples)...), "\n"))
	var rest []string
	for _, n := range notes {
		switch {
		case n == skin.NoNeutral:
			r.light.Set(n)
		case slices.Contains(doubts(samples), n):
		case because != "" && strings.Contains(n, because):
			r.reason.Set(n)
		default:
			rest = append(rest, n)
		}
	}
	r.notes.Set(strings.Join(rest, "\n"))
}

// doubts are said of samples that can be no skin's.
func doubts(samples []skin.Sample) []string {
	var out []string
	for _, s := range samples {
		if s.Doubt != "" {
			out = append(out, s.Doubt)
		}
	}
	return out
}

// words are those of a notice, if it has any.
func words(n *column.Notice) []string {
	if n.Words() == "" {
		return nil
	}
	return []string{n.Words()}
}

// unbalanced are the photographs whose samples hold the colour of the light.
func unbalanced(samples []skin.Sample, title func(string) string) string {
	var out []string
	for _, s := range samples {
		if name := title(s.Balance.Photograph); !s.Balance.Neutral && !slices.Contains(out, name) {
			out = append(out, name)
		}
	}
	return strings.Join(out, "; ")
}

// reasoning is why the colours of back and palm speak for a flap, empty where one
// of them is missing.
func reasoning(samples []skin.Sample) string {
	var back, palm *skin.Sample
	for i := range samples {
		switch s := &samples[i]; {
		case s.Place == skincolour.Back && back == nil:
			back = s
		case s.Place == skincolour.Palm && palm == nil:
			palm = s
		}
	}
	if back == nil || palm == nil {
		return ""
	}
	return skincolour.Reasoning(back.Sample, palm.Sample).Because
}

// lab is the measured colour, with how much it changes over the patch.
func lab(s skin.Sample) string {
	c, d := s.Colour, s.Spread
	return lang.L("L* {{.L}}, a* {{.A}}, b* {{.B}}; over the patch it changes by {{.DL}}, {{.DA}}, {{.DB}}", map[string]any{
		"L": one(c.L), "A": one(c.A), "B": one(c.B), "DL": one(d.L), "DA": one(d.A), "DB": one(d.B)})
}

func one(v float64) string { return fmt.Sprintf("%.1f", v) }

// placeName is the place that a sample was taken from.
func placeName(s skin.Sample) string { return wording.Sentence(s.Place.String()) }
