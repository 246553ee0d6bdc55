package planfamily

import (
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"ogive/imaging/family"
	"ogive/ui/column"
	"ogive/ui/flow"
)

// point is one thing to tell: its title and its words, which can be changed.
type point struct {
	*column.Block
	panel *Panel
	draft family.Point

	title   *column.Text
	state   *column.Text // whose words they are
	field   *column.Field
	wheel   *wheel // over the field
	restore *widget.Hyperlink
	problem *column.Notice
}

// longestText is what a plan file takes.
const longestText = 8000

func newPoint(p *Panel, d family.Point) *point {
	t := &point{panel: p, draft: d, title: column.Title(d.Title), state: column.Remark(""), problem: column.NewNotice("")}
	t.field = column.NewArea("", 3)
	t.wheel = newWheel(p.page.Object())
	t.field.OnHeight = p.page.Arrange
	t.field.OnDone = t.take
	t.restore = widget.NewHyperlink(lang.L("Restore the draft"), nil)
	t.restore.OnTapped = t.back
	t.Block = column.NewBlock(t.stand, nil, t.title, t.state, t.field, t.wheel, t.restore, t.problem)
	return t
}

// show shows the words of the plan, if the point is told at all.
func (t *point) show() {
	told := t.draft.Finding == "" || slices.Contains(t.panel.told.Findings, t.draft.Key)
	flow.Visible(t, told)
	text, own := t.panel.own(t.draft.Key)
	if !own {
		text = t.draft.Text
	}
	t.field.Fill(text)
	t.problem.Set("")
	flow.Visible(t.restore, own)
	switch {
	case own && text == "":
		t.state.Set(lang.L("left out of the page"))
	case own:
		t.state.Set(lang.L("your own words"))
	default:
		t.state.Set(lang.L("draft"))
	}
}

func (t *point) take(text string) {
	text = strings.TrimSpace(text)
	if len(text) > longestText {
		t.problem.Set(lang.L("The text is too long to be kept: shorten it."))
		t.panel.page.Arrange()
		return
	}
	t.panel.write(t.draft, text, lang.L("words on: {{.Title}}", map[string]any{"Title": t.draft.Title}))
}

func (t *point) back() {
	t.field.Fill(t.draft.Text)
	t.panel.write(t.draft, t.draft.Text, lang.L("draft restored: {{.Title}}", map[string]any{"Title": t.draft.Title}))
}

func (t *point) stand(room float32) float32 {
	const gap, below = 4, 12
	link := fyne.NewSize(0, 0)
	if t.restore.Visible() {
		link = t.restore.MinSize()
	}
	y := t.title.HeightAt(room)
	flow.Put(t.title, 0, 0, room, y)
	words := room - link.Width
	h := t.state.HeightAt(words)
	flow.Put(t.state, 0, y, words, h)
	if t.restore.Visible() {
		flow.Put(t.restore, room-link.Width+8, y-9, link.Width, link.Height)
	}
	y += h - gap
	h = t.field.HeightAt(room)
	flow.Put(t.field, 0, y, room, h)
	flow.Put(t.wheel, 0, y, room, h)
	y += h + gap
	h = t.problem.HeightAt(room)
	flow.Put(t.problem, 0, y, room, h)
	return y + h + below
}
